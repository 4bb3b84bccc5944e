import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { CIVIL_TWILIGHT_deg, dayLength_h } from '../../../../planner/climate/day-length.ts';
import { degreeDays } from '../../../../planner/climate/degree-days.ts';
import { fillGaps } from '../../../../planner/climate/fill-gaps.ts';
import { frostDays, frostYears } from '../../../../planner/climate/frost-dates.ts';
import {
  chanceOfFrostAfter,
  empiricalQuantile,
  frostDate,
  meanAndSpread,
  mixedFrost,
  normalValue,
} from '../../../../planner/climate/frost-quantiles.ts';
import { noaaDate, noaaFixedLine, noaaLine, noaaReading } from '../../../../planner/climate/noaa-reading.ts';
import { normalQuantile } from '../../../../planner/climate/normal-quantile.ts';
import { readWeather, weatherFormat } from '../../../../planner/climate/read-weather.ts';
import { highestSpell } from '../../../../planner/climate/spells.ts';
import { weatherDoubts, withoutAbsurd } from '../../../../planner/climate/weather-checks.ts';
import { longestDryRun, wetDry } from '../../../../planner/climate/wet-dry.ts';
import { aWeatherDay } from '../../../builders/a-weather-day.ts';

const date = (text: string) => text as IsoDate;

describe('heat of a day', () => {
  // mean 15, half range 10; base 10: t = arcsin(-1/2) = -30 degrees, [5 x 120 degrees + 10 cos 30] / pi
  test('by each method', () => {
    const day = { tmax_C: 25, tmin_C: 5, base_C: 10 };
    expect(degreeDays('mean-against-base', day)).toBe(5);
    expect(degreeDays('extremes-held', day)).toBe(7.5);
    expect(degreeDays('extremes-held', { ...day, upper_C: 20 })).toBe(5);
    expect(degreeDays('single-sine', day)).toBeCloseTo((5 * ((2 / 3) * Math.PI) + 10 * Math.cos(Math.PI / 6)) / Math.PI, 9);
  });
  test('a day wholly below the base has none, wholly above it the mean', () => {
    for (const method of ['mean-against-base', 'single-sine'] as const) {
      expect(degreeDays(method, { tmax_C: 10, tmin_C: 2, base_C: 10 })).toBe(0);
      expect(degreeDays(method, { tmax_C: 20, tmin_C: 10, base_C: 10 })).toBe(5);
    }
    expect(degreeDays('extremes-held', { tmax_C: 8, tmin_C: 2, base_C: 10, upper_C: 10 })).toBe(0);
  });
});

describe('day length at the ends of the world', () => {
  test('the pole has its day from March and its night from September', () => {
    expect([dayLength_h(90, 172), dayLength_h(90, 355), dayLength_h(-90, 355)]).toEqual([24, 0, 24]);
    expect([dayLength_h(80, 172), dayLength_h(80, 355)]).toEqual([24, 0]);
  });
  test('civil twilight makes the day longer', () => {
    expect(dayLength_h(47.6, 80, CIVIL_TWILIGHT_deg)).toBeGreaterThan(dayLength_h(47.6, 80) + 0.9);
  });
});

