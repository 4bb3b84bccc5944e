import { requireRange, requireWhole } from '../errors.ts';
import { computed, library, type Working } from '../working.ts';
import { type BedDayInput, emptyDay, fullBed, waterBed } from './bed-day.ts';
import { missing_L, monthOf } from './bed-run.ts';
import type { BedStore } from './bed-store.ts';
import type { BedYear } from './bed-year.ts';
import { lastingAt } from './days-away.ts';
import type { WeatherRun } from './weather-run.ts';

export type IntervalBed = { readonly store: BedStore; readonly year: BedYear };

/** What a bed is run dry through. */
export type IntervalTerms = {
  readonly weather: WeatherRun;
  readonly month: number;
  /** Share of the spells of the record that must pass without stress. */
  readonly confidence: number;
  readonly most_days: number;
  /** Days that water may stand in an open basin: a basin is filled only so far that it is dry by then. */
  readonly standing_days: number;
};

export type IntervalInput<Bed extends IntervalBed = IntervalBed> = IntervalTerms & { readonly beds: readonly Bed[] };

/** A bed run dry through every spell of a month: it hangs on the bed and the terms alone. */
export type BedDrying = {
  readonly bed: IntervalBed;
  /** Whether a crop stands in it at the begin of a spell. */
  readonly cropped: boolean;
  /** Longest interval of this bed alone; 0 when not even a day passes. */
  readonly days: number;
  /** Days that free water stands after filling, as long as in a share c of the spells. */
  readonly stands_days: number;
  /** Water missing after so many days from full, in a share c of the spells. */
  readonly run_L: (days: number) => number;
};

export type BedInterval = {
  readonly bedId: string;
  /** Longest interval of this bed alone; 0 when not even a day passes. */
  readonly days: number;
  /** Water that one run must bring at the line's interval. */
  readonly run_L: number;
  /** Days that free water stands in an open basin after filling; null without one. */
  readonly stands_days: number | null;
  /** How far an open basin is filled, so that no water outlasts the days set; null without one. */
  readonly fill_L: number | null;
};

export type LineInterval = {
  /** Interval of the whole line; null when no crop stands in the month. */
  readonly days: number | null;
  readonly limitedBy: string | null;
  readonly run_L: number;
  readonly beds: readonly BedInterval[];
};

const EVERY_DAYS = 3;
/** Water below this share of a basin no longer stands as a sheet. Common practice, no source. */
const DRY_SHARE = 0.05;

/**
 * Longest interval between waterings of a line in a month, and what a run must bring.
 *
 *   every spell of the record that begins in the month is run dry from full, with its rain; the interval of a bed is what a
 *   share c of the spells last; the line's is its shortest bed's; the run is what is missing by then in a share c of the spells;
 *   an open basin is filled only as far as it dries within the days that water may stand
 *
 * Source: FAO-56 chapter 8 (interval from RAW) by daily balance over the record.
 * @param dryingOf gives what is known of a bed already under the same terms
 * @throws InputError naming the field
 */
export function lineInterval<Bed extends IntervalBed>(
  input: IntervalInput<Bed>,
  dryingOf: ((bed: Bed) => BedDrying) | null = null,
): LineInterval {
  requireTerms(input);
  const starts = spellStarts(input);
  const beds = input.beds.map(dryingOf ?? ((bed) => bedDrying(bed, input, starts))).filter(({ cropped }) => cropped);
  const shortest = beds.toSorted((a, b) => a.days - b.days || (a.bed.store.bedId < b.bed.store.bedId ? -1 : 1))[0];
  const days = shortest === undefined ? null : Math.max(1, shortest.days);
  const runDays = Math.min(days ?? 1, input.most_days);
  const rows = beds.map(
    ({ bed, days: own, stands_days, run_L }): BedInterval => ({
      bedId: bed.store.bedId,
      days: own,
      run_L: run_L(runDays),
      stands_days: hasOpenBasin(bed) ? stands_days : null,
      fill_L: hasOpenBasin(bed) ? (bed.store.free?.fill_L ?? null) : null,
    }),
  );
  return {
    days,
    limitedBy: shortest?.bed.store.bedId ?? null,
    run_L: rows.reduce((sum, row) => sum + row.run_L, 0),
    beds: rows,
  };
}

function requireTerms(input: IntervalTerms): void {
  requireWhole('month', input.month, 1, 12);
  requireRange('confidence', input.confidence, 0.5, 1, '');
  requireWhole('most_days', input.most_days, 1, 60);
  requireWhole('standing_days', input.standing_days, 1, 30);
}

/** Days of the record on which spells of the month begin. */
export function spellStarts({ weather, month }: Pick<IntervalTerms, 'weather' | 'month'>): readonly number[] {
  const starts: number[] = [];
  for (let at = 0; at < weather.yearDay.length; at += EVERY_DAYS)
    if (monthOf(weather.yearDay[at] ?? 0) === month - 1) starts.push(at);
  return starts;
}

/** Runs a bed dry from full through every spell that begins in the month. @throws InputError naming the field */
export function bedDrying(whole: IntervalBed, input: IntervalTerms, starts: readonly number[] = spellStarts(input)): BedDrying {
  requireTerms(input);
  const bed = hasOpenBasin(whole) ? { ...whole, store: filledFor(whole, input, starts) } : whole;
  const spells = starts.map((start) => dryOut(bed, input, start));
  const cropped = spells.filter((spell) => spell.cropped);
  const runs = new Map<number, number>();
  return {
    bed,
    cropped: cropped.length > 0,
    days: lastingAt(
      cropped.map((spell) => spell.days),
      input.confidence,
    ),
    stands_days: highAt(
      spells.map((spell) => spell.stands_days),
      input.confidence,
    ),
    run_L(days) {
      const known = runs.get(days);
      if (known !== undefined) return known;
      const missing = starts.map((start) => missingAfter_L(bed, input.weather, start, days));
      const run = highAt(missing, input.confidence);
      runs.set(days, run);
      return run;
    },
  };
}

