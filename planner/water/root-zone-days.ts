import { requireRange } from '../errors.ts';
import { stressShare } from './soil-store.ts';

export type RootZoneInput = {
  readonly depletion_mm: number;
  readonly available_mm: number;
  readonly p: number;
  readonly in_mm: number;
  readonly etc_mm: number;
};

export type RootZoneDay = {
  readonly depletion_mm: number;
  readonly drained_mm: number;
  readonly ks: number;
  readonly used_mm: number;
};

/**
 * One day of the root zone: water comes first, what is over the depletion drains, then the crop uses.
 *
 *   Dr = max(0, Dr - in) + Ks ETc,   drained = max(0, in - Dr),   0 <= Dr <= TAW
 *
 * Source: FAO-56 eq. 85, 86, 88; the order within the day reproduces Example 38, eq. 88 read literally does not.
 */
export function rootZoneDay({ depletion_mm, available_mm, p, in_mm, etc_mm }: RootZoneInput): RootZoneDay {
  const drained_mm = Math.max(0, in_mm - depletion_mm);
  const after_mm = Math.max(0, depletion_mm - in_mm);
  const ks = stressShare(after_mm, available_mm, p);
  const used_mm = Math.min(Math.max(0, available_mm - after_mm), ks * etc_mm);
  return { depletion_mm: after_mm + used_mm, drained_mm, ks, used_mm };
}

export type ScheduleDay = { readonly rain_mm: number; readonly etc_mm: number; readonly available_mm: number };

export type ScheduleInput = {
  readonly days: readonly ScheduleDay[];
  readonly p: number;
  readonly start_mm: number;
  /** Depth given on the first watering; null gives back just what is missing. */
  readonly first_mm: number | null;
};

/**
 * A schedule that waters on the morning on which the readily available part is gone, and then fills up.
 * Source: FAO-56 chapter 8, Example 38.
 * @throws InputError naming the field
 */
export function schedule(input: ScheduleInput): readonly (RootZoneDay & { readonly given_mm: number })[] {
  requireRange('p', input.p, 0, 1, '');
  requireRange('start_mm', input.start_mm, 0, 2000, 'mm');
  let depletion_mm = input.start_mm;
  let first = input.first_mm;
  return input.days.map((day) => {
    const due = depletion_mm >= input.p * day.available_mm - 1e-9;
    const given_mm = due ? (first ?? depletion_mm) : 0;
    if (due) first = null;
    const step = rootZoneDay({
      depletion_mm,
      available_mm: day.available_mm,
      p: input.p,
      in_mm: day.rain_mm + given_mm,
      etc_mm: day.etc_mm,
    });
    depletion_mm = step.depletion_mm;
    return { ...step, given_mm };
  });
}

/** Days without any water. Source: FAO-56 eq. 84, 85; checked with Example 37. */
export function dryDays(input: {
  readonly etc_mm: readonly number[];
  readonly available_mm: number;
  readonly p: number;
  readonly start_mm: number;
}): readonly RootZoneDay[] {
  let depletion_mm = input.start_mm;
  return input.etc_mm.map((etc_mm) => {
    const step = rootZoneDay({ depletion_mm, available_mm: input.available_mm, p: input.p, in_mm: 0, etc_mm });
    depletion_mm = step.depletion_mm;
    return step;
  });
}