describe('frost', () => {
  const at = (text: string, tmin_C: number | null) => ({ date: date(text), tmin_C });
  test('the last of spring and the first of fall, a freeze at the threshold itself, years in order', () => {
    const record = [
      at('2014-05-01', 0),
      at('2014-04-01', -2),
      at('2014-06-30', 0.1),
      at('2014-07-01', -1),
      at('2014-10-05', -3),
      at('2013-06-30', -1),
      at('2013-10-05', 1),
      at('2013-12-05', null),
    ];
    expect(frostYears(record)).toEqual([
      { year: 2013, lastSpring: '2013-06-30', firstFall: null },
      { year: 2014, lastSpring: '2014-05-01', firstFall: '2014-07-01' },
    ]);
    expect(frostYears([at('2014-10-07', -1), at('2014-10-05', -1)])[0]?.firstFall).toBe('2014-10-05');
    expect(frostYears(record, -2)[1]).toEqual({ year: 2014, lastSpring: '2014-04-01', firstFall: '2014-10-05' });
  });
  test('as days of the year, empty where none was', () => {
    const years = [
      { year: 2013, lastSpring: date('2013-02-01'), firstFall: null },
      { year: 2014, lastSpring: null, firstFall: date('2014-12-31') },
    ];
    expect(frostDays(years, 'spring')).toEqual([32, null]);
    expect(frostDays(years, 'fall')).toEqual([null, 365]);
  });
  test('quantiles, means and spreads by hand', () => {
    expect([0, 0.25, 0.5, 1].map((p) => empiricalQuantile([40, 10, 20], p))).toEqual([10, 15, 20, 40]);
    expect(meanAndSpread([2, 4, 6])).toEqual({ mean: 4, sd: 2 });
    expect(meanAndSpread([7])).toEqual({ mean: 7, sd: 0 });
    expect(normalValue(100, 10, 0.975)).toBeCloseTo(119.59964, 4);
  });
  // standard normal table: z(0.9) 1.28155, z(0.99) 2.32635, z(0.001) -3.09023
  test('the normal curve in its middle and in both tails', () => {
    expect([0.5, 0.9, 0.99, 0.001].map((p) => Number(normalQuantile(p).toFixed(5)))).toEqual([0, 1.28155, 2.32635, -3.09023]);
    expect(normalQuantile(0.02425)).toBeCloseTo(normalQuantile(0.024251), 4);
    expect(normalQuantile(0.97575)).toBeCloseTo(normalQuantile(0.975749), 4);
  });
  test('frost in half of the years: at a chance of a quarter the middle date; none at or beyond a half', () => {
    const days = [60, null, 70, null];
    expect(mixedFrost('spring', days, 0.25)).toMatchObject({ years: 4, share: 0.5, mean: 65 });
    expect(mixedFrost('spring', days, 0.25).day).toBeCloseTo(65, 9);
    expect(mixedFrost('fall', days, 0.25).day).toBeCloseTo(65, 9);
    // a rarer freeze is later in spring and earlier in fall: z(0.9) = 1.28155, spread 7.0711
    expect(mixedFrost('spring', days, 0.05).day).toBeCloseTo(65 + 1.28155 * Math.sqrt(50), 3);
    expect(mixedFrost('fall', days, 0.05).day).toBeCloseTo(65 - 1.28155 * Math.sqrt(50), 3);
    expect([0, 0.5, 0.6].map((p) => mixedFrost('spring', days, p).day)).toEqual([null, null, null]);
  });
  test('a date from the record: years without a freeze come before every spring and after every fall', () => {
    const record = [...Array.from({ length: 19 }, (_, at) => 61 + at), null, null];
    expect(frostDate('spring', record, 0.1)).toEqual({ day: 77, years: 21, freezeYears: 19, method: 'record' });
    expect(frostDate('spring', record, 0.125).day).toBeCloseTo(76.5, 9);
    expect(frostDate('fall', record, 0.1).day).toBe(63);
    expect(frostDate('fall', record, 0.125).day).toBeCloseTo(63.5, 9);
    expect([frostDate('spring', record, 0.99).day, frostDate('fall', record, 0.99).day]).toEqual([null, null]);
  });
  test('twenty years are enough for the record, nineteen are not; no freeze at all never gives a date', () => {
    const years = (count: number) => Array.from({ length: count }, () => 60);
    expect(frostDate('spring', years(20), 0.5).method).toBe('record');
    expect(frostDate('spring', years(19), 0.5)).toEqual({ day: 60, years: 19, freezeYears: 19, method: 'normal-curve' });
    expect(frostDate('spring', [null, null], 0.5)).toEqual({ day: null, years: 2, freezeYears: 0, method: 'never' });
    expect(chanceOfFrostAfter([-5, null], -10)).toBe(0.5);
  });
});

