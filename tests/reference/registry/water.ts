import type { Registry } from '../registry.ts';

export const water: Registry = {};
