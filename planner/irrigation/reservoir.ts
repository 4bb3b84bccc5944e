import type { IsoDate } from '../calendar.ts';
import { refuse, requirePositive, requireRange } from '../errors.ts';
import { entry, type Working } from '../working.ts';
import { rainKept } from './rain-catch.ts';

export type DaysAwayInput = {
  readonly usable_L: number;
  readonly beds: number;
  readonly fill_L: number;
  readonly fillsPerDay: number;
};

/**
 * Days a reservoir carries equal fills, and how many whole fills of all beds it holds; rain and hot days left out.
 * Source: water balance.
 * @throws InputError naming the field
 */
export function daysAway(input: DaysAwayInput): { readonly days: number; readonly wholeFills: number } {
  requireRange('usable_L', input.usable_L, 0, 1e9, 'L');
  for (const key of ['beds', 'fill_L', 'fillsPerDay'] as const) requirePositive(key, input[key], '');
  const round_L = input.beds * input.fill_L;
  return { days: input.usable_L / (round_L * input.fillsPerDay), wholeFills: Math.floor(input.usable_L / round_L) };
}

/** Whole runs that the usable part of a reservoir gives. @throws InputError naming the field */
export function wholeRuns(capacity_L: number, usableShare: number, run_L: number): number {
  requireRange('capacity_L', capacity_L, 0, 1e9, 'L');
  requireRange('usableShare', usableShare, 0, 1, '');
  requirePositive('run_L', run_L, 'L');
  return Math.floor((capacity_L * usableShare) / run_L);
}

export type DrawDownDay = { readonly date: IsoDate; readonly need_L: number; readonly rain_mm: number };

export type Catchment = {
  readonly area_m2: number;
  readonly catchShare: number;
  readonly firstFlush_mm: number;
  /** Dry days after which the roof must be washed again. */
  readonly dryDays: number;
};

export type DrawDownInput = {
  readonly capacity_L: number;
  /** Share of the capacity above the pump's stop level. */
  readonly usableShare: number;
  readonly start_L: number;
  readonly days: readonly DrawDownDay[];
  readonly catchment: Catchment | null;
  readonly floatTopUp_L_per_day: number;
  /** True when the grower fills it up on the day before it would run short. */
  readonly refilledByHand: boolean;
};

export type ReservoirDay = {
  readonly date: IsoDate;
  readonly level_L: number;
  readonly caught_L: number;
  readonly overflow_L: number;
  readonly given_L: number;
  readonly short_L: number;
  readonly refill_L: number;
};

/** Rain below this does not wet the roof enough to end a dry spell, 1 mm (common practice, no source). */
const WET_DAY_MM = 1;

/**
 * Reservoir from day to day: rain caught first, then the float's top-up, then the day's watering. A day that would leave
 * less than its need above the stop level is filled up by hand first, where the grower does so, and dated.
 *
 *   level' = min(capacity, level + caught + top-up) - min(need, usable)
 *
 * Order of the catch: rain x C, less first flush after a dry spell, less overflow.
 * Source: water balance; order after rain-catchment pages.
 * @throws InputError naming the field
 */
export function drawDown(input: DrawDownInput): readonly ReservoirDay[] {
  requirePositive('capacity_L', input.capacity_L, 'L');
  requireRange('usableShare', input.usableShare, 0, 1, '');
  requireRange('start_L', input.start_L, 0, input.capacity_L, 'L');
  requireRange('floatTopUp_L_per_day', input.floatTopUp_L_per_day, 0, 1e9, 'L/day');
  const dead_L = input.capacity_L * (1 - input.usableShare);
  let level_L = input.start_L;
  let dry = Number.POSITIVE_INFINITY;
  return input.days.map((day, at) => {
    requireRange(`days.${at}.need_L`, day.need_L, 0, 1e9, 'L');
    let caught_L = 0;
    let overflow_L = 0;
    if (input.catchment !== null) {
      const { area_m2, catchShare, dryDays } = input.catchment;
      const firstFlush_mm = dry >= dryDays ? input.catchment.firstFlush_mm : 0;
      const kept = rainKept({ area_m2, catchShare, firstFlush_mm, rain_mm: day.rain_mm, free_L: input.capacity_L - level_L });
      caught_L = kept.collected_L;
      overflow_L = kept.overflow_L;
    }
    dry = day.rain_mm >= WET_DAY_MM ? 0 : dry + 1;
    level_L += caught_L;
    level_L += Math.min(input.floatTopUp_L_per_day, input.capacity_L - level_L);
    let refill_L = 0;
    if (input.refilledByHand && day.need_L > 0 && level_L - dead_L < day.need_L) {
      refill_L = input.capacity_L - level_L;
      level_L = input.capacity_L;
    }
    const given_L = Math.min(day.need_L, Math.max(0, level_L - dead_L));
    level_L -= given_L;
    return { date: day.date, level_L, caught_L, overflow_L, given_L, short_L: day.need_L - given_L, refill_L };
  });
}

/** The dates on which the reservoir has to be filled by hand, with what it takes. */
export function refillDates(days: readonly ReservoirDay[]): readonly { readonly date: IsoDate; readonly refill_L: number }[] {
  return days.filter((day) => day.refill_L > 0).map(({ date, refill_L }) => ({ date, refill_L }));
}

export type SpellDaysAway = { readonly year: number; readonly from: IsoDate; readonly days: number };

/**
 * Days from full until the first short day when leaving before the worst spell of each year: every start within the
 * year is tried and the shortest kept. `null` where a year never runs short.
 * Source: water balance on the weather record.
 * @throws InputError when there are no days
 */
export function worstSpells(
  input: Omit<DrawDownInput, 'days' | 'start_L' | 'refilledByHand'>,
  years: readonly { readonly year: number; readonly days: readonly DrawDownDay[] }[],
): readonly { readonly year: number; readonly worst: SpellDaysAway | null }[] {
  if (years.length === 0) refuse('years', 'too-few', 'years: a weather record is needed.');
  return years.map(({ year, days }) => {
    let worst: SpellDaysAway | null = null;
    for (let start = 0; start < days.length; start += 1) {
      const length = worst === null ? days.length - start : Math.min(days.length - start, worst.days);
      const tried = drawDown({
        ...input,
        start_L: input.capacity_L,
        refilledByHand: false,
        days: days.slice(start, start + length),
      });
      const short = tried.findIndex((day) => day.short_L > 0);
      const from = days[start]?.date;
      if (short >= 0 && from !== undefined && (worst === null || short < worst.days)) worst = { year, from, days: short };
    }
    return { year, worst };
  });
}

/** How {@link daysAway} came to its days. */
export function explainDaysAway(input: DaysAwayInput): Working {
  const away = daysAway(input);
  return {
    title: 'Days the reservoir carries',
    formula: 'days = U / (n V f)',
    symbols: [
      { symbol: 'U', name: 'usable volume', figure: { value: input.usable_L, unit: 'L' }, origin: entry() },
      { symbol: 'n', name: 'beds', figure: { value: input.beds, unit: '' }, origin: entry() },
      { symbol: 'V', name: 'one fill', figure: { value: input.fill_L, unit: 'L' }, origin: entry() },
      { symbol: 'f', name: 'fills a day', figure: { value: input.fillsPerDay, unit: '' }, origin: entry() },
    ],
    steps: [{ text: 'water for one round of all beds', figures: 'n V', result: { value: input.beds * input.fill_L, unit: 'L' } }],
    result: { value: away.days, unit: 'd' },
    sources: ['Water balance'],
    notes: [`Whole rounds: ${away.wholeFills}. Rain and hot days are not in this figure.`],
  };
}