describe('gaps', () => {
  const temperatures = (filled: ReturnType<typeof fillGaps>) => filled.map((day) => day.tmax_C);
  test('five days are bridged by a line, six are not', () => {
    const over = (last: string) => [
      aWeatherDay('2024-01-01', { tmax_C: 0, tmin_C: 0 }),
      aWeatherDay(last, { tmax_C: 12, tmin_C: -6 }),
    ];
    expect(temperatures(fillGaps(over('2024-01-07')))).toEqual([0, 2, 4, 6, 8, 10, 12]);
    expect(fillGaps(over('2024-01-07')).map((day) => day.tmin_C)).toEqual([0, -1, -2, -3, -4, -5, -6]);
    // with six between, each takes the mean of what is known within three days of it
    expect(temperatures(fillGaps(over('2024-01-08')))).toEqual([0, 0, 0, 0, 12, 12, 12, 12]);
  });
  test('rain is the mean of the same day of the other years, three days either side', () => {
    const filled = fillGaps([
      aWeatherDay('2022-01-07', { rain_mm: 3 }),
      aWeatherDay('2023-01-13', { rain_mm: 5 }),
      aWeatherDay('2023-01-14', { rain_mm: 90 }),
      aWeatherDay('2024-01-10', { rain_mm: null, tmin_C: null }),
    ]);
    const last = filled.at(-1);
    expect(last).toMatchObject({ rain_mm: 4, tmin_C: 5, tmax_C: 15, filled: true });
    expect(filled[0]).toMatchObject({ rain_mm: 3, filled: false });
    // a day in July has no like
    expect(filled.find((day) => day.date === '2022-07-01')).toMatchObject({ rain_mm: null, tmax_C: null, filled: false });
  });
  test('the turn of the year has neighbours on both sides; a day at either end has no line', () => {
    const filled = fillGaps([
      aWeatherDay('2023-01-02', { tmax_C: 8 }),
      aWeatherDay('2023-12-31', { tmax_C: null }),
      aWeatherDay('2024-01-01', { tmax_C: 20 }),
    ]);
    // day 365 and its neighbours 366, 1, 2 and 3
    expect(filled.find((day) => day.date === '2023-12-31')?.tmax_C).toBe(14);
    expect(fillGaps([aWeatherDay('2024-05-01', { tmax_C: null })])[0]).toMatchObject({ tmax_C: null, filled: false });
    expect(fillGaps([])).toEqual([]);
  });
  test('a missing row is blank but for what is filled', () => {
    const [, middle] = fillGaps([aWeatherDay('2024-01-01'), aWeatherDay('2024-01-03')]);
    expect(middle).toEqual({ ...aWeatherDay('2024-01-02'), filled: true });
  });
});

describe('the daily archive', () => {
  test('units and steps by element; what is not known stays raw', () => {
    const of = (element: string, value: number | string) => {
      const { value: read, unit } = noaaReading({ element, value });
      return [read, unit];
    };
    expect(of('SX32', 255)).toEqual([25.5, 'C']);
    expect(of('SN52', 255)).toEqual([25.5, 'C']);
    expect(of('XSN5', 255)).toEqual([255, 'raw']);
    expect(of('WT01', 1)).toEqual([1, 'raw']);
    expect(of('AWND', 33)).toEqual([3.3, 'm_per_s']);
    expect(of('TMAX', ' 333 ')).toEqual([33.3, 'C']);
  });
  test('flags are trimmed; a trace of nothing is none', () => {
    const raw = { element: 'PRCP', measurementFlag: ' T ', qualityFlag: ' ', sourceFlag: ' W ', observed_hhmm: ' 0700 ' };
    expect(noaaReading({ ...raw, value: 0 })).toEqual({
      element: 'PRCP',
      value: 0,
      unit: 'mm',
      measurementFlag: 'T',
      qualityFlag: '',
      sourceFlag: 'W',
      observed_hhmm: '0700',
      trace: true,
      accepted: true,
    });
    expect(noaaReading({ ...raw, value: -9999 })).toMatchObject({ trace: false, accepted: false });
    expect(noaaReading({ element: 'PRCP', value: 0, measurementFlag: 'P' }).trace).toBe(false);
    expect(noaaReading({ element: 'PRCP', value: 0 })).toMatchObject({
      measurementFlag: '',
      qualityFlag: '',
      sourceFlag: '',
      observed_hhmm: '',
      trace: false,
    });
  });
  test('a date in eight digits or in the form of the standard', () => {
    expect([noaaDate(' 20240709 '), noaaDate('2024-07-09')]).toEqual(['2024-07-09', '2024-07-09']);
  });
  test('a line and a month of fixed width carry station, flags and time', () => {
    expect(noaaLine([' USW00024233 ', '20240709', ' TMAX ', '333', 'D', '', 'W', '0700'])).toMatchObject({
      station: 'USW00024233',
      element: 'TMAX',
      measurementFlag: 'D',
      sourceFlag: 'W',
      observed_hhmm: '0700',
    });
    expect(noaaLine(['USW00024233', '20240709', 'TMAX', '333'])).toMatchObject({ qualityFlag: '', observed_hhmm: '' });
    const month = noaaFixedLine('USW00024233202404TMAX  100TIW  210');
    expect(month.map((day) => day.value).slice(0, 3)).toEqual([10, 21, null]);
    expect(month[0]).toMatchObject({
      station: 'USW00024233',
      date: '2024-04-01',
      element: 'TMAX',
      measurementFlag: 'T',
      qualityFlag: 'I',
      sourceFlag: 'W',
      observed_hhmm: '',
      accepted: false,
    });
  });
});

