import { requirePositive, requireRange } from '../errors.ts';
import { computed, entry, practice, type Working } from '../working.ts';

export type TeaBatchInput = {
  /** Area of the beds to be drenched. */
  readonly area_m2: number;
  readonly drench_L_per_m2: number;
  /** One part of tea to so many of water; 0 for undiluted. */
  readonly waterParts: number;
  readonly teaParts: number;
  readonly compost_kg_per_L: number;
};

export type TeaBatch = {
  readonly drench_L: number;
  readonly tea_L: number;
  readonly water_L: number;
  readonly compost_kg: number;
};

/**
 * Size of a compost-tea batch from the beds to drench.
 *
 *   V = A r      tea = V t/(t + w)      water = V - tea      compost = tea x c
 *
 *   A   area                      m2      more than 0
 *   r   drench                    L/m2    0.4 to 1 (1 to 2.5 gal/100 ft2)
 *   t:w parts of tea to water     -       1:4 to 1:10
 *   c   compost in the brew       kg/L    about 0.06 (0.5 lb/gal)
 *
 * It brings no counted nutrients. Rates are common practice, no source.
 */
export function teaBatch(input: TeaBatchInput): TeaBatch {
  requirePositive('area_m2', input.area_m2, 'm²');
  requirePositive('drench_L_per_m2', input.drench_L_per_m2, 'L/m²');
  requirePositive('teaParts', input.teaParts, '');
  requireRange('waterParts', input.waterParts, 0, 1000, '');
  requireRange('compost_kg_per_L', input.compost_kg_per_L, 0, 1, 'kg/L');
  const drench_L = input.area_m2 * input.drench_L_per_m2;
  const tea_L = (drench_L * input.teaParts) / (input.teaParts + input.waterParts);
  return { drench_L, tea_L, water_L: drench_L - tea_L, compost_kg: tea_L * input.compost_kg_per_L };
}

/** Hours of air: 24 to 36; used within 4 to 8 hours of air off. Common practice, no source. */
export const BREW_HOURS = { least: 24, most: 36 } as const;
export const USE_WITHIN_HOURS = 4;

/** How many tanks a batch fills: whole fillings, the last may be part full. */
export function tankFillings(tea_L: number, tank_L: number): number {
  requireRange('tea_L', tea_L, 0, Infinity, 'L');
  requirePositive('tank_L', tank_L, 'L');
  return Math.max(0, Math.ceil(tea_L / tank_L - 1e-9));
}

/** The working of a batch's tea volume. */
export function explainTeaBatch(input: TeaBatchInput): Working {
  const batch = teaBatch(input);
  return {
    title: 'Compost tea to brew',
    formula: 'tea = A × r × t / (t + w)',
    symbols: [
      { symbol: 'A', name: 'beds to drench', figure: { value: input.area_m2, unit: 'm2' }, origin: computed('the beds chosen') },
      { symbol: 'r', name: 'drench', figure: { value: input.drench_L_per_m2, unit: 'L_per_m2' }, origin: entry() },
      { symbol: 't', name: 'parts of tea', figure: { value: input.teaParts, unit: '' }, origin: entry() },
      { symbol: 'w', name: 'parts of water', figure: { value: input.waterParts, unit: '' }, origin: entry() },
      {
        symbol: 'c',
        name: 'compost in the brew',
        figure: { value: input.compost_kg_per_L, unit: 'kg_per_L' },
        origin: practice(),
      },
    ],
    steps: [
      { text: 'Drench for all beds', figures: 'A × r', result: { value: batch.drench_L, unit: 'L' } },
      { text: 'Water in it', figures: 'A × r − tea', result: { value: batch.water_L, unit: 'L' } },
      { text: 'Compost to brew with', figures: 'tea × c', result: { value: batch.compost_kg, unit: 'kg' } },
    ],
    result: { value: batch.tea_L, unit: 'L' },
    sources: ['common practice, no source'],
    notes: [
      'No nutrients are counted for it.',
      'A brew with food for microbes in it is treated as raw manure until a test says otherwise.',
    ],
  };
}
