import { requirePositive, requireRange } from '../errors.ts';
import { significant } from '../units/significant.ts';
import { computed, entry, library, type Working } from '../working.ts';

/** One layer of a bed as it lies, with the density to reckon with. */
export type LoadLayer = { readonly name?: string; readonly depth_m: number; readonly density_kg_per_m3: number };

export type FloorLoadInput = {
  readonly layers: readonly LoadLayer[];
  /** Frame, bag or trough; plants and stakes; water standing in basin or reservoir: each over the bed's footprint. */
  readonly tare_kg_per_m2?: number;
  readonly plants_kg_per_m2?: number;
  readonly water_kg_per_m2?: number;
};

/**
 * What a bed puts on each square metre of the floor beneath it.
 *
 *   q = sum d_i rho_i + water + tare + plants
 *
 *   d_i     depth of a layer            m        0 or more
 *   rho_i   its density, saturated for a deck   kg/m3
 *
 * The weight of the bed only, spread evenly over its footprint: not of people, snow or rain on top, nor of small feet
 * that press on one place. It does not tell what a floor can carry.
 * Source: sum of the parts; densities as given.
 * @throws InputError naming the layer
 */
export function floorLoad_kg_per_m2(input: FloorLoadInput): number {
  input.layers.forEach((layer, at) => {
    requireRange(`layers.${at}.depth_m`, layer.depth_m, 0, 5, 'm');
    requirePositive(`layers.${at}.density_kg_per_m3`, layer.density_kg_per_m3, 'kg/m3');
  });
  const { tare_kg_per_m2 = 0, plants_kg_per_m2 = 0, water_kg_per_m2 = 0 } = input;
  for (const [path, load] of Object.entries({ tare_kg_per_m2, plants_kg_per_m2, water_kg_per_m2 }))
    requireRange(path, load, 0, 10_000, 'kg/m2');
  const soil = input.layers.reduce((sum, layer) => sum + layer.depth_m * layer.density_kg_per_m3, 0);
  return soil + tare_kg_per_m2 + plants_kg_per_m2 + water_kg_per_m2;
}

/** True when the load is not above the limit that the grower was given for the floor. @throws InputError */
export function isWithinFloorLimit(load_kg_per_m2: number, limit_kg_per_m2: number): boolean {
  requirePositive('limit_kg_per_m2', limit_kg_per_m2, 'kg/m2');
  return load_kg_per_m2 <= limit_kg_per_m2 * (1 + 1e-9);
}

export function explainFloorLoad(input: FloorLoadInput): Working {
  const result = { value: floorLoad_kg_per_m2(input), unit: 'kg_per_m2' };
  const others = [
    ['tare', 'frame, bag or trough', input.tare_kg_per_m2 ?? 0],
    ['plants', 'plants and stakes', input.plants_kg_per_m2 ?? 0],
    ['water', 'water in basin or reservoir', input.water_kg_per_m2 ?? 0],
  ] as const;
  return {
    title: 'Load on the floor',
    formula: 'q = Σ d ρ + water + tare + plants',
    symbols: [
      ...input.layers.flatMap((layer, at) => [
        {
          symbol: `d${at + 1}`,
          name: `depth of ${layer.name ?? `layer ${at + 1}`}`,
          figure: { value: layer.depth_m, unit: 'm_short' },
          origin: entry('the fill recipe'),
        },
        {
          symbol: `ρ${at + 1}`,
          name: 'its density when full of water',
          figure: { value: layer.density_kg_per_m3, unit: 'kg_per_m3' },
          origin: library('the material library'),
        },
      ]),
      ...others
        .filter(([, , value]) => value > 0)
        .map(([symbol, name, value]) => ({ symbol, name, figure: { value, unit: 'kg_per_m2' }, origin: computed() })),
    ],
    steps: [
      {
        text: 'Depth times density, layer by layer, and the rest added',
        figures: [
          ...input.layers.map((layer) => `${significant(layer.depth_m, 3)} m × ${significant(layer.density_kg_per_m3, 3)} kg/m³`),
          ...others.filter(([, , v]) => v > 0).map(([, , v]) => `${significant(v, 3)} kg/m²`),
        ].join(' + '),
        result,
      },
    ],
    sources: ['Sum of the parts'],
    notes: ['The bed’s own weight only. A structural engineer must check a deck, balcony or roof before it is loaded.'],
    result,
  };
}
