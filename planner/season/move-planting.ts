import { addDays, daysBetween, type IsoDate } from '../calendar.ts';
import { refuse } from '../errors.ts';

export type MovableDates = {
  readonly sow: IsoDate | null;
  readonly potOn: IsoDate | null;
  readonly inBed: IsoDate;
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  readonly free: IsoDate;
};

const shifted = (date: IsoDate | null, days: number): IsoDate | null => (date === null ? null : addDays(date, days));

/** The same planting a number of days later (or earlier): every length stays. */
export function moved(dates: MovableDates, days: number): MovableDates {
  return {
    sow: shifted(dates.sow, days),
    potOn: shifted(dates.potOn, days),
    inBed: addDays(dates.inBed, days),
    firstHarvest: addDays(dates.firstHarvest, days),
    lastHarvest: addDays(dates.lastHarvest, days),
    free: addDays(dates.free, days),
  };
}

/** The end of the harvest pulled a number of days later (or earlier); the turnover stays. @throws InputError */
export function stretchedEnd(dates: MovableDates, days: number): MovableDates {
  const lastHarvest = addDays(dates.lastHarvest, days);
  if (lastHarvest < dates.firstHarvest)
    refuse('lastHarvest', 'dates-out-of-order', `The harvest cannot end before it begins on ${dates.firstHarvest}.`);
  return { ...dates, lastHarvest, free: addDays(lastHarvest, daysBetween(dates.lastHarvest, dates.free)) };
}

/** The day in the bed pulled while harvest stays: the crop gets more or less time; raising moves along. @throws InputError */
export function stretchedStart(dates: MovableDates, days: number): MovableDates {
  const inBed = addDays(dates.inBed, days);
  if (inBed >= dates.firstHarvest)
    refuse('inBed', 'dates-out-of-order', `It must be in the bed before the first harvest on ${dates.firstHarvest}.`);
  return { ...dates, inBed, sow: shifted(dates.sow, days), potOn: shifted(dates.potOn, days) };
}
