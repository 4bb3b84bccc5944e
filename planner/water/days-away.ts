import { requireRange, requireWhole } from '../errors.ts';
import { computed, entry, library, type Working } from '../working.ts';
import { type BedDayInput, emptyDay, fullBed, waterBed } from './bed-day.ts';
import { missing_L, monthOf } from './bed-run.ts';
import type { BedStore } from './bed-store.ts';
import type { BedYear } from './bed-year.ts';
import type { WeatherRun } from './weather-run.ts';

export type AwaySupply = {
  readonly lineId: string;
  /** Water above the stop level when leaving. */
  readonly usable_L: number;
  /** Most that the line brings in a day. */
  readonly capacity_L_per_day: number;
};

export type AwayBed = { readonly store: BedStore; readonly year: BedYear; readonly lineId: string | null };

export type DaysAwayInput = {
  readonly beds: readonly AwayBed[];
  readonly supplies: readonly AwaySupply[];
  readonly weather: WeatherRun;
  /** Month of leaving, 1 for January. */
  readonly month: number;
  /** Share of the departures that must go well. */
  readonly confidence: number;
  /** Days looked ahead at most. */
  readonly limit_days: number;
};

export type BedAway = {
  readonly bedId: string;
  /** Whole days without stress at the confidence. */
  readonly days: number;
  readonly median_days: number;
  /** Share of departures in which this bed was the first to go short. */
  readonly firstShare: number;
  /** What gives out: its own store, or the line behind it first. */
  readonly because: 'own-store' | 'line-empty' | 'line-too-weak' | 'holds-out' | 'no-crop';
};

/** Beds behind one supply, or those on none, which stand last. */
export type SupplyAway = {
  readonly lineId: string | null;
  readonly beds: number;
  readonly days: number;
  readonly median_days: number;
  /** The bed that is most often the first of them. */
  readonly firstBedId: string | null;
};

export type DaysAway = {
  readonly departures: number;
  readonly days: number;
  readonly median_days: number;
  readonly worst_days: number;
  readonly worstYear: number;
  readonly limit_days: number;
  readonly beds: readonly BedAway[];
  readonly supplies: readonly SupplyAway[];
};

export type AwayVoice = { readonly progress: (done: number, of: number) => void; readonly shouldStop: () => boolean };

/** Departures tried: every third day of the month in every year. */
const EVERY_DAYS = 3;

/**
 * Days the farm can be left, by trying departures: all beds full, the line's tank full; each day the line gives back what its
 * beds lack, up to its capacity and as long as its tank holds; a bed fails on the first day its crop stands short.
 *
 *   days at a confidence c = the number reached in a share c of the departures in that month, all years of record
 *
 * The whole farm fails with its first bed. Beds without a crop cannot fail.
 * Source: daily balance over the weather record, counted.
 * @throws InputError naming the field
 */
