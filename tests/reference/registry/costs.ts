import type { Registry } from '../registry.ts';

export const costs: Registry = {};
