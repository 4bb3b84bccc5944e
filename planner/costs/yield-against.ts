import { addDays, type IsoDate, mondayOf } from '../calendar.ts';
import { requireRange } from '../errors.ts';
import { computed, entry, library, type Working } from '../working.ts';

/** How a harvest stands against what was expected. */
export type YieldStanding = 'below' | 'within' | 'above' | 'unknown';

/**
 * Where an amount lies in its expected range. Without a range nothing is said.
 * Common practice, no source: the range is the library's or the farm's own.
 */
export function yieldStanding(harvested: number, low: number | null, high: number | null): YieldStanding {
  if (low === null || high === null) return 'unknown';
  if (harvested < low) return 'below';
  return harvested > high ? 'above' : 'within';
}

/** Harvest of each week, and the weeks within the harvest window in which nothing was picked. */
export function harvestWeeks(
  picks: readonly { readonly date: IsoDate; readonly amount: number }[],
): readonly { readonly monday: IsoDate; readonly amount: number; readonly missing: boolean }[] {
  const weeks = new Map<IsoDate, number>();
  for (const pick of picks) {
    const monday = mondayOf(pick.date);
    weeks.set(monday, (weeks.get(monday) ?? 0) + pick.amount);
  }
  const sorted = [...weeks.keys()].sort();
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return [];
  const all: { monday: IsoDate; amount: number; missing: boolean }[] = [];
  for (let monday = first; monday <= last; monday = addDays(monday, 7)) {
    const amount = weeks.get(monday);
    all.push({ monday, amount: amount ?? 0, missing: amount === undefined });
  }
  return all;
}

/** Yield of a unit of ground. @throws InputError naming the field */
export function yieldPer_m2(harvested: number, area_m2: number): number | null {
  requireRange('harvested', harvested, 0, Infinity, '');
  return area_m2 > 0 ? harvested / area_m2 : null;
}

/** Working of a yield for each m2 against its expectation. */
export function explainYield(row: {
  readonly name: string;
  readonly harvested: number;
  readonly unit: string;
  readonly area_m2: number;
  readonly expected: number | null;
}): Working {
  return {
    title: `Yield of ${row.name}`,
    formula: 'y = H / A',
    symbols: [
      {
        symbol: 'H',
        name: 'harvested, culls left out',
        figure: { value: row.harvested, unit: row.unit },
        origin: entry('your harvest log'),
      },
      {
        symbol: 'A',
        name: 'ground it stood on',
        figure: { value: row.area_m2, unit: 'm2' },
        origin: computed('beds and their shares'),
      },
      ...(row.expected === null
        ? []
        : [
            {
              symbol: 'E',
              name: 'expected in all',
              figure: { value: row.expected, unit: row.unit },
              origin: library('the plan'),
            },
          ]),
    ],
    steps: [],
    result: { value: yieldPer_m2(row.harvested, row.area_m2) ?? 0, unit: `${row.unit}_per_m2` },
    sources: ['common practice, no source'],
    notes: [],
  };
}
