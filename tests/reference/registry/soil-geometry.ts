import type { Registry } from '../registry.ts';
import { soilUnits } from './soil-conversions.ts';
import { soilFill } from './soil-fill.ts';
import { soilVolumes } from './soil-volumes.ts';
import { soilWeights } from './soil-weights.ts';

/** Everything about soil that is measured: units, volumes, fill and weight. */
export const soilGeometry: Registry = { ...soilUnits, ...soilVolumes, ...soilFill, ...soilWeights };