describe('a weather file', () => {
  const element = ['USW00024233', '20240709', 'TMAX', '333', '', '', 'W', ''];
  const fixed = 'USW00024233202407TMAX  333  W';
  test('its shape is told by its first row, and by nothing less', () => {
    expect(weatherFormat([element])).toBe('element-lines');
    expect(weatherFormat([['id', 'date', 'element', 'value']])).toBe('element-lines');
    expect(weatherFormat([[fixed]])).toBe('fixed-width');
    expect(weatherFormat([['STATION', 'DATE', 'tmax_attributes']])).toBe('station-days');
    expect(weatherFormat([[' Date ', 'RAIN']])).toBe('plain-days');
    expect(weatherFormat([['date', 'tmax']])).toBe('plain-days');
    expect(weatherFormat([['date', 'tmin', 'wind']])).toBeUndefined();
    expect(weatherFormat([element.slice(0, 3)])).toBeUndefined();
    expect(weatherFormat([['USW0002423', '20240709', 'TMAX', '1']])).toBeUndefined();
    expect(weatherFormat([['USW000242331', '20240709', 'TMAX', '1']])).toBeUndefined();
    expect(weatherFormat([['USW00024233', '2024-07-09', 'TMAX', '1']])).toBeUndefined();
    expect(weatherFormat([['USW00024233', '202407091', 'TMAX', '1']])).toBeUndefined();
    expect(weatherFormat([['USW0002423320240TMAX']])).toBeUndefined();
    expect(weatherFormat([['1SW00024233202407TMAX']])).toBeUndefined();
    expect(weatherFormat([['U1W00024233202407TMAX']])).toBeUndefined();
    expect(weatherFormat([['USW00024233AAAAAATMAX']])).toBeUndefined();
    expect(weatherFormat([['USW00024233202407tmax']])).toBeUndefined();
    expect(weatherFormat([[`x${fixed}`]])).toBeUndefined();
    expect(weatherFormat([['id', 'date', 'value']])).toBeUndefined();
    expect(weatherFormat([['x', 'date', 'element']])).toBeUndefined();
    expect(weatherFormat([[]])).toBeUndefined();
  });
  test('lines of elements become days in order, humidity a share, a failed value is counted and left out', () => {
    const read = readWeather([
      ['ID', 'DATE', 'ELEMENT', 'VALUE'],
      ['USW00024233', '20240710', 'TMAX', '300', '', '', 'W', '0800'],
      ['USW00024233', '20240709', 'RHMX', '90', '', '', 'W', '0700'],
      ['USW00024233', '20240709', 'PRCP', '0', 'T', '', 'W', '0800'],
      ['USW00024233', '20240709', 'TMAX', '999', '', 'I', 'W', ''],
      ['USW00024233', '20240709', 'WT01', '1', '', '', 'W', '0900'],
      ['USW00024233', '20240711', 'TMAX', '-9999', '', '', 'W', '0900'],
      ['', ' '],
      ['short'],
    ]);
    expect(read).toMatchObject({
      format: 'element-lines',
      stations: ['USW00024233'],
      refused: 1,
      traces: 1,
      observedTimes: ['0700', '0800'],
    });
    expect(read?.days).toEqual([
      {
        ...aWeatherDay('2024-07-09', { tmin_C: null, tmax_C: null, rhmax_share: 0.9 }),
        flags: 'PRCP trace; TMAX failed check I',
      },
      { ...aWeatherDay('2024-07-10', { tmin_C: null, tmax_C: 30, rain_mm: null }), flags: '' },
    ]);
    expect(read?.faults.map(({ line, column }) => [line, column])).toEqual([[9, 'station']]);
  });
  test('without a head the first line counts', () => {
    const read = readWeather([element, ['bad', '1', '2', '3']]);
    expect(read?.days.map((day) => day.tmax_C)).toEqual([33.3]);
    expect(read?.faults.map(({ line, column }) => [line, column])).toEqual([[2, 'station']]);
  });
  test('fixed width', () => {
    const read = readWeather([[fixed], ['nonsense']]);
    expect(read?.days.map((day) => [day.date, day.tmax_C])).toEqual([['2024-07-01', 33.3]]);
    expect(read?.faults.map(({ line, column }) => [line, column])).toEqual([[2, 'line']]);
    expect(read?.stations).toEqual(['USW00024233']);
  });
  test('one row a day of the archive: a bad cell at its column, a bad date at its own', () => {
    const read = readWeather([
      [' STATION ', 'DATE', 'TMAX', 'TMAX_ATTRIBUTES', 'AWND', 'AWND_ATTRIBUTES'],
      ['USW00024233', '2024-07-09', 'hot', ',,W', '33', ',,W,0700'],
      ['', '2024-07-10', '300', ',I,W', '', ''],
      ['USW00024233', 'soon', '300', ',,W', '', ''],
    ]);
    expect(read?.faults.map(({ line, column }) => [line, column])).toEqual([
      [2, 'TMAX'],
      [4, 'DATE'],
    ]);
    expect(read?.days.map((day) => [day.date, day.tmax_C, day.wind_m_per_s, day.flags])).toEqual([
      ['2024-07-09', null, 3.3, ''],
      ['2024-07-10', null, null, 'TMAX failed check I'],
    ]);
    expect([read?.stations, read?.refused, read?.observedTimes]).toEqual([['USW00024233'], 1, ['0700']]);
  });
  test('a plain table: columns in any place, a bad date at its line, the station where there is one', () => {
    const read = readWeather([
      ['station', 'Rain_in', ' Date', 'wind_mi_per_h', 'dew_point_c'],
      ['home', '1', '2024/07/10T00:00', '10', '-9999'],
      ['', '2', '2024-07-09', '', '11'],
      ['home', '2', 'never', '', '11'],
    ]);
    expect(read?.days.map((day) => [day.date, Number(day.rain_mm?.toFixed(6)), day.dewPoint_C])).toEqual([
      ['2024-07-09', 50.8, 11],
      ['2024-07-10', 25.4, null],
    ]);
    expect(read?.days[1]?.wind_m_per_s).toBeCloseTo(4.4704, 9);
    expect(read?.stations).toEqual(['home']);
    expect(read?.faults.map(({ line, column }) => [line, column])).toEqual([[4, 'date']]);
    expect(
      readWeather([
        ['date', 'tmax'],
        ['2024-07-09', '20'],
      ])?.stations,
    ).toEqual([]);
  });
  test('a file of no known shape is none', () => {
    expect(readWeather([['date', 'price']])).toBeUndefined();
  });
});

