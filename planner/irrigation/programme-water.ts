import { dayNumber, type IsoDate } from '../calendar.ts';
import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import type { DrawDownDay } from './reservoir.ts';

/** What the timer does in a month: every so many days, at a time, for some minutes, one zone. */
export type TimerEvent = {
  readonly month: number;
  readonly every_days: number;
  readonly start: string;
  readonly run_min: number;
  readonly zone: number;
};

/** What a zone passes while it runs. */
export type ZoneFlow = { readonly zone: number; readonly total_L_per_h: number };

const monthOf = (date: IsoDate): number => Number(date.slice(5, 7));

/** True when an event runs on a day: in its month, on every n-th day counted without a break from one fixed day. */
export function runsOn(event: Pick<TimerEvent, 'month' | 'every_days'>, date: IsoDate): boolean {
  return monthOf(date) === event.month && dayNumber(date) % event.every_days === 0;
}

/** Water a programme takes in one run of an event. */
export function runWater_L(event: Pick<TimerEvent, 'run_min' | 'zone'>, flows: readonly ZoneFlow[]): number {
  const flow = flows.find((each) => each.zone === event.zone)?.total_L_per_h ?? 0;
  return Math.max(0, convert(flow, 'L_per_h', 'L_per_min') * event.run_min);
}

/**
 * Water that a timer's programme takes on each day, beside the day's rain: V = sum over its runs of q t.
 * Source: water balance.
 * @throws InputError when an event has no month or no interval
 */
export function programmeDays(
  events: readonly TimerEvent[],
  flows: readonly ZoneFlow[],
  days: readonly { readonly date: IsoDate; readonly rain_mm: number }[],
): readonly DrawDownDay[] {
  events.forEach((event, at) => {
    requireRange(`events.${at}.month`, event.month, 1, 12, '');
    requireRange(`events.${at}.every_days`, event.every_days, 1, 366, 'days');
  });
  return days.map(({ date, rain_mm }) => ({
    date,
    rain_mm,
    need_L: events.reduce((sum, event) => (runsOn(event, date) ? sum + runWater_L(event, flows) : sum), 0),
  }));
}

export type MonthLoad = {
  readonly month: number;
  /** Runs on a mean day of the month. */
  readonly runsPerDay: number;
  /** Minutes of pumping on a mean day. */
  readonly pump_min_per_day: number;
  readonly water_L_per_day: number;
};

/** Runs, minutes and water of a mean day of each month with a programme. */
export function monthLoads(events: readonly TimerEvent[], flows: readonly ZoneFlow[]): readonly MonthLoad[] {
  return [...new Set(events.map((event) => event.month))]
    .sort((one, other) => one - other)
    .map((month) => {
      const inMonth = events.filter((event) => event.month === month);
      const sum = (value: (event: TimerEvent) => number): number =>
        inMonth.reduce((total, event) => total + value(event) / event.every_days, 0);
      return {
        month,
        runsPerDay: sum(() => 1),
        pump_min_per_day: sum((event) => event.run_min),
        water_L_per_day: sum((event) => runWater_L(event, flows)),
      };
    });
}
