import type { BudgetRow } from './soil-types.ts';
import { type MainNutrient, partWords } from './soil-words.ts';

/** One bar of the chart: supply by its parts, what is still to feed, and the need, grams to the square metre. */
export type Bar = {
  readonly name: string;
  readonly parts: readonly number[];
  readonly feed_g_per_m2: number;
  readonly need_g_per_m2: number;
};

export type Bars = { readonly by: 'bed' | 'block'; readonly rows: readonly Bar[] };

/** More beds than this are drawn block by block: single bars would be too thin to read. */
const MOST_BEDS = 40;
const G_PER_KG = 1000;

const keys = {
  N: { need: 'needN_kg', feed: 'feedN_kg', part: 'n_kg' },
  P2O5: { need: 'needP2O5_kg', feed: 'feedP2O5_kg', part: 'p2o5_kg' },
  K2O: { need: 'needK2O_kg', feed: 'feedK2O_kg', part: 'k2o_kg' },
} as const;

/** The chart's bars: beds with plantings, or their blocks where there are many. */
export function chartBars(rows: readonly BudgetRow[], nutrient: MainNutrient): Bars {
  const planted = rows.filter((row) => row.crops !== '' && row.area_m2 > 0);
  const by = planted.length > MOST_BEDS ? 'block' : 'bed';
  const groups = Map.groupBy(planted, (row) => (by === 'bed' ? row.code : row.block));
  return { by, rows: [...groups].map(([name, members]) => barOf(name, members, nutrient)) };
}

function barOf(name: string, members: readonly BudgetRow[], nutrient: MainNutrient): Bar {
  const { need, feed, part } = keys[nutrient];
  const area_m2 = members.reduce((sum, row) => sum + row.area_m2, 0);
  const by = (of: (row: BudgetRow) => number) => (G_PER_KG * members.reduce((sum, row) => sum + of(row), 0)) / area_m2;
  const kinds = members[0]?.parts.length ?? 0;
  return {
    name,
    parts: Array.from({ length: kinds }, (_, at) => by((row) => row.parts[at]?.[part] ?? 0)),
    feed_g_per_m2: by((row) => row[feed]),
    need_g_per_m2: by((row) => row[need]),
  };
}

const order = ['organic-matter', 'earlier-dressings', 'top-ups', 'legumes', 'this-season', 'water'] as const;

/** The parts of supply that any bar has, with their place and word. */
export function partNames(bars: readonly Bar[]): readonly (readonly [at: number, name: string])[] {
  return order.flatMap((kind, at) =>
    bars.some((bar) => (bar.parts[at] ?? 0) > 1e-6) ? [[at, partWords[kind] ?? kind] as const] : [],
  );
}