describe('doubts', () => {
  const codes = (over: Parameters<typeof aWeatherDay>[1]) =>
    weatherDoubts([aWeatherDay('2024-06-01', over)], 47.6).map(({ field, code }) => `${field} ${code}`);
  test('a value at its bound is taken, beyond it is not, and is emptied', () => {
    expect(codes({ wind_m_per_s: 60, rhmin_share: 0, rhmax_share: 1, tmax_C: 57, dewPoint_C: 36 })).toEqual([]);
    expect(codes({ wind_m_per_s: 61 })).toEqual(['wind_m_per_s out-of-bounds']);
    expect(codes({ rhmin_share: -0.1 })).toEqual(['rhmin_share out-of-bounds']);
    const kept = (over: Parameters<typeof aWeatherDay>[1]) => withoutAbsurd([aWeatherDay('2024-06-01', over)])[0];
    expect(kept({ wind_m_per_s: 61, rhmin_share: -0.1 })).toEqual(aWeatherDay('2024-06-01'));
    expect(kept({ wind_m_per_s: 60, rhmin_share: 0 })).toMatchObject({ wind_m_per_s: 60, rhmin_share: 0 });
    expect(kept({ tmin_C: 15 })).toMatchObject({ tmin_C: 15, tmax_C: 15 });
    expect(kept({ tmin_C: 15.1 })).toMatchObject({ tmin_C: null, tmax_C: null, rain_mm: 0 });
    expect(kept({ tmin_C: null })).toMatchObject({ tmin_C: null, tmax_C: 15 });
  });
  test('what is missing is told for temperatures and rain alone', () => {
    expect(codes({ tmin_C: null, tmax_C: null, rain_mm: null })).toEqual(['tmin_C missing', 'tmax_C missing', 'rain_mm missing']);
    expect(codes({ tmin_C: 15 })).toEqual([]);
    expect(codes({ tmin_C: 15.1 })).toEqual(['tmin_C minimum-above-maximum']);
    expect(codes({ radiation_MJ_per_m2: 41 })).toEqual([]);
    expect(codes({ radiation_MJ_per_m2: 43 })).toEqual(['radiation_MJ_per_m2 too-bright']);
  });
  test('five days of one pair of temperatures are told once; an unlike night breaks the run', () => {
    const run = (count: number, over: (at: number) => Parameters<typeof aWeatherDay>[1] = () => ({})) =>
      weatherDoubts(
        Array.from({ length: count }, (_, at) => aWeatherDay(`2024-06-${String(at + 1).padStart(2, '0')}`, over(at))),
        47.6,
      ).map(({ date: on, code }) => `${on} ${code}`);
    expect(run(4)).toEqual([]);
    expect(run(8)).toEqual(['2024-06-05 repeated']);
    expect(run(8, (at) => ({ tmin_C: at === 3 ? 4 : 5 }))).toEqual([]);
    expect(run(8, (at) => ({ tmax_C: at === 3 ? 14 : 15 }))).toEqual([]);
    expect(run(6, () => ({ tmax_C: null })).filter((line) => line.endsWith('repeated'))).toEqual([]);
  });
  test('days without a row are told one by one, all in order of date', () => {
    const found = weatherDoubts([aWeatherDay('2024-06-01'), aWeatherDay('2024-06-04', { rain_mm: -1 })], 47.6);
    expect(found.map(({ date: on, field, code }) => `${on} ${field} ${code}`)).toEqual([
      '2024-06-02 date no-row',
      '2024-06-03 date no-row',
      '2024-06-04 rain_mm out-of-bounds',
    ]);
  });
});

