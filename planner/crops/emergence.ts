import { requireRange } from '../errors.ts';
import { ownValue } from '../own-value.ts';
import { celsiusOf } from '../units/convert.ts';

const columns_F = [41, 50, 59, 68, 77, 86, 95] as const;

/**
 * Days from sowing 1/2 in deep to emergence at 41, 50, 59, 68, 77, 86 and 95 F of soil; null = little, none or not tested.
 * Source: Harrington, Soil Temperature Conditions for Vegetable Seed Germination, Oregon State University Extension.
 */
const daysTable: Readonly<Record<string, readonly (number | null)[]>> = {
  asparagus: [null, 53, 24, 15, 10, 11, 19],
  'bean, snap': [null, null, 16, 11, 8, 6, 6],
  'bean, lima': [null, null, 31, 18, 7, 7, null],
  beet: [42, 17, 10, 6, 5, 4, 4],
  cabbage: [null, 15, 9, 6, 4, 3, null],
  carrot: [51, 17, 10, 7, 6, 6, 8],
  cauliflower: [null, 19, 10, 6, 5, 4, null],
  celery: [41, 16, 12, 7, null, null, null],
  'corn, sweet': [null, 22, 12, 7, 4, 4, 3],
  cucumber: [null, null, 13, 6, 4, 3, 3],
  eggplant: [null, null, null, 13, 8, 5, null],
  lettuce: [15, 7, 4, 3, 2, 2, null],
  muskmelon: [null, null, null, 8, 4, 3, null],
  okra: [null, null, 27, 17, 13, 7, 6],
  onion: [31, 13, 7, 5, 4, 4, 13],
  parsley: [null, 29, 17, 14, 13, 12, null],
  parsnip: [57, 27, 19, 14, 15, 32, null],
  pea: [36, 14, 9, 8, 6, 6, null],
  pepper: [null, null, 25, 13, 8, 8, 9],
  radish: [29, 11, 6, 4, 4, 3, null],
  spinach: [23, 12, 7, 6, 5, 6, null],
  tomato: [null, 43, 14, 8, 6, 6, 9],
  turnip: [null, 5, 3, 2, 1, 1, 1],
  watermelon: [null, null, null, 12, 5, 4, 3],
};

/** The row of the table for a crop of the library. */
const rowOfCrop: Readonly<Record<string, string>> = {
  'bean-bush': 'bean, snap',
  'bean-pole': 'bean, snap',
  'bean-lima': 'bean, lima',
  'sweet-corn': 'corn, sweet',
  'lettuce-leaf': 'lettuce',
  'lettuce-romaine': 'lettuce',
  'lettuce-head': 'lettuce',
  'onion-bulb': 'onion',
  scallion: 'onion',
  'pea-garden': 'pea',
  'pea-pod': 'pea',
  'pepper-sweet': 'pepper',
  'pepper-hot': 'pepper',
  'tomato-cherry': 'tomato',
};

export type Emergence =
  | { readonly state: 'comes-up'; readonly days: number }
  | { readonly state: 'too-cold' }
  | { readonly state: 'too-hot' }
  | { readonly state: 'not-tabled' };

/**
 * Days from sowing to emergence at a steady soil temperature.
 * Between two columns the rate 1/days is taken as straight; outside a crop's printed columns it is too cold or too hot.
 * Field soil at other depths differs. Interpolation of the rate: our rule.
 * @throws InputError naming the field
 */
export function emergenceAt(crop: string, soil_C: number): Emergence {
  requireRange('soil_C', soil_C, -40, 60, 'C');
  const row = ownValue(daysTable, ownValue(rowOfCrop, crop) ?? crop) ?? [];
  const known = row.flatMap((days, at) => (days === null ? [] : [{ days, at_C: celsiusOf(columns_F[at] ?? 0) }]));
  const first = known[0];
  const last = known.at(-1);
  if (first === undefined || last === undefined) return { state: 'not-tabled' };
  const slack_C = 1e-9;
  if (soil_C < first.at_C - slack_C) return { state: 'too-cold' };
  if (soil_C > last.at_C + slack_C) return { state: 'too-hot' };
  const above = known.findIndex((each) => each.at_C >= soil_C - slack_C);
  const high = known[above] ?? last;
  const low = known[above - 1];
  if (low === undefined || Math.abs(high.at_C - soil_C) <= slack_C) return { state: 'comes-up', days: high.days };
  const share = (soil_C - low.at_C) / (high.at_C - low.at_C);
  return { state: 'comes-up', days: daysBetweenColumns(low.days, high.days, share) };
}

/**
 * Days at a temperature that lies `share` (0 to 1) of the way between two columns: 1/d = (1 - share)/d1 + share/d2.
 * @throws InputError naming the field
 */
export function daysBetweenColumns(low_days: number, high_days: number, share: number): number {
  requireRange('low_days', low_days, 0.1, 1000, 'days');
  requireRange('high_days', high_days, 0.1, 1000, 'days');
  requireRange('share', share, 0, 1, '');
  return 1 / ((1 - share) / low_days + share / high_days);
}

/** Whole or part days after sowing on which seed comes up, from daily soil temperatures; null when it doesn't in that time. */
export function emergenceDay(crop: string, soil_C: readonly number[]): number | null {
  let sum = 0;
  for (const [day, each] of soil_C.entries()) {
    const at = emergenceAt(crop, each);
    if (at.state === 'not-tabled') return null;
    if (at.state === 'comes-up') sum += 1 / at.days;
    if (sum >= 1 - 1e-9) return day + 1;
  }
  return null;
}
