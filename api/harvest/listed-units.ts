import { csvRecords } from '../library/csv-records.ts';

/** A published or customary net weight of a unit of sale. It holds for its place only: the grower chooses it with its source. */
export type ListedUnit = {
  readonly cropId: string;
  readonly commodity: string;
  readonly form: string;
  readonly unit: string;
  readonly net_kg: number;
  readonly source: string;
};

/** Crops of the library that go by a commodity's name in the lists of net weights. */
const cropsOfCommodity: Readonly<Record<string, readonly string[]>> = {
  arugula: ['arugula'],
  asparagus: ['asparagus'],
  basil: ['basil'],
  beans: ['bean-bush', 'bean-pole'],
  beets: ['beet'],
  'bell peppers': ['pepper-sweet'],
  'Brussels sprouts': ['brussels-sprouts'],
  broccoli: ['broccoli'],
  cabbage: ['cabbage'],
  carrots: ['carrot'],
  cauliflower: ['cauliflower'],
  celery: ['celery'],
  chard: ['swiss-chard'],
  'cherry tomatoes': ['tomato-cherry'],
  'Chinese cabbage': ['napa-cabbage'],
  'collards or turnip greens': ['collards'],
  cucumbers: ['cucumber'],
  eggplant: ['eggplant'],
  'endive or escarole': ['endive'],
  garlic: ['garlic'],
  'green onions': ['scallion'],
  'head lettuce': ['lettuce-head', 'lettuce-romaine'],
  kale: ['kale'],
  'kale or collards': ['kale', 'collards'],
  kohlrabi: ['kohlrabi'],
  leeks: ['leek'],
  lettuce: ['lettuce-leaf', 'lettuce-romaine', 'lettuce-head'],
  okra: ['okra'],
  onions: ['onion-bulb'],
  parsley: ['parsley'],
  'parsley or cilantro': ['parsley', 'cilantro'],
  parsnips: ['parsnip'],
  peas: ['pea-garden', 'pea-pod'],
  potatoes: ['potato'],
  pumpkins: ['pumpkin'],
  radishes: ['radish'],
  rhubarb: ['rhubarb'],
  rutabagas: ['rutabaga'],
  'salad mix': ['lettuce-leaf', 'mustard-greens', 'arugula'],
  scallions: ['scallion'],
  spinach: ['spinach'],
  strawberries: ['strawberry'],
  'summer squash': ['summer-squash'],
  'sweet corn': ['sweet-corn'],
  'sweet potatoes': ['sweet-potato'],
  tomatoes: ['tomato'],
  turnips: ['turnip'],
  'winter squash': ['winter-squash'],
  zucchini: ['summer-squash'],
};

const read = new Map<string, readonly ListedUnit[]>();

/** Every listed net weight that fits a crop of the library. Read once. */
export function listedUnits(resources: string): readonly ListedUnit[] {
  const known = read.get(resources);
  if (known !== undefined) return known;
  const units = csvRecords(resources, 'produce-units.csv').flatMap((record) => {
    const net_kg = Number(record['net_kg_mid']);
    if (!(net_kg > 0)) return [];
    const source = [record['place_or_scheme'], record['source'], record['year_or_edition']].filter(Boolean).join(', ');
    return (cropsOfCommodity[record['commodity'] ?? ''] ?? []).map((cropId) => ({
      cropId,
      commodity: record['commodity'] ?? '',
      form: record['form'] ?? '',
      unit: record['unit'] ?? '',
      net_kg,
      source: record['status'] === 'memory' ? `${source} (from memory)` : source,
    }));
  });
  read.set(resources, units);
  return units;
}
