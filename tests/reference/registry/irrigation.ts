import type { Registry } from '../registry.ts';

export const irrigation: Registry = {};
