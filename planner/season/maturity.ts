import { type KnownFacts, numberOf, wordsOf } from '../crops/crop-facts.ts';
import { requiredFact } from '../crops/required-fact.ts';
import { requireRange } from '../errors.ts';

export type Method = 'direct' | 'transplant' | 'set';
export type CountedFrom = 'seed' | 'transplant' | 'planting';

/** Three guesses of one length: early, likely and late. */
export type DaysRange = { readonly early_days: number; readonly likely_days: number; readonly late_days: number };

export type MaturityInput = {
  readonly maturity_days: number;
  readonly countedFrom: CountedFrom;
  readonly indoors_days: number;
};

export type Maturity = { readonly inBed_days: number; readonly fromSeed_days: number };

/**
 * Days to first harvest in the bed and from seed, by what the printed days are counted from.
 *
 *   counted from transplanting or planting:  in bed = D           from seed = D + indoors
 *   counted from seed:                       in bed = D - indoors  from seed = D
 *
 *   D         printed days to maturity   days   1 to 1000
 *   indoors   days raised before         days   0 to 365; 0 when sown in place
 *
 * The check of growth at transplanting is not subtracted (common practice, no source).
 * Source: the footnotes of North Dakota State University Extension H-912 make the same distinction.
 * @throws InputError naming the field, also when the raising takes longer than the crop itself
 */
export function maturityOf(input: MaturityInput): Maturity {
  requireRange('maturity_days', input.maturity_days, 1, 1000, 'days');
  requireRange('indoors_days', input.indoors_days, 0, 365, 'days');
  if (input.countedFrom !== 'seed')
    return { inBed_days: input.maturity_days, fromSeed_days: input.maturity_days + input.indoors_days };
  requireRange('indoors_days', input.indoors_days, 0, input.maturity_days - 1, 'days');
  return { inBed_days: input.maturity_days - input.indoors_days, fromSeed_days: input.maturity_days };
}

/** Days between harvest's end and the next crop. Common practice, no source. */
export const TURNOVER_DAYS = 3;

/** All lengths that dates are made from. */
export type Timing = {
  readonly method: Method;
  readonly indoors_days: number;
  /** Days after sowing at which seedlings go to a larger pot; null when they do not. */
  readonly potOn_days: number | null;
  readonly toHarvest: DaysRange;
  readonly window_days: number;
  readonly turnover_days: number;
};

const countedFromOf = (facts: KnownFacts): CountedFrom => {
  const words = wordsOf(facts, 'days_counted_from');
  return words === 'transplant' || words === 'planting' ? words : 'seed';
};

/**
 * The lengths of a crop's stages, from what is known of it. Days counted from transplanting are lengthened by the weeks
 * indoors when the crop is sown in place. The likely length is the middle of early and late.
 * @throws InputError where a needed figure is not known
 */
export function timingOf(facts: KnownFacts, method: Method, cropName: string, turnover_days: number = TURNOVER_DAYS): Timing {
  const early = requiredFact(facts, 'maturity_min_days', cropName);
  const late = numberOf(facts, 'maturity_max_days') ?? early;
  const countedFrom = countedFromOf(facts);
  const raised = method === 'transplant' || (method === 'direct' && countedFrom === 'transplant');
  const weeks = raised ? middle(numberOf(facts, 'weeks_indoors_min'), numberOf(facts, 'weeks_indoors_max')) : 0;
  const indoors_days = Math.round(7 * (weeks ?? requiredFact(facts, 'weeks_indoors_max', cropName)));
  const bedDays = (maturity_days: number): number => {
    const known = maturityOf({
      maturity_days,
      countedFrom,
      indoors_days: countedFrom === 'seed' ? Math.min(indoors_days, maturity_days - 1) : indoors_days,
    });
    return method === 'direct' ? known.fromSeed_days : known.inBed_days;
  };
  return {
    method,
    indoors_days: method === 'transplant' ? indoors_days : 0,
    potOn_days: null,
    toHarvest: {
      early_days: bedDays(early),
      likely_days: bedDays(Math.round((early + late) / 2)),
      late_days: bedDays(late),
    },
    window_days: requiredFact(facts, 'harvest_window_days', cropName),
    turnover_days,
  };
}

const middle = (low: number | null, high: number | null): number | null => {
  if (low === null) return high;
  return high === null ? low : (low + high) / 2;
};
