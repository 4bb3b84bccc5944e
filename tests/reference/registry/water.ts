import type { Registry } from '../registry.ts';
import { climate } from './water-climate.ts';
import { demand } from './water-demand.ts';

export const water: Registry = { ...climate, ...demand };
