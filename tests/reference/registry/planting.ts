import type { Registry } from '../registry.ts';

export const planting: Registry = {};