describe('spells', () => {
  const days = (values: readonly (number | null)[], skip = -1) =>
    values.flatMap((value, at) => (at === skip ? [] : [{ date: date(`2024-06-${String(at + 1).padStart(2, '0')}`), value }]));
  test('the hottest window, the first of equals; an unknown day or a gap breaks it', () => {
    expect(highestSpell(days([1, 5, 6, 1, 5, 6, 2]), 2)).toEqual({ from: '2024-06-02', to: '2024-06-03', mean: 5.5 });
    expect(highestSpell(days([9, null, 9, 4, 4]), 2)).toEqual({ from: '2024-06-03', to: '2024-06-04', mean: 6.5 });
    expect(highestSpell(days([9, 0, 9, 4, 4], 1), 2)).toEqual({ from: '2024-06-03', to: '2024-06-04', mean: 6.5 });
    expect(highestSpell(days([9, null, 9]), 2)).toBeNull();
    expect(highestSpell(days([1, 2, 3]), 3)).toEqual({ from: '2024-06-01', to: '2024-06-03', mean: 2 });
    expect(highestSpell(days([1, 2, 3]), 1)).toEqual({ from: '2024-06-03', to: '2024-06-03', mean: 3 });
  });
  const rain = (values: readonly (number | null)[], skip = -1) =>
    days(values, skip).map(({ date: on, value }) => ({ date: on, rain_mm: value }));
  test('wet after wet and after dry, a day of the least rain being wet; gaps and other months do not count', () => {
    // w w d w d d
    expect(wetDry(rain([0.3, 2, 0, 0.3, 0.29, 0]), 6)).toEqual({
      wetAfterWet: 1,
      afterWet: 3,
      wetAfterDry: 1,
      afterDry: 2,
      pWetAfterWet: 1 / 3,
      pWetAfterDry: 1 / 2,
    });
    expect(wetDry(rain([1, 1, 1]), 5)).toMatchObject({ afterWet: 0, pWetAfterWet: null, pWetAfterDry: null });
    expect(wetDry(rain([1, null, 1, 1]), 6)).toMatchObject({ wetAfterWet: 1, afterWet: 1, afterDry: 0 });
    expect(wetDry(rain([1, 0, 1, 1], 1), 6)).toMatchObject({ afterWet: 1, afterDry: 0 });
    expect(wetDry(rain([1, 1]), 6, 2)).toMatchObject({ afterDry: 1, wetAfterDry: 0, pWetAfterDry: 0 });
  });
  test('the longest dry run, the first of equals, broken by rain, gaps and what is not known', () => {
    expect(longestDryRun(rain([0, 0.9, 1, 0, 0, 3]))).toEqual({ days: 2, from: '2024-06-01', to: '2024-06-02' });
    expect(longestDryRun(rain([0, null, 0, 0]))).toEqual({ days: 2, from: '2024-06-03', to: '2024-06-04' });
    expect(longestDryRun(rain([0, 0, 0, 0], 1))).toEqual({ days: 2, from: '2024-06-03', to: '2024-06-04' });
    expect(longestDryRun(rain([5, 5]))).toBeNull();
    expect(longestDryRun(rain([2, 2]), 3)).toMatchObject({ days: 2 });
  });
});
