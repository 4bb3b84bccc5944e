import { readFileSync } from 'node:fs';
import * as SunCalc from 'suncalc';
import { describe, expect, test } from 'vitest';
import { addDays, dayOfYear, type IsoDate } from '../../../../planner/calendar.ts';
import { dayLength_h } from '../../../../planner/climate/day-length.ts';
import { hargreaves_mm_per_day } from '../../../../planner/climate/hargreaves.ts';
import { readWeather } from '../../../../planner/climate/read-weather.ts';
import { extraterrestrial_MJ_per_m2, seriesDeclination_rad } from '../../../../planner/climate/sun.ts';
import { radiansOf } from '../../../../planner/units/convert.ts';

const LATITUDE = 47.6;
const LONGITUDE = -122.3;
/** Local noon of the place in hours of world time. */
const NOON_UTC_H = 12 - LONGITUDE / 15;
const dates = Array.from({ length: 1461 }, (_, at) => addDays('2012-01-01' as IsoDate, at));
const at = (date: IsoDate, hour: number): Date => new Date(Date.parse(`${date}T00:00:00Z`) + hour * 3_600_000);

/** Sunlight above the air added up from the sun's height, by the library; distance to the sun by a series of its own. */
function addedUp_MJ_per_m2(date: IsoDate): number {
  const step_h = 1 / 6;
  const distance = 1 - 0.01671 * Math.cos((2 * Math.PI * (dayOfYear(date) - 3)) / 365.256);
  let sum_MJ = 0;
  for (let hour = NOON_UTC_H - 12; hour < NOON_UTC_H + 12; hour += step_h) {
    const height = radiansOf(SunCalc.getPosition(at(date, hour + step_h / 2), LATITUDE, LONGITUDE).altitude);
    // 1366.67 W/m2 is the standard's 0.0820 MJ m-2 min-1
    sum_MJ += (Math.max(0, Math.sin(height)) * 1366.67 * step_h * 3600) / 1e6 / distance ** 2;
  }
  return sum_MJ;
}

describe('day length and radiation by a solar position library, all days of the shipped record', () => {
  test('sunrise to sunset agree within 4 minutes', () => {
    // the calendar's drift of 3/4 day and noon here a third of a day after Greenwich's: 1.2 days at 3.4 minutes a day
    for (const date of dates) {
      const { sunrise, sunset } = SunCalc.getTimes(at(date, NOON_UTC_H), LATITUDE, LONGITUDE);
      const other_h = ((sunset?.getTime() ?? Number.NaN) - (sunrise?.getTime() ?? Number.NaN)) / 3_600_000;
      expect(Math.abs(dayLength_h(LATITUDE, dayOfYear(date)) - other_h), date).toBeLessThan(4 / 60);
    }
  });

  test('sunlight above the air agrees with the sun’s height added up every ten minutes', () => {
    for (const date of dates.filter((_, index) => index % 9 === 0)) {
      const j = dayOfYear(date);
      const other = addedUp_MJ_per_m2(date);
      // the same 1.2 days, 2 % of a low sun's light, and light bent at the horizon, which the library counts, 0.9 %
      const exact = extraterrestrial_MJ_per_m2(LATITUDE, j, seriesDeclination_rad(j));
      expect(Math.abs(exact / other - 1), `${date}, series`).toBeLessThan(0.03);
      // the standard's own declination lags by up to 1.5 degrees in autumn: up to 6 % of the low sun's light
      const standard = extraterrestrial_MJ_per_m2(LATITUDE, j);
      const month = Number(date.slice(5, 7));
      expect(Math.abs(standard / other - 1), `${date}, standard`).toBeLessThan(month >= 4 && month <= 8 ? 0.03 : 0.06);
    }
  });

  test('evapotranspiration of the whole record by the library’s sun stays within 3 % over each year', () => {
    const text = readFileSync(new URL('../../../../resources/weather/coast-47n-2012-2015.csv', import.meta.url), 'utf8');
    const days = readWeather(
      text
        .trim()
        .split(/\r?\n/)
        .map((line) => line.split(',')),
    )?.days;
    expect(days).toHaveLength(1461);
    const sums = new Map<number, { ours: number; theirs: number }>();
    for (const [index, day] of (days ?? []).entries()) {
      if (index % 4 !== 0) continue;
      const temperatures = { tmax_C: day.tmax_C ?? Number.NaN, tmin_C: day.tmin_C ?? Number.NaN };
      const of = (ra: number) => hargreaves_mm_per_day({ ...temperatures, extraterrestrial_MJ_per_m2: ra });
      const ours = of(extraterrestrial_MJ_per_m2(LATITUDE, dayOfYear(day.date)));
      const theirs = of(addedUp_MJ_per_m2(day.date));
      // no single day by more than the standard's declination explains, or a tenth of a millimetre in winter
      expect(Math.abs(ours - theirs), day.date).toBeLessThan(Math.max(0.1, 0.06 * theirs));
      const year = Number(day.date.slice(0, 4));
      const sum = sums.get(year) ?? { ours: 0, theirs: 0 };
      sums.set(year, { ours: sum.ours + ours, theirs: sum.theirs + theirs });
    }
    expect(sums.size).toBe(4);
    for (const { ours, theirs } of sums.values()) expect(Math.abs(ours / theirs - 1)).toBeLessThan(0.03);
  });
});
