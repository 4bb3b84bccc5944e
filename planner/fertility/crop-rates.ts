import { convert } from '../units/convert.ts';
import { fourClassRates, type RecommendedRates } from './recommendation.ts';
import type { ClassRatesRow, Sourced } from './soil-tables.ts';
import type { TestClass } from './test-class.ts';

/** Row of the rates table for a crop of the library whose own name is not in it. Kin of the trade; common practice, no source. */
const rowFor: readonly (readonly [crop: RegExp, row: string])[] = [
  [/^lettuce|^endive|^radicchio|^cornsalad|^arugula|^mustard|^pak-choi/, 'lettuce'],
  [/^swiss-chard/, 'spinach'],
  [/^(kale|collards|napa-cabbage)/, 'cabbage'],
  [/^kohlrabi/, 'broccoli'],
  [/^(turnip|rutabaga)/, 'beet'],
  [/^(scallion|garlic|shallot|chives)/, 'onion-bulb'],
  [/^bean|^edamame|^okra/, 'bean-snap'],
  [/^(pea-|fava|field-pea)/, 'pea'],
  [/^summer-squash/, 'squash-summer'],
  [/^(winter-squash|pumpkin)/, 'pumpkin-winter-squash'],
  [/^(tomato|tomatillo)/, 'tomato'],
  [/^pepper/, 'pepper'],
  [/^potato/, 'tomato'],
  [/^(celeriac|fennel)/, 'celery'],
  [/^(basil|cilantro|dill)/, 'parsley'],
];

/** Cover crops and whatever lives on residues: nothing is fed to them. */
const notFed = /^(cereal-rye|oats-cover|hairy-vetch|crimson-clover|field-pea|buckwheat|sorghum-sudangrass)$/;

export type CropRates = RecommendedRates & { readonly source: string; readonly standing: Sourced['status'] };

/** A crop of which no table speaks, cut flowers above all: 80-60-60 lb an acre. Common practice, no source. */
const unknownCrop_lb_per_acre = { n: 80, p2o5: 60, k2o: 60 } as const;

/**
 * Rates wanted by a crop at given soil-test classes: its row of the regional table, that of its kin, or the general rate
 * of a crop that no table knows. The laboratory's own recommendation goes first: enter it as the planting's need.
 */
export function cropRates(
  rows: readonly ClassRatesRow[],
  cropId: string,
  phosphorus: TestClass,
  potassium: TestClass,
): CropRates {
  if (notFed.test(cropId))
    return { n_kg_per_m2: 0, p2o5_kg_per_m2: 0, k2o_kg_per_m2: 0, source: 'a cover crop is not fed', standing: 'practice' };
  const kin = rowFor.find(([crop]) => crop.test(cropId))?.[1];
  const row = rows.find((each) => each.crop === cropId) ?? rows.find((each) => each.crop === kin);
  if (row !== undefined)
    return {
      ...fourClassRates(row, phosphorus, potassium),
      source: `Mid-Atlantic Commercial Vegetable Production Recommendations, row ${row.crop}, from memory: a planning default`,
      standing: 'memory',
    };
  const { n, p2o5, k2o } = unknownCrop_lb_per_acre;
  const part = share[phosphorus];
  return {
    n_kg_per_m2: convert(n, 'lb_per_acre', 'kg_per_m2'),
    p2o5_kg_per_m2: convert(p2o5 * part, 'lb_per_acre', 'kg_per_m2'),
    k2o_kg_per_m2: convert(k2o * share[potassium], 'lb_per_acre', 'kg_per_m2'),
    source: 'a crop that no table knows: common practice, no source',
    standing: 'practice',
  };
}

const share: Readonly<Record<TestClass, number>> = { 'very-low': 1, low: 1, medium: 0.75, high: 0.4, 'very-high': 0 };
