import type { StageDays } from './crop-curve.ts';

export type StageRow = {
  readonly crop: string;
  readonly stages_days: StageDays;
  /** As printed; in two rows it is not the sum of the stages. */
  readonly total_days: number;
  readonly planted: string;
  readonly region: string;
};

/**
 * Stage lengths of a planting in one region: examples to scale to the grower's own season, keeping the shares.
 * Source: FAO Irrigation and Drainage Paper 56 (1998), Table 11. Where a stage is printed with two lengths, both sets stand.
 */
export const stageRows: readonly StageRow[] = [
  { crop: 'broccoli', stages_days: [35, 45, 40, 15], total_days: 135, planted: 'Sep', region: 'California desert' },
  { crop: 'cabbage', stages_days: [40, 60, 50, 15], total_days: 165, planted: 'Sep', region: 'California desert' },
  { crop: 'carrot', stages_days: [20, 30, 30, 20], total_days: 100, planted: 'Oct/Jan', region: 'arid' },
  { crop: 'carrot', stages_days: [30, 40, 60, 20], total_days: 150, planted: 'Feb/Mar', region: 'Mediterranean' },
  { crop: 'carrot', stages_days: [30, 50, 90, 30], total_days: 200, planted: 'Oct', region: 'California desert' },
  { crop: 'cauliflower', stages_days: [35, 50, 40, 15], total_days: 140, planted: 'Sep', region: 'California desert' },
  { crop: 'celery', stages_days: [25, 40, 95, 20], total_days: 180, planted: 'Oct', region: 'semi-arid' },
  { crop: 'celery', stages_days: [25, 40, 45, 15], total_days: 125, planted: 'Apr', region: 'Mediterranean' },
  { crop: 'celery', stages_days: [30, 55, 105, 20], total_days: 210, planted: 'Jan', region: 'semi-arid' },
  { crop: 'crucifers (general)', stages_days: [20, 30, 20, 10], total_days: 80, planted: 'Apr', region: 'Mediterranean' },
  { crop: 'crucifers (general)', stages_days: [25, 35, 25, 10], total_days: 95, planted: 'Feb', region: 'Mediterranean' },
  { crop: 'crucifers (general)', stages_days: [30, 35, 90, 40], total_days: 195, planted: 'Oct/Nov', region: 'Mediterranean' },
  { crop: 'lettuce', stages_days: [20, 30, 15, 10], total_days: 75, planted: 'Apr', region: 'Mediterranean' },
  { crop: 'lettuce', stages_days: [30, 40, 25, 10], total_days: 105, planted: 'Nov/Jan', region: 'Mediterranean' },
  { crop: 'lettuce', stages_days: [25, 35, 30, 10], total_days: 100, planted: 'Oct/Nov', region: 'arid' },
  { crop: 'lettuce', stages_days: [35, 50, 45, 10], total_days: 140, planted: 'Feb', region: 'Mediterranean' },
  { crop: 'onion, dry', stages_days: [15, 25, 70, 40], total_days: 150, planted: 'Apr', region: 'Mediterranean' },
  { crop: 'onion, dry', stages_days: [20, 35, 110, 45], total_days: 210, planted: 'Oct/Jan', region: 'arid; California' },
  { crop: 'onion, green', stages_days: [25, 30, 10, 5], total_days: 70, planted: 'Apr/May', region: 'Mediterranean' },
  { crop: 'onion, green', stages_days: [20, 45, 20, 10], total_days: 95, planted: 'Oct', region: 'arid' },
  { crop: 'onion, green', stages_days: [30, 55, 55, 40], total_days: 180, planted: 'Mar', region: 'California' },
  { crop: 'spinach', stages_days: [20, 20, 15, 5], total_days: 60, planted: 'Apr/Sep/Oct', region: 'Mediterranean' },
  { crop: 'spinach', stages_days: [20, 20, 25, 5], total_days: 70, planted: 'Apr/Sep/Oct', region: 'Mediterranean' },
  { crop: 'spinach', stages_days: [20, 30, 40, 10], total_days: 100, planted: 'Nov', region: 'arid' },
  { crop: 'radish', stages_days: [5, 10, 15, 5], total_days: 35, planted: 'Mar/Apr', region: 'Mediterranean, Europe' },
  { crop: 'radish', stages_days: [10, 10, 15, 5], total_days: 40, planted: 'winter', region: 'arid' },
  { crop: 'eggplant', stages_days: [30, 40, 40, 20], total_days: 130, planted: 'Oct', region: 'arid' },
  { crop: 'eggplant', stages_days: [30, 45, 40, 25], total_days: 140, planted: 'May/Jun', region: 'Mediterranean' },
  { crop: 'sweet pepper', stages_days: [25, 35, 40, 20], total_days: 120, planted: 'Apr/Jun', region: 'Europe, Mediterranean' },
  { crop: 'sweet pepper', stages_days: [30, 35, 40, 20], total_days: 125, planted: 'Apr/Jun', region: 'Europe, Mediterranean' },
  { crop: 'sweet pepper', stages_days: [30, 40, 110, 30], total_days: 210, planted: 'Oct', region: 'arid' },
  { crop: 'tomato', stages_days: [30, 40, 40, 25], total_days: 135, planted: 'Jan', region: 'arid' },
  { crop: 'tomato', stages_days: [35, 40, 50, 30], total_days: 155, planted: 'Apr/May', region: 'California' },
  { crop: 'tomato', stages_days: [25, 40, 60, 30], total_days: 155, planted: 'Jan', region: 'California desert' },
  { crop: 'tomato', stages_days: [35, 45, 70, 30], total_days: 180, planted: 'Oct/Nov', region: 'arid' },
  { crop: 'tomato', stages_days: [30, 40, 45, 30], total_days: 145, planted: 'Apr/May', region: 'Mediterranean' },
  { crop: 'cantaloupe', stages_days: [30, 45, 35, 10], total_days: 120, planted: 'Jan', region: 'California' },
  { crop: 'cantaloupe', stages_days: [10, 60, 25, 25], total_days: 120, planted: 'Aug', region: 'California' },
  { crop: 'cucumber', stages_days: [20, 30, 40, 15], total_days: 105, planted: 'Jun/Aug', region: 'arid' },
  { crop: 'cucumber', stages_days: [25, 35, 50, 20], total_days: 130, planted: 'Nov/Feb', region: 'arid' },
  { crop: 'pumpkin, winter squash', stages_days: [20, 30, 30, 20], total_days: 100, planted: 'Mar/Aug', region: 'Mediterranean' },
  { crop: 'pumpkin, winter squash', stages_days: [25, 35, 35, 25], total_days: 120, planted: 'Jun', region: 'Europe' },
  { crop: 'squash, zucchini', stages_days: [25, 35, 25, 15], total_days: 100, planted: 'Apr/Dec', region: 'Mediterranean, arid' },
  {
    crop: 'squash, zucchini',
    stages_days: [20, 30, 25, 15],
    total_days: 90,
    planted: 'May/Jun',
    region: 'Mediterranean, Europe',
  },
  { crop: 'sweet melon', stages_days: [25, 35, 40, 20], total_days: 120, planted: 'May', region: 'Mediterranean' },
  { crop: 'sweet melon', stages_days: [30, 30, 50, 30], total_days: 140, planted: 'Mar', region: 'California' },
  { crop: 'sweet melon', stages_days: [15, 40, 65, 15], total_days: 135, planted: 'Aug', region: 'California desert' },
  { crop: 'sweet melon', stages_days: [30, 45, 65, 20], total_days: 160, planted: 'Dec/Jan', region: 'arid' },
  { crop: 'watermelon', stages_days: [20, 30, 30, 30], total_days: 110, planted: 'Apr', region: 'Italy' },
  { crop: 'watermelon', stages_days: [10, 20, 20, 30], total_days: 80, planted: 'May/Aug', region: 'Near East desert' },
  { crop: 'beet, table', stages_days: [15, 25, 20, 10], total_days: 70, planted: 'Apr/May', region: 'Mediterranean' },
  { crop: 'beet, table', stages_days: [25, 30, 25, 10], total_days: 90, planted: 'Feb/Mar', region: 'Mediterranean, arid' },
  { crop: 'potato', stages_days: [25, 30, 30, 30], total_days: 115, planted: 'Jan/Nov', region: 'semi-arid' },
  { crop: 'potato', stages_days: [25, 30, 45, 30], total_days: 130, planted: 'Jan/Nov', region: 'semi-arid' },
  { crop: 'potato', stages_days: [25, 30, 45, 30], total_days: 130, planted: 'May', region: 'continental' },
  { crop: 'potato', stages_days: [30, 35, 50, 30], total_days: 145, planted: 'Apr', region: 'Europe' },
  { crop: 'potato', stages_days: [45, 30, 70, 20], total_days: 165, planted: 'Apr/May', region: 'Idaho' },
  { crop: 'potato', stages_days: [30, 35, 50, 25], total_days: 140, planted: 'Dec', region: 'California desert' },
  { crop: 'sweet potato', stages_days: [20, 30, 60, 40], total_days: 150, planted: 'Apr', region: 'Mediterranean' },
  { crop: 'sweet potato', stages_days: [15, 30, 50, 30], total_days: 125, planted: 'rainy season', region: 'tropical regions' },
  { crop: 'bean, green', stages_days: [20, 30, 30, 10], total_days: 90, planted: 'Feb/Mar', region: 'California, Mediterranean' },
  {
    crop: 'bean, green',
    stages_days: [15, 25, 25, 10],
    total_days: 75,
    planted: 'Aug/Sep',
    region: 'California, Egypt, Lebanon',
  },
  { crop: 'bean, dry', stages_days: [20, 30, 40, 20], total_days: 110, planted: 'May/Jun', region: 'continental' },
  { crop: 'bean, dry', stages_days: [15, 25, 35, 20], total_days: 95, planted: 'Jun', region: 'Pakistan, California' },
  { crop: 'bean, dry', stages_days: [25, 25, 30, 20], total_days: 100, planted: 'Jun', region: 'Idaho' },
  { crop: 'fava bean', stages_days: [15, 25, 35, 15], total_days: 90, planted: 'May', region: 'Europe' },
  { crop: 'fava bean', stages_days: [20, 30, 35, 15], total_days: 100, planted: 'Mar/Apr', region: 'Mediterranean' },
  { crop: 'fava bean, green', stages_days: [90, 45, 40, 0], total_days: 175, planted: 'Nov', region: 'Europe' },
  { crop: 'cowpea', stages_days: [20, 30, 30, 20], total_days: 110, planted: 'Mar', region: 'Mediterranean' },
  { crop: 'pea', stages_days: [15, 25, 35, 15], total_days: 90, planted: 'May', region: 'Europe' },
  { crop: 'pea', stages_days: [20, 30, 35, 15], total_days: 100, planted: 'Mar/Apr', region: 'Mediterranean' },
  { crop: 'pea', stages_days: [35, 25, 30, 20], total_days: 110, planted: 'Apr', region: 'Idaho' },
  { crop: 'artichoke', stages_days: [40, 40, 250, 30], total_days: 360, planted: 'Apr, first year', region: 'California' },
  { crop: 'artichoke', stages_days: [20, 25, 250, 30], total_days: 325, planted: 'May, second year', region: 'California' },
  { crop: 'asparagus', stages_days: [50, 30, 100, 50], total_days: 230, planted: 'Feb', region: 'warm winter' },
  { crop: 'asparagus', stages_days: [90, 30, 200, 45], total_days: 365, planted: 'Feb', region: 'Mediterranean' },
  { crop: 'sunflower', stages_days: [25, 35, 45, 25], total_days: 130, planted: 'Apr/May', region: 'Mediterranean, California' },
  { crop: 'sweet corn', stages_days: [20, 20, 30, 10], total_days: 80, planted: 'Mar', region: 'Philippines' },
  { crop: 'sweet corn', stages_days: [20, 25, 25, 10], total_days: 80, planted: 'May/Jun', region: 'Mediterranean' },
  { crop: 'sweet corn', stages_days: [20, 30, 30, 10], total_days: 90, planted: 'Oct/Dec', region: 'arid' },
  { crop: 'sweet corn', stages_days: [30, 30, 30, 10], total_days: 110, planted: 'Apr', region: 'Idaho' },
  { crop: 'sweet corn', stages_days: [20, 40, 70, 10], total_days: 140, planted: 'Jan', region: 'California desert' },
  { crop: 'grape', stages_days: [20, 40, 120, 60], total_days: 240, planted: 'Apr', region: 'low latitudes' },
  { crop: 'grape', stages_days: [20, 50, 75, 60], total_days: 205, planted: 'Mar', region: 'California' },
  { crop: 'grape', stages_days: [20, 50, 90, 20], total_days: 180, planted: 'May', region: 'high latitudes' },
  { crop: 'grape', stages_days: [30, 60, 40, 80], total_days: 210, planted: 'Apr', region: 'mid latitudes, wine' },
  { crop: 'hop', stages_days: [25, 40, 80, 10], total_days: 155, planted: 'Apr', region: 'Idaho' },
];

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** The words of a set's name, months by their first three letters: the order of words does not matter. */
function wordsOf(set: string): string {
  const words = set
    .toLowerCase()
    .split(/[^a-z-]+/)
    .filter((word) => word !== '' && word !== 'and')
    .map((word) => (months.includes(word.slice(0, 3)) ? word.slice(0, 3) : word));
  return [...words].sort().join(' ');
}

/** Sets printed for a crop; a row of coefficients may carry one more word than the row of stages ("pea, fresh"). */
export function stageRowsOf(crop: string): readonly StageRow[] {
  const name = crop.trim().toLowerCase();
  const exact = stageRows.filter((row) => row.crop === name);
  return exact.length > 0 ? exact : stageRows.filter((row) => row.crop === name.split(',')[0]);
}

/** One set of a crop by its printed month and region, such as "April, Mediterranean". */
export const stageRow = (crop: string, set: string): StageRow | undefined =>
  stageRowsOf(crop).find((row) => wordsOf(`${row.planted} ${row.region}`) === wordsOf(set));
