import type { Registry } from '../registry.ts';

export const soilGeometry: Registry = {};
