import { type IsoDate, yearOf } from '../calendar.ts';
import { type DrawDownDay, type DrawDownInput, drawDown, type ReservoirDay, refillDates, worstSpells } from './reservoir.ts';

export type ReservoirYear = {
  readonly year: number;
  readonly days: readonly ReservoirDay[];
  readonly need_L: number;
  readonly caught_L: number;
  readonly overflow_L: number;
  readonly refills: number;
  /** Shortest time from full until the first short run, and the day it began; null when no run of the year falls short. */
  readonly shortest_days: number | null;
  readonly shortestFrom: IsoDate | null;
};

/**
 * Every year of the weather record run through the reservoir: filled by hand whenever a run would fall short, and apart from
 * that the shortest time it lasts when nobody fills it.
 * Source: water balance on the record; see `reservoir.ts`.
 * @throws InputError naming the field
 */
export function reservoirYears(
  input: Omit<DrawDownInput, 'days' | 'start_L' | 'refilledByHand'>,
  days: readonly DrawDownDay[],
): readonly ReservoirYear[] {
  const byYear = [...Map.groupBy(days, (day) => yearOf(day.date))].map(([year, inYear]) => ({ year, days: inYear }));
  if (byYear.length === 0) return [];
  const spells = new Map(worstSpells(input, byYear).map(({ year, worst }) => [year, worst]));
  return byYear.map(({ year, days: inYear }): ReservoirYear => {
    const run = drawDown({ ...input, start_L: input.capacity_L, refilledByHand: true, days: inYear });
    const sum = (value: (day: ReservoirDay) => number): number => run.reduce((total, day) => total + value(day), 0);
    const spell = spells.get(year) ?? null;
    return {
      year,
      days: run,
      need_L: inYear.reduce((total, day) => total + day.need_L, 0),
      caught_L: sum((day) => day.caught_L),
      overflow_L: sum((day) => day.overflow_L),
      refills: refillDates(run).length,
      shortest_days: spell?.days ?? null,
      shortestFrom: spell?.from ?? null,
    };
  });
}
