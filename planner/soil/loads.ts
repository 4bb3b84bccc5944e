import { massOf_kg } from '../beds/density.ts';
import { requirePositive, requireRange } from '../errors.ts';
import { computed, entry, type Working } from '../working.ts';

/** A count that ends exactly on a whole number is that number, in spite of rounding. */
const ON_THE_LIMIT = 1e-9;

export type LoadInput = {
  readonly volume_L: number;
  readonly density_kg_per_m3: number;
  readonly box_L: number;
  /** What the truck, trailer or barrow may carry; without it only the box counts. */
  readonly payload_kg?: number;
};

/**
 * Trips for a volume: n = max(ceil(V/box), ceil(M/payload)).
 *
 *   V, box       L     M, payload   kg
 *
 * Source: definition. A half-ton pickup carries about 450 to 680 kg: half to three quarters of a yard of moist topsoil
 * (common practice, no source). The vehicle's own plate counts.
 * @throws InputError naming the field
 */
export function loads(input: LoadInput): { readonly loads: number; readonly mass_kg: number; readonly isByWeight: boolean } {
  requireRange('volume_L', input.volume_L, 0, 1e9, 'L');
  requirePositive('density_kg_per_m3', input.density_kg_per_m3, 'kg/m3');
  const mass_kg = massOf_kg(input.volume_L, input.density_kg_per_m3);
  const byVolume = tripsFor(input.volume_L, input.box_L);
  if (input.payload_kg === undefined) return { loads: byVolume, mass_kg, isByWeight: false };
  requirePositive('payload_kg', input.payload_kg, 'kg');
  const byWeight = Math.ceil(mass_kg / input.payload_kg - ON_THE_LIMIT);
  return { loads: Math.max(byVolume, byWeight), mass_kg, isByWeight: byWeight > byVolume };
}

/** Trips by volume alone: ceil(V/box). @throws InputError */
export function tripsFor(volume_L: number, box_L: number): number {
  requirePositive('box_L', box_L, 'L');
  return Math.ceil(volume_L / box_L - ON_THE_LIMIT);
}

/** Whole packages to buy after stock: ceil((need - stock)/size), never below 0. @throws InputError naming the field */
export function packagesToBuy(need: number, stock: number, size: number): number {
  requireRange('need', need, 0, 1e9, '');
  requireRange('stock', stock, 0, 1e9, '');
  requirePositive('size', size, '');
  return Math.max(0, Math.ceil((need - stock) / size - ON_THE_LIMIT));
}

export function explainLoads(input: LoadInput): Working {
  const answer = loads(input);
  const result = { value: answer.loads, unit: 'count' };
  return {
    title: 'Loads',
    formula: input.payload_kg === undefined ? 'n = ⌈V/box⌉' : 'n = max(⌈V/box⌉, ⌈M/payload⌉)',
    symbols: [
      { symbol: 'V', name: 'loose volume', figure: { value: input.volume_L, unit: 'bulk_L' }, origin: computed() },
      { symbol: 'box', name: 'one load', figure: { value: input.box_L, unit: 'bulk_L' }, origin: entry('Farm') },
      {
        symbol: 'M',
        name: 'weight as handled',
        figure: { value: answer.mass_kg, unit: 'kg' },
        origin: computed('volume times moist density'),
      },
      ...(input.payload_kg === undefined
        ? []
        : [
            {
              symbol: 'payload',
              name: 'what it may carry',
              figure: { value: input.payload_kg, unit: 'kg' },
              origin: entry('Farm'),
            },
          ]),
    ],
    steps: [{ text: answer.isByWeight ? 'Weight decides' : 'Volume decides', figures: '', result }],
    sources: ['Definition'],
    notes: [],
    result,
  };
}