export function daysAway(input: DaysAwayInput, voice: AwayVoice): DaysAway {
  requireWhole('month', input.month, 1, 12);
  requireRange('confidence', input.confidence, 0.5, 1, '');
  requireWhole('limit_days', input.limit_days, 1, 120);
  const starts = departures(input);
  const lasting = input.beds.map(() => [] as number[]);
  const causes = input.beds.map(() => ({ 'own-store': 0, 'line-empty': 0, 'line-too-weak': 0 }));
  const first = input.beds.map(() => 0);
  const farm: number[] = [];
  let worst = { days: Number.POSITIVE_INFINITY, year: 0 };
  for (const [count, start] of starts.entries()) {
    voice.progress(count, starts.length);
    if (voice.shouldStop()) break;
    const tried = leave(input, start);
    let shortest = input.limit_days;
    tried.forEach(({ days, because }, at) => {
      lasting[at]?.push(days);
      const cause = causes[at];
      if (cause !== undefined && because !== null) cause[because] += 1;
      if (days < shortest) shortest = days;
    });
    tried.forEach(({ days }, at) => {
      if (days === shortest && days < input.limit_days) first[at] = (first[at] ?? 0) + 1;
    });
    farm.push(shortest);
    if (shortest < worst.days) worst = { days: shortest, year: input.weather.year[start] ?? 0 };
  }
  voice.progress(starts.length, starts.length);
  const beds = input.beds.map((bed, at): BedAway => {
    const cause = causes[at];
    const most =
      cause === undefined
        ? undefined
        : (['own-store', 'line-empty', 'line-too-weak'] as const).toSorted((a, b) => cause[b] - cause[a])[0];
    return {
      bedId: bed.store.bedId,
      days: lastingAt(lasting[at] ?? [], input.confidence),
      median_days: lastingAt(lasting[at] ?? [], 0.5),
      firstShare: farm.length === 0 ? 0 : (first[at] ?? 0) / farm.length,
      because: !isCropped(bed, input)
        ? 'no-crop'
        : most === undefined || cause === undefined || cause[most] === 0
          ? 'holds-out'
          : most,
    };
  });
  return {
    departures: farm.length,
    days: lastingAt(farm, input.confidence),
    median_days: lastingAt(farm, 0.5),
    worst_days: Number.isFinite(worst.days) ? worst.days : 0,
    worstYear: worst.year,
    limit_days: input.limit_days,
    beds,
    supplies: supplyRows(input, lasting, farm.length),
  };
}

/** Whether a crop stands on the bed at any time that a departure of the month could see. */
function isCropped({ year }: AwayBed, { weather, month, limit_days }: DaysAwayInput): boolean {
  return departures({ weather, month }).some((start) => {
    for (let day = start; day < start + limit_days; day += 1) if (year.cropped[weather.yearDay[day] ?? 0] === 1) return true;
    return false;
  });
}

function supplyRows(input: DaysAwayInput, lasting: readonly (readonly number[])[], departed: number): readonly SupplyAway[] {
  const lines = new Set(input.beds.flatMap((bed) => bed.lineId ?? []));
  const ids = [...[...lines].sort(), ...(input.beds.some((bed) => bed.lineId === null) ? [null] : [])];
  return ids.map((lineId) => {
    const own = input.beds.flatMap((bed, at) =>
      bed.lineId === lineId ? [{ bedId: bed.store.bedId, days: lasting[at] ?? [] }] : [],
    );
    const firsts = new Map<string, number>();
    const shortest = Array.from({ length: departed }, (_, turn) => {
      let least = { bedId: '', days: input.limit_days };
      for (const bed of own)
        if ((bed.days[turn] ?? input.limit_days) < least.days) least = { bedId: bed.bedId, days: bed.days[turn] ?? 0 };
      if (least.bedId !== '') firsts.set(least.bedId, (firsts.get(least.bedId) ?? 0) + 1);
      return least.days;
    });
    const first = [...firsts].sort(([a, m], [b, n]) => n - m || a.localeCompare(b))[0];
    return {
      lineId,
      beds: own.length,
      days: lastingAt(shortest, input.confidence),
      median_days: lastingAt(shortest, 0.5),
      firstBedId: first?.[0] ?? null,
    };
  });
}

/** Days that a share of the tries reach: the value at that place from the top, in whole days. */
export function lastingAt(days: readonly number[], confidence: number): number {
  const sorted = days.toSorted((a, b) => b - a);
  return sorted[Math.max(0, Math.ceil(sorted.length * confidence) - 1)] ?? 0;
}

function departures({ weather, month }: Pick<DaysAwayInput, 'weather' | 'month'>): readonly number[] {
  const starts: number[] = [];
  for (let at = 0; at < weather.yearDay.length; at += EVERY_DAYS)
    if (monthOf(weather.yearDay[at] ?? 0) === month - 1) starts.push(at);
  return starts;
}

type Tried = { readonly days: number; readonly because: 'own-store' | 'line-empty' | 'line-too-weak' | null };

