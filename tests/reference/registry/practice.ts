import type { Registry } from '../registry.ts';

export const practiceFacts: Registry = {};
