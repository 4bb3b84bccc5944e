import { requireWhole } from '../errors.ts';
import { ownValue } from '../own-value.ts';

/** Two years of other families between: the three-year rotation. */
export const USUAL_GAP_YEARS = 3;

/**
 * Years between, by family, where they differ from {@link USUAL_GAP_YEARS}: grasses have few diseases in common with
 * vegetables. Common practice, no source.
 */
const otherGaps: Readonly<Record<string, number>> = { Poaceae: 1, Lamiaceae: 1 };

export const gapOfFamily_years = (family: string, own: ReadonlyMap<string, number> = new Map()): number =>
  own.get(family) ?? ownValue(otherGaps, family) ?? USUAL_GAP_YEARS;

/**
 * A family may come back when year - last year >= G. Never grown there: always.
 * Source: Cornell Cooperative Extension Cortland County, Rotating Vegetables by Family ("three-year rotation" is G = 3).
 * @throws InputError naming the field
 */
export function mayReturn(year: number, lastYear: number | null, gap_years: number): boolean {
  requireWhole('gap_years', gap_years, 0, 100);
  return lastYear === null || year - lastYear >= gap_years;
}

export type DiseaseRest = {
  readonly disease: string;
  /** Crops of the library that carry it. */
  readonly crops: readonly string[];
  readonly least_years: number;
  /** Equal to the least where one figure is printed; null where the crop should not come back at all. */
  readonly most_years: number | null;
};

const rest = (
  disease: string,
  crops: readonly string[],
  least_years: number,
  most_years: number | null = least_years,
): DiseaseRest => ({ disease, crops, least_years, most_years });

const brassicas = ['cabbage', 'broccoli', 'cauliflower', 'kale', 'collards', 'brussels-sprouts', 'kohlrabi'] as const;

/**
 * Years to grow no crop that takes the disease, once a bed has it.
 * Source: University of Connecticut IPM, Rotation Periods Suggested to Help Control Vegetable Diseases.
 */
export const diseaseRests: readonly DiseaseRest[] = [
  rest('clubroot of brassicas', [...brassicas, 'turnip', 'radish', 'napa-cabbage', 'pak-choi', 'rutabaga'], 7),
  rest('blackleg of brassicas', brassicas, 3, 4),
  rest('black rot of brassicas', brassicas, 2, 3),
  rest('anthracnose of beans', ['bean-bush', 'bean-pole', 'bean-lima'], 2),
  rest('bacterial blight of beans', ['bean-bush', 'bean-pole', 'bean-lima'], 2),
  rest('cercospora leaf spot of beets', ['beet', 'swiss-chard'], 3),
  rest('verticillium wilt of eggplant', ['eggplant', 'tomato', 'tomato-cherry', 'potato', 'pepper-sweet', 'strawberry'], 4),
  rest('fruit rots of eggplant', ['eggplant'], 3),
  rest('lettuce bottom rot and drop', ['lettuce-leaf', 'lettuce-romaine', 'lettuce-head'], 3),
  rest('scab and leaf spot of cucumber', ['cucumber'], 2),
  rest('leaf spots of muskmelon', ['muskmelon', 'watermelon', 'pumpkin', 'winter-squash', 'summer-squash'], 2),
  rest('yellow leaf blight of corn', ['sweet-corn'], 3),
  rest('fusarium of asparagus', ['asparagus'], 100, null),
];

const wordsOfName = (name: string): ReadonlySet<string> =>
  new Set(
    name
      .toLowerCase()
      .split(/[^a-z]+/)
      .filter((word) => word.length > 3)
      .map((word) => word.replace(/(s|es)$/, '')),
  );

/** The disease meant by a name, whatever the order of its words; undefined when none or more than one fits. */
export function diseaseOfName(name: string): DiseaseRest | undefined {
  const wanted = wordsOfName(name);
  const scored = diseaseRests.map((each) => {
    const own = wordsOfName(each.disease);
    return { each, score: [...wanted].filter((word) => own.has(word)).length / Math.max(1, wanted.size) };
  });
  const best = scored.reduce((a, b) => (b.score > a.score ? b : a));
  const unique = scored.filter(({ score }) => score === best.score).length === 1;
  return best.score >= 0.5 && unique ? best.each : undefined;
}

/** The gap that a known disease asks for: years without + 1, by the rule year - last >= G. */
export const gapAfterDisease_years = (disease: DiseaseRest): number => disease.least_years + 1;
