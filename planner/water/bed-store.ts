import { refuse, requireRange } from '../errors.ts';
import { computed, entry, library, practice, type Working } from '../working.ts';

/** Free water below or round the soil: a standing basin or a built-in reservoir. */
export type FreeStore = {
  readonly kind: 'basin' | 'reservoir';
  /** Water it holds up to its overflow or its rim. */
  readonly capacity_L: number;
  /** Water in it when filled as usual: a basin is not filled to its rim. */
  readonly fill_L: number;
  /** Most that the soil can draw up in a day. */
  readonly rise_mm_per_day: number;
  /** Open water surface; 0 for a covered reservoir. */
  readonly open_m2: number;
};

/** What a bed is to water: areas and stores. The same in every year. */
export type BedStore = {
  readonly bedId: string;
  /** Level surface of the soil. */
  readonly area_m2: number;
  /** Surface that rain reaches: 0 under cover. */
  readonly rain_m2: number;
  /** Permeable wall in the open air; 0 for a tight wall. */
  readonly wall_m2: number;
  /** Loss through the wall as a share of the reference. */
  readonly wallFactor: number;
  /** Depth of soil that roots may use. */
  readonly depth_m: number;
  /** Water between drained and wilting, share of the volume. */
  readonly availableShare: number;
  readonly free: FreeStore | null;
};

/** Open water against the reference. Source: FAO-56 Table 12, shallow water. */
export const OPEN_WATER_KC = 1.05;

/** Refuses a store that cannot be. @throws InputError naming the field */
export function requireStore(bed: BedStore): void {
  requireRange('area_m2', bed.area_m2, 1e-4, 1e5, 'm2');
  requireRange('rain_m2', bed.rain_m2, 0, 1e5, 'm2');
  requireRange('wall_m2', bed.wall_m2, 0, 1e4, 'm2');
  requireRange('wallFactor', bed.wallFactor, 0, 0.5, '');
  requireRange('depth_m', bed.depth_m, 0.01, 5, 'm');
  requireRange('availableShare', bed.availableShare, 0.005, 0.9, '');
  if (bed.free === null) return;
  requireRange('free.capacity_L', bed.free.capacity_L, 0, 1e6, 'L');
  requireRange('free.fill_L', bed.free.fill_L, 0, bed.free.capacity_L + 1e-9, 'L');
  requireRange('free.rise_mm_per_day', bed.free.rise_mm_per_day, 0, 1000, 'mm/day');
  if (bed.free.open_m2 < 0) refuse('free.open_m2', 'too-small', 'The open water surface cannot be below zero.');
}

/** Water in the soil of a full bed, from drained to wilting: `1000 a z A`, L. Source: FAO-56 eq. 82 over the bed's area. */
export const soilStore_L = (bed: BedStore): number => 1000 * bed.availableShare * bed.depth_m * bed.area_m2;

/** Water that the roots of a day reach, L. Source: FAO-56 eq. 82 over the bed's area. */
export const rootedStore_L = (bed: BedStore, roots_m: number): number => 1000 * bed.availableShare * roots_m * bed.area_m2;

/** How {@link rootedStore_L} came to its figure, and the part of it that is taken without stress. */
export function explainRootedStore(bed: BedStore, roots_m: number, p: number): Working {
  const result = { value: rootedStore_L(bed, roots_m), unit: 'L' };
  return {
    title: 'Water the roots can reach',
    formula: 'V = 1000 a Zr A;  without stress p V',
    symbols: [
      {
        symbol: 'a',
        name: 'water between drained and wilting',
        figure: { value: bed.availableShare, unit: 'share' },
        origin: practice('own soil by the block’s texture (FAO-56 Table 19), mixes 25 % (nursery guides, from memory)'),
      },
      {
        symbol: 'Zr',
        name: 'rooted depth on this day',
        figure: { value: roots_m, unit: 'm_short' },
        origin: computed('crop and bed, the lesser'),
      },
      { symbol: 'A', name: 'surface of the bed', figure: { value: bed.area_m2, unit: 'm2' }, origin: entry('the design') },
      {
        symbol: 'p',
        name: 'share taken without stress at 5 mm a day',
        figure: { value: p, unit: 'share' },
        origin: library('FAO-56 Table 22'),
      },
    ],
    steps: [
      {
        text: 'taken without stress',
        figures: `${p.toPrecision(2)} × ${result.value.toPrecision(3)} L`,
        result: { value: p * result.value, unit: 'L' },
      },
    ],
    result,
    sources: ['FAO Irrigation and Drainage Paper 56 (1998), eq. 82, 83'],
    notes: [],
  };
}