const hasOpenBasin = ({ store }: IntervalBed): boolean => store.free !== null && store.free.open_m2 > 0;
const HALVINGS = 7;

/** A basin filled as far as it dries within the days that water may stand, in a share c of the spells; by halving. */
function filledFor(bed: IntervalBed, input: IntervalTerms, starts: readonly number[]): BedStore {
  const { free } = bed.store;
  if (free === null) return bed.store;
  const within = { ...input, most_days: input.standing_days + 1 };
  const filled = (fill_L: number): BedStore => ({ ...bed.store, free: { ...free, fill_L } });
  const dries = (fill_L: number): boolean => {
    const tried = { ...bed, store: filled(fill_L) };
    const dry = starts.filter((start) => dryOut(tried, within, start).stands_days <= input.standing_days).length;
    return dry >= input.confidence * starts.length;
  };
  if (dries(free.fill_L)) return bed.store;
  let low = 0;
  let high = free.fill_L;
  for (let turn = 0; turn < HALVINGS; turn += 1) {
    const middle = (low + high) / 2;
    if (dries(middle)) low = middle;
    else high = middle;
  }
  return filled(low);
}

/** Value that a share of the tries do not pass. */
function highAt(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(sorted.length * share) - 1)] ?? 0;
}

type Spell = {
  readonly days: number;
  readonly cropped: boolean;
  readonly stands_days: number;
};

const anyDay = (): BedDayInput => ({ eto_mm: 0, rain_mm: 0, use_m2: 0, roots_m: 0, p: 0, top_L: 0, below_L: 0 });

/** Brings a day of the record and of the bed's year into the input of the daily balance. */
function setDay(input: BedDayInput, { store, year }: IntervalBed, weather: WeatherRun, at: number): void {
  const yearDay = weather.yearDay[at] ?? 0;
  input.eto_mm = weather.eto_mm[at] ?? 0;
  input.rain_mm = weather.rain_mm[at] ?? 0;
  input.use_m2 = year.use_m2[yearDay] ?? 0;
  input.roots_m = year.roots_m[yearDay] ?? store.depth_m;
  input.p = year.p[yearDay] ?? 0.5;
}

const fullOn = ({ store, year }: IntervalBed, weather: WeatherRun, at: number) =>
  fullBed(store, year.roots_m[weather.yearDay[at] ?? 0] ?? store.depth_m);

/** A bed from full until it is short of water and its basin has dried: what comes after tells nothing more. */
function dryOut(bed: IntervalBed, { weather, most_days }: IntervalTerms, start: number): Spell {
  const { store, year } = bed;
  const state = fullOn(bed, weather, start);
  const out = emptyDay();
  const input = anyDay();
  const dry_L = Math.max(0.05, (store.free?.fill_L ?? 0) * DRY_SHARE);
  const last = Math.min(most_days, weather.eto_mm.length - start);
  let days: number | null = null;
  let stands_days: number | null = null;
  for (let day = 0; day < last && (days === null || stands_days === null); day += 1) {
    setDay(input, bed, weather, start + day);
    waterBed(store, state, input, out);
    if (stands_days === null && state.free_L <= dry_L) stands_days = day + 1;
    if (days === null && out.ks < 1 - 1e-9 && year.cropped[weather.yearDay[start + day] ?? 0] === 1) days = day;
  }
  return {
    days: days ?? most_days,
    stands_days: stands_days ?? most_days,
    cropped: year.cropped[weather.yearDay[start] ?? 0] === 1,
  };
}

/** Water missing on the morning after so many days from full, L; the record's last day where it ends before. */
function missingAfter_L(bed: IntervalBed, weather: WeatherRun, start: number, days: number): number {
  const state = fullOn(bed, weather, start);
  const out = emptyDay();
  const input = anyDay();
  for (let at = start; at < start + days && at < weather.eto_mm.length; at += 1) {
    setDay(input, bed, weather, at);
    waterBed(bed.store, state, input, out);
  }
  return missing_L(bed.store, state);
}

/** How the interval of a line came about. */
export function explainLineInterval(
  found: LineInterval,
  names: { readonly line: string; readonly bed: string; readonly confidence: number },
): Working {
  const own = found.beds.find((bed) => bed.bedId === found.limitedBy);
  return {
    title: `Interval of ${names.line}`,
    formula: 'days until the readily available water of the first bed is gone',
    symbols: [
      {
        symbol: 'c',
        name: 'share of the record’s spells that pass without stress',
        figure: { value: names.confidence, unit: 'share' },
        origin: computed('your choice'),
      },
      {
        symbol: 'first',
        name: `bed that runs dry first: ${names.bed}`,
        figure: { value: own?.days ?? 0, unit: 'd' },
        origin: library('daily balance over the weather record'),
      },
      { symbol: 'run', name: 'water for all beds of the line', figure: { value: found.run_L, unit: 'L' }, origin: computed() },
    ],
    steps: [],
    result: { value: found.days ?? 0, unit: 'd' },
    sources: ['FAO Irrigation and Drainage Paper 56, chapter 8'],
    notes: ['Every spell starts with full beds and has the rain of its own days.'],
  };
}
