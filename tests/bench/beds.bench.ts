import { plantsInBed } from '../../planner/beds/plant-count.ts';
import { isInPolygon } from '../../planner/beds/polygon.ts';
import { volumeTo_L } from '../../planner/beds/volume.ts';
import type { BedId, MaterialId } from '../../planner/ids.ts';
import { coverFromStock, type FillBed, fillNeeds } from '../../planner/soil/fill-needs.ts';
import { type Bench, SIZES } from './bench.ts';

/** Beds of four kinds, some with leaning walls, each with three layers. */
function manyBeds(beds: number): readonly FillBed[] {
  const layers = [
    { materialId: 'soil' as MaterialId, amount: { kind: 'share', share: 0.4 }, settlingShare: 0.15 },
    { materialId: 'mix' as MaterialId, amount: { kind: 'rest' }, settlingShare: 0.2 },
    { materialId: 'compost' as MaterialId, amount: { kind: 'depth', depth_m: 0.05 }, settlingShare: 0.3 },
  ] as const;
  return Array.from({ length: beds }, (_, at): FillBed => {
    const depth_m = 0.3 + (at % 7) * 0.02;
    const length_m = 1 + (at % 5) * 0.5;
    const forms = [
      { solid: 'straight', outline: { shape: 'rectangle', length_m, width_m: 0.8 }, depth_m },
      { solid: 'tapered', outline: { shape: 'round', diameter_m: 0.8 }, bottom: { shape: 'round', diameter_m: 0.7 }, depth_m },
      { solid: 'straight', outline: { shape: 'oval', length_m, width_m: 0.6 }, depth_m },
      { solid: 'half-ellipsoid', length_m, width_m: 0.9, depth_m },
    ] as const;
    const form = forms[at % 4] ?? forms[0];
    return { bedId: `b${at}` as BedId, space: { form, from_m: 0, to_m: depth_m }, layers };
  });
}

const stock = new Map([['soil' as MaterialId, 50_000]]);

export const benches: readonly Bench[] = [
  {
    name: 'Fill needs of 1,000 beds, own soil and stock first',
    sizes: SIZES,
    prepare: manyBeds,
    run: (beds: readonly FillBed[]) => coverFromStock(fillNeeds(beds), stock),
    floor: (beds: readonly FillBed[]) => beds.map((bed) => volumeTo_L(bed.space.form, bed.space.to_m)),
    target_ms: 20,
  },
  {
    name: 'Plants of a 2.4 m oval bed at 10 cm, best of all layings',
    prepare: () => undefined,
    run: () =>
      plantsInBed({ outline: { shape: 'oval', length_m: 2.4, width_m: 0.6 }, spacing: { pattern: 'staggered', spacing_m: 0.1 } }),
    floor: () =>
      Array.from({ length: 10_000 }, (_, at) =>
        isInPolygon(
          [at / 1e4, 0.3],
          [
            [0, 0],
            [1, 0],
            [1, 1],
            [0, 1],
          ],
        ),
      ),
    target_ms: 150,
  },
];
