import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { computed, type Working } from '../working.ts';
import { minutesFor } from './basin-fill.ts';

/** One outlet's wish: water wanted in a run, and what its basin holds before it runs over (null for open ground). */
export type RunWish = {
  readonly id: string;
  readonly flow_L_per_h: number;
  readonly wanted_L: number;
  readonly holds_L: number | null;
};

export type RunRow = {
  readonly id: string;
  /** Minutes for this outlet's own wish; null where nothing flows. */
  readonly own_min: number | null;
  readonly given_L: number;
  /** More than wanted. */
  readonly beyond_L: number;
  /** Beyond what the basin holds: runs over. */
  readonly over_L: number;
};

export type RunTime = {
  readonly run_min: number;
  readonly decides: string | null;
  readonly rows: readonly RunRow[];
  readonly total_L: number;
  readonly beyond_L: number;
  readonly over_L: number;
  readonly unserved: readonly string[];
};

/**
 * Minutes of one run of a zone: long enough for the slowest outlet to get its wish; what the fastest then holds or spills.
 *
 *   t = max over outlets of V_wanted / q
 *
 * Outlets that get no flow are named and left out. Source: water balance.
 * @throws InputError naming the field
 */
export function runTime(wishes: readonly RunWish[]): RunTime {
  wishes.forEach((wish, at) => {
    requireRange(`wishes.${at}.wanted_L`, wish.wanted_L, 0, 1e6, 'L');
  });
  const own = wishes.map((wish) => (wish.flow_L_per_h > 0 ? minutesFor(wish.wanted_L, wish.flow_L_per_h) : null));
  let run_min = 0;
  let decides: string | null = null;
  wishes.forEach((wish, at) => {
    const minutes = own[at];
    if (minutes !== null && minutes !== undefined && minutes > run_min) {
      run_min = minutes;
      decides = wish.id;
    }
  });
  return runOf(wishes, run_min, decides, own);
}

/** What a run of given minutes does. @throws InputError naming the field */
export function runOfMinutes(wishes: readonly RunWish[], run_min: number): RunTime {
  requireRange('run_min', run_min, 0, 10_000, 'min');
  return runOf(
    wishes,
    run_min,
    null,
    wishes.map((wish) => (wish.flow_L_per_h > 0 ? minutesFor(wish.wanted_L, wish.flow_L_per_h) : null)),
  );
}

function runOf(wishes: readonly RunWish[], run_min: number, decides: string | null, own: readonly (number | null)[]): RunTime {
  const rows = wishes.map((wish, at): RunRow => {
    const given_L = convert(Math.max(0, wish.flow_L_per_h), 'L_per_h', 'L_per_min') * run_min;
    return {
      id: wish.id,
      own_min: own[at] ?? null,
      given_L,
      beyond_L: Math.max(0, given_L - wish.wanted_L),
      over_L: wish.holds_L === null ? 0 : Math.max(0, given_L - wish.holds_L),
    };
  });
  const sum = (value: (row: RunRow) => number): number => rows.reduce((total, row) => total + value(row), 0);
  return {
    run_min,
    decides,
    rows,
    total_L: sum((row) => row.given_L),
    beyond_L: sum((row) => row.beyond_L),
    over_L: sum((row) => row.over_L),
    unserved: wishes.filter((wish) => wish.wanted_L > 0 && !(wish.flow_L_per_h > 0)).map((wish) => wish.id),
  };
}

/** How {@link runTime} came to its minutes. */
export function explainRunTime(wishes: readonly RunWish[]): Working {
  const run = runTime(wishes);
  const slowest = wishes.find((wish) => wish.id === run.decides);
  return {
    title: 'Minutes for the slowest bed',
    formula: 't = max (V / q)',
    symbols:
      slowest === undefined
        ? []
        : [
            {
              symbol: 'V',
              name: 'water wanted in the slowest bed',
              figure: { value: slowest.wanted_L, unit: 'L' },
              origin: computed('its basin, or its need'),
            },
            {
              symbol: 'q',
              name: 'flow at the slowest bed',
              figure: { value: slowest.flow_L_per_h, unit: 'L_per_h' },
              origin: computed('the solved line'),
            },
          ],
    steps: [
      { text: 'all beds together take', figures: 'sum of q t', result: { value: run.total_L, unit: 'L' } },
      { text: 'more than wanted', figures: 'sum of q t - V', result: { value: run.beyond_L, unit: 'L' } },
    ],
    result: { value: run.run_min, unit: 'min' },
    sources: ['Water balance'],
    notes: run.unserved.length > 0 ? [`${run.unserved.length} beds get no water at all and are not in this figure.`] : [],
  };
}
