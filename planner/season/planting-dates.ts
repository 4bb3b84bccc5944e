import { dateOfDay, dayNumber, type IsoDate } from '../calendar.ts';
import { refuse, requireRange } from '../errors.ts';
import { computed, entry, practice, type Working } from '../working.ts';
import { dayReaching, dayToStart, type GrowthClock } from './growth-clock.ts';
import type { Timing } from './maturity.ts';

/** What is fixed, and everything else follows from it. */
export type Anchor = {
  readonly at: 'sow' | 'in-bed' | 'first-harvest';
  readonly date: IsoDate;
};

export type PlantingDatesInput = {
  readonly timing: Timing;
  readonly anchor: Anchor;
  readonly clock: GrowthClock;
  /** What the crop needs on the clock until its first harvest; the likely days where left out. */
  readonly need?: number;
};

/** The dates of one planting. The bed is taken from `inBed` up to but not counting `free`. */
export type PlantingDates = {
  readonly sow: IsoDate | null;
  readonly potOn: IsoDate | null;
  readonly inBed: IsoDate;
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  readonly free: IsoDate;
};

/**
 * Dates of a planting, forwards from sowing or planting out, or backwards from the first harvest wanted.
 *
 *   in bed = sow + indoors      first harvest: the day on which the clock has made the need since the day in bed
 *   last harvest = first + window      free = last + turnover
 *
 * A set (tuber, bulb, clove, crown) has no sowing. Intervals are half-open.
 * Source: definitions; the clock says by what growth is counted.
 * @throws InputError naming the field, also when the crop never ripens within the clock's days
 */
export function plantingDates({ timing, anchor, clock, need }: PlantingDatesInput): PlantingDates {
  requireRange('need', need ?? timing.toHarvest.likely_days, 0.0001, 100_000, '');
  requireRange('window_days', timing.window_days, 0, 3650, 'days');
  requireRange('turnover_days', timing.turnover_days, 0, 365, 'days');
  const wanted = need ?? timing.toHarvest.likely_days;
  const given = dayNumber(anchor.date);
  if (anchor.at === 'sow' && timing.method === 'set')
    refuse('anchor', 'no-sowing', 'A set is not sown: give the day it goes into the bed.');
  const inBed = anchor.at === 'first-harvest' ? startFor(clock, given, wanted) : inBedOf(timing, anchor.at, given);
  const first = anchor.at === 'first-harvest' ? given : ripeOn(clock, inBed, wanted);
  return datesAround(timing, inBed, first);
}

/** Dates around a known day in the bed and first harvest. */
export function datesAround(timing: Timing, inBed_day: number, firstHarvest_day: number): PlantingDates {
  const sow_day = timing.method === 'set' ? null : inBed_day - timing.indoors_days;
  const last_day = firstHarvest_day + timing.window_days;
  const canPotOn = sow_day !== null && timing.potOn_days !== null && sow_day + timing.potOn_days < inBed_day;
  return {
    sow: sow_day === null ? null : dateOfDay(sow_day),
    potOn: canPotOn ? dateOfDay(sow_day + (timing.potOn_days ?? 0)) : null,
    inBed: dateOfDay(inBed_day),
    firstHarvest: dateOfDay(firstHarvest_day),
    lastHarvest: dateOfDay(last_day),
    free: dateOfDay(last_day + timing.turnover_days),
  };
}

const inBedOf = (timing: Timing, at: 'sow' | 'in-bed', day: number): number => (at === 'sow' ? day + timing.indoors_days : day);

function ripeOn(clock: GrowthClock, inBed: number, need: number): number {
  return (
    dayReaching(clock, inBed, need) ??
    refuse('date', 'never-ripe', 'From this date the crop does not ripen within the days that are known. Plant it earlier.')
  );
}

function startFor(clock: GrowthClock, first: number, need: number): number {
  return (
    dayToStart(clock, first, need) ??
    refuse('date', 'too-early', 'The crop cannot be ripe so early: there is not enough growth before this date.')
  );
}

export function explainPlantingDates(input: PlantingDatesInput): Working {
  const dates = plantingDates(input);
  const days = dayNumber(dates.firstHarvest) - dayNumber(dates.inBed);
  const { timing } = input;
  const figure = (value: number) => ({ value, unit: 'days' });
  const backwards = input.anchor.at === 'first-harvest';
  return {
    title: 'Dates of the planting',
    formula: backwards
      ? 'in bed = first harvest - growing time; sow = in bed - time indoors'
      : 'in bed = sow + time indoors; first harvest = in bed + growing time; free = first + window + turnover',
    symbols: [
      { symbol: 'indoors', name: 'time indoors', figure: figure(timing.indoors_days), origin: computed('weeks of the library') },
      { symbol: 'need', name: 'growing time needed', figure: figure(timing.toHarvest.likely_days), origin: computed() },
      { symbol: 'window', name: 'first to last harvest', figure: figure(timing.window_days), origin: practice() },
      { symbol: 'turnover', name: 'days to the next crop', figure: figure(timing.turnover_days), origin: practice() },
    ],
    steps: [
      ...(dates.sow === null ? [] : [{ text: `Sow on ${dates.sow}`, figures: '', result: figure(timing.indoors_days) }]),
      { text: `In the bed on ${dates.inBed}`, figures: `given: ${input.anchor.date}`, result: figure(days) },
      { text: `First harvest on ${dates.firstHarvest}`, figures: `${days} days later`, result: figure(days) },
      { text: `Free on ${dates.free}`, figures: '', result: figure(timing.window_days + timing.turnover_days) },
    ],
    result: figure(days),
    sources: ['Definitions; common practice for window and turnover'],
    notes: [entry().text, 'Days with less light or heat than the clock needs are not counted as growing days.'],
  };
}