function leave({ beds, supplies, weather, limit_days }: DaysAwayInput, start: number): readonly Tried[] {
  const states = beds.map(({ store, year }) => fullBed(store, year.roots_m[weather.yearDay[start] ?? 0] ?? store.depth_m));
  const failed: (Tried | null)[] = beds.map(() => null);
  const tanks = new Map(supplies.map((supply) => [supply.lineId, supply.usable_L]));
  const dry = new Map<string, 'line-empty' | 'line-too-weak'>();
  const out = emptyDay();
  const input: BedDayInput = { eto_mm: 0, rain_mm: 0, use_m2: 0, roots_m: 0, p: 0, top_L: 0, below_L: 0 };
  for (let day = 0; day < limit_days && start + day < weather.eto_mm.length; day += 1) {
    const at = start + day;
    const yearDay = weather.yearDay[at] ?? 0;
    const shares = given(beds, states, supplies, tanks, dry);
    for (const [index, bed] of beds.entries()) {
      const state = states[index];
      if (state === undefined || failed[index] !== null) continue;
      const given_L = bed.lineId === null ? 0 : (shares.get(bed.lineId) ?? 0) * missing_L(bed.store, state);
      input.eto_mm = weather.eto_mm[at] ?? 0;
      input.rain_mm = weather.rain_mm[at] ?? 0;
      input.use_m2 = bed.year.use_m2[yearDay] ?? 0;
      input.roots_m = bed.year.roots_m[yearDay] ?? bed.store.depth_m;
      input.p = bed.year.p[yearDay] ?? 0.5;
      input.top_L = bed.store.free === null ? given_L : 0;
      input.below_L = bed.store.free === null ? 0 : given_L;
      waterBed(bed.store, state, input, out);
      if (out.ks < 1 - 1e-9 && bed.year.cropped[yearDay] === 1)
        failed[index] = { days: day, because: bed.lineId === null ? 'own-store' : (dry.get(bed.lineId) ?? 'own-store') };
    }
  }
  return failed.map((each) => each ?? { days: limit_days, because: null });
}

/** Share of what its beds lack that each line brings today; the tanks go down by it. */
function given(
  beds: readonly AwayBed[],
  states: readonly { rooted_L: number; below_L: number; free_L: number; roots_m: number }[],
  supplies: readonly AwaySupply[],
  tanks: Map<string, number>,
  dry: Map<string, 'line-empty' | 'line-too-weak'>,
): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  for (const supply of supplies) {
    let lack_L = 0;
    beds.forEach((bed, at) => {
      const state = states[at];
      if (bed.lineId === supply.lineId && state !== undefined) lack_L += missing_L(bed.store, state);
    });
    const left_L = tanks.get(supply.lineId) ?? 0;
    const brings_L = Math.min(lack_L, supply.capacity_L_per_day, left_L);
    if (brings_L < lack_L - 1e-9) dry.set(supply.lineId, left_L <= supply.capacity_L_per_day ? 'line-empty' : 'line-too-weak');
    tanks.set(supply.lineId, left_L - brings_L);
    shares.set(supply.lineId, lack_L <= 0 ? 0 : brings_L / lack_L);
  }
  return shares;
}

/** How {@link daysAway} came to its days. */
export function explainDaysAway(result: DaysAway, confidence: number): Working {
  return {
    title: 'Days the farm can be left',
    formula: 'the number of days reached in a share c of all departures',
    symbols: [
      {
        symbol: 'n',
        name: 'departures tried in the record',
        figure: { value: result.departures, unit: '' },
        origin: library('the weather record'),
      },
      { symbol: 'c', name: 'share that must go well', figure: { value: confidence, unit: 'share' }, origin: entry() },
      { symbol: 'median', name: 'reached in half of them', figure: { value: result.median_days, unit: 'd' }, origin: computed() },
      {
        symbol: 'worst',
        name: `shortest, in ${result.worstYear}`,
        figure: { value: result.worst_days, unit: 'd' },
        origin: computed(),
      },
    ],
    steps: [],
    result: { value: result.days, unit: 'd' },
    sources: ['FAO Irrigation and Drainage Paper 56, eq. 84 to 86, day by day through the weather record'],
    notes: [
      'Every bed and tank is full when you leave. The farm counts as failed on the first day one crop is short of water.',
      `Looked ahead ${result.limit_days} days at most.`,
    ],
  };
}
