import { type Lattice, unboundedDensity_per_m2 } from '../beds/lattice.ts';
import { dateOfDay, dayNumber, type IsoDate, mondayOf } from '../calendar.ts';
import { requirePositive, requireRange } from '../errors.ts';
import { computed, entry, library, type Working } from '../working.ts';
import type { WeekYield } from './harvest-spread.ts';

export type AreaForDemandInput = {
  readonly demand: number;
  /** Share that is culled, lost or left. */
  readonly loss_share: number;
  readonly yield_per_m2: number;
};

/**
 * Bed area for a demand: A = Q / ((1 - l) Y).
 *
 *   Q   demand over the harvest   crop's unit       0 or more
 *   l   loss                      -                 0 to 0.95
 *   Y   yield                     crop's unit/m2    more than 0
 *
 * Source: definition.
 * @throws InputError naming the field
 */
export function areaForDemand_m2({ demand, loss_share, yield_per_m2 }: AreaForDemandInput): number {
  requireRange('demand', demand, 0, 1e9, '');
  requireRange('loss_share', loss_share, 0, 0.95, '');
  requirePositive('yield_per_m2', yield_per_m2, '');
  return demand / ((1 - loss_share) * yield_per_m2);
}

/** Plants for an area as an estimate before a bed is chosen: ceil(A x density). A bed is then counted. @throws InputError */
export function plantsForArea(area_m2: number, spacing_m: number, lattice: Lattice): number {
  requireRange('area_m2', area_m2, 0, 1e7, 'm2');
  return Math.ceil(area_m2 * unboundedDensity_per_m2(lattice, spacing_m) - 1e-9);
}

export function explainAreaForDemand(input: AreaForDemandInput): Working {
  const result = { value: areaForDemand_m2(input), unit: 'm2' };
  return {
    title: 'Bed area for the demand',
    formula: 'A = Q / ((1 - l) Y)',
    symbols: [
      { symbol: 'Q', name: 'demand', figure: { value: input.demand, unit: '' }, origin: entry() },
      { symbol: 'l', name: 'loss', figure: { value: input.loss_share, unit: 'share' }, origin: entry() },
      {
        symbol: 'Y',
        name: 'yield of a square metre',
        figure: { value: input.yield_per_m2, unit: '' },
        origin: library('the crop'),
      },
      { symbol: 'A', name: 'area', figure: result, origin: computed() },
    ],
    steps: [{ text: 'Area', figures: `${input.demand} / ((1 - ${input.loss_share}) x ${input.yield_per_m2})`, result }],
    result,
    sources: ['Definition'],
    notes: [],
  };
}

/** What an outlet takes of a crop in each week from one date to another, both included. */
export type Wanted = {
  readonly cropId: string;
  readonly unit: string;
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly perWeek: number;
};

export type Expected = { readonly cropId: string; readonly unit: string; readonly weeks: readonly WeekYield[] };

/** One crop in one week: what is wanted, what is expected, and the difference at the typical yield. */
export type Balance = {
  readonly cropId: string;
  readonly unit: string;
  readonly week: IsoDate;
  readonly wanted: number;
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  /** Typical harvest less what is wanted; below zero is a shortfall. */
  readonly over: number;
};

/**
 * Demand against expected harvest, by crop, unit and week, in order. A week that an order only touches counts in full, as
 * a box of that week is packed whole. Units are not mixed: kilograms and bunches of a crop stand in rows of their own.
 */
export function balanceByWeek(wanted: readonly Wanted[], expected: readonly Expected[]): readonly Balance[] {
  type Sum = { wanted: number; low: number; typical: number; high: number };
  const sums = new Map<string, Sum>();
  const of = (cropId: string, unit: string, week: IsoDate): Sum => {
    const key = `${cropId} ${unit} ${week}`;
    const present = sums.get(key) ?? { wanted: 0, low: 0, typical: 0, high: 0 };
    sums.set(key, present);
    return present;
  };
  for (const each of wanted)
    for (let monday = dayNumber(mondayOf(each.from)); monday <= dayNumber(each.to); monday += 7)
      of(each.cropId, each.unit, dateOfDay(monday)).wanted += each.perWeek;
  for (const each of expected)
    for (const week of each.weeks) {
      const sum = of(each.cropId, each.unit, week.week);
      sum.low += week.low;
      sum.typical += week.typical;
      sum.high += week.high;
    }
  return [...sums]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, sum]) => {
      const [cropId = '', unit = '', week = ''] = key.split(' ');
      return { cropId, unit, week: week as IsoDate, ...sum, over: sum.typical - sum.wanted };
    });
}
