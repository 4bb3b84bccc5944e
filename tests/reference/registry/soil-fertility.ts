import type { Registry } from '../registry.ts';
import { soilBlend } from './soil-blend.ts';
import { soilCompost } from './soil-compost.ts';
import { soilLime } from './soil-lime.ts';
import { soilNutrients } from './soil-nutrients.ts';

/** Lime, sulfur, soil tests, nutrients, compost, salts and blends. */
export const soilFertility: Registry = { ...soilLime, ...soilNutrients, ...soilCompost, ...soilBlend };
