import type { Registry } from '../registry.ts';

export const soilFertility: Registry = {};
