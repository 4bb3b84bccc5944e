import { describe, expect, test } from 'vitest';
import { fillGaps } from '../../../../planner/climate/fill-gaps.ts';
import { noaaCell, noaaFixedLine, noaaLine, noaaReading } from '../../../../planner/climate/noaa-reading.ts';
import { readWeather, weatherFormat } from '../../../../planner/climate/read-weather.ts';
import { weatherDoubts, withoutAbsurd } from '../../../../planner/climate/weather-checks.ts';
import { InputError } from '../../../../planner/errors.ts';
import { aWeatherDay } from '../../../builders/a-weather-day.ts';

describe('the daily archive', () => {
  test('tenths become degrees and millimetres', () => {
    expect(noaaLine('USW00024233,20240709,TMAX,333,,,W,'.split(','))).toMatchObject({
      value: 33.3,
      unit: 'C',
      accepted: true,
      date: '2024-07-09',
    });
    expect(noaaReading({ element: 'SNWD', value: 120 })).toMatchObject({ value: 120, unit: 'mm' });
  });
  test('missing is never zero, a trace is zero with a mark, a failed check is not used', () => {
    expect(noaaReading({ element: 'TMIN', value: -9999 })).toMatchObject({ value: null, accepted: false });
    expect(noaaCell('TMIN', '', '')).toMatchObject({ value: null, accepted: false });
    expect(noaaReading({ element: 'PRCP', value: 0, measurementFlag: 'T' })).toMatchObject({
      value: 0,
      trace: true,
      accepted: true,
    });
    expect(noaaReading({ element: 'TMAX', value: 489, qualityFlag: 'I' })).toMatchObject({ value: 48.9, accepted: false });
  });
  test('a month of fixed width gives the days that exist', () => {
    const cell = (value: number) => `${String(value).padStart(5)}  W`;
    const days = Array.from({ length: 31 }, (_, at) => cell(at === 30 ? -9999 : 100 + at)).join('');
    const read = noaaFixedLine(`USW00024233202404TMAX${days}`);
    expect(read).toHaveLength(30);
    expect(read[29]).toMatchObject({ date: '2024-04-30', value: 12.9, sourceFlag: 'W' });
  });
  test('a line of another shape is refused', () => {
    expect(() => noaaLine(['x', '1'])).toThrow(InputError);
    expect(() => noaaFixedLine('short')).toThrow(InputError);
    expect(() => noaaReading({ element: 'TMAX', value: 'warm' })).toThrow(/not a number/);
  });
  test('a file of one row a day is read by its column names', () => {
    const rows = [
      ['STATION', 'DATE', 'PRCP', 'PRCP_ATTRIBUTES', 'TMAX', 'TMAX_ATTRIBUTES', 'TMIN', 'TMIN_ATTRIBUTES'],
      ['USW00024233', '2024-07-09', '   53', ',,X,2400', '  289', ',,X', '', ''],
      ['USW00024233', '2024-13-09', '   53', ',,X,2400', '  289', ',,X', '', ''],
    ];
    const read = readWeather(rows);
    expect(read?.days[0]).toMatchObject({ rain_mm: 5.3, tmax_C: 28.9, tmin_C: null });
    expect(read?.faults).toHaveLength(1);
    expect(read?.faults[0]?.line).toBe(3);
  });
});

describe('a plain table', () => {
  test('units stand in the column’s name', () => {
    const read = readWeather([
      ['date', 'tmax_F', 'tmin_F', 'rain_in', 'wind_km_per_h', 'rhmax_pct'],
      ['2024-07-09', '86', '50', '1', '36', '90'],
    ]);
    expect(read?.days[0]).toMatchObject({ tmax_C: 30, tmin_C: 10, wind_m_per_s: 10, rhmax_share: 0.9 });
    expect(read?.days[0]?.rain_mm).toBeCloseTo(25.4, 9);
  });
  test('an empty cell, a dash and n/a are not known; other words are faults', () => {
    const read = readWeather([
      ['date', 'tmax_C', 'tmin_C', 'rain_mm'],
      ['2024-07-09', '', '-', 'n/a'],
      ['2024-07-10', '20', '10', 'heavy'],
    ]);
    expect(read?.days[0]).toMatchObject({ tmax_C: null, tmin_C: null, rain_mm: null });
    expect(read?.faults).toEqual([{ line: 3, column: 'rain_mm', message: '"heavy" is not a number.' }]);
  });
  test('a file without date or weather is none', () => {
    expect(weatherFormat([['day', 'tmax_C']])).toBeUndefined();
    expect(weatherFormat([['date', 'price']])).toBeUndefined();
    expect(weatherFormat([])).toBeUndefined();
  });
});

describe('doubts', () => {
  test('gaps, absurd values and a stuck meter are found', () => {
    const days = [
      aWeatherDay('2024-01-01', { tmin_C: 20 }),
      aWeatherDay('2024-01-03', { rain_mm: -4 }),
      ...Array.from({ length: 6 }, (_, at) => aWeatherDay(`2024-01-${String(at + 4).padStart(2, '0')}`, { tmax_C: 11 })),
      aWeatherDay('2024-01-10', { radiation_MJ_per_m2: 45 }),
    ];
    const codes = weatherDoubts(days, 47.6).map((doubt) => [doubt.date, doubt.code]);
    expect(codes).toContainEqual(['2024-01-01', 'minimum-above-maximum']);
    expect(codes).toContainEqual(['2024-01-02', 'no-row']);
    expect(codes).toContainEqual(['2024-01-03', 'out-of-bounds']);
    expect(codes).toContainEqual(['2024-01-08', 'repeated']);
    expect(codes).toContainEqual(['2024-01-10', 'too-bright']);
    const kept = withoutAbsurd(days);
    expect(kept[0]).toMatchObject({ tmin_C: null, tmax_C: null });
    expect(kept[1]?.rain_mm).toBeNull();
  });

  test('a short gap in temperature is bridged by a line, rain by the mean of its day in other years; every filled day is marked', () => {
    const days = [
      aWeatherDay('2023-01-10', { rain_mm: 6 }),
      aWeatherDay('2024-01-09', { tmax_C: 10 }),
      aWeatherDay('2024-01-11', { tmax_C: 14, rain_mm: null }),
      aWeatherDay('2024-01-12', { tmax_C: 14 }),
    ];
    const filled = fillGaps(days.slice(1));
    expect(filled.map((day) => day.date)).toEqual(['2024-01-09', '2024-01-10', '2024-01-11', '2024-01-12']);
    expect(filled[1]).toMatchObject({ tmax_C: 12, filled: true });
    expect(filled[0]?.filled).toBe(false);
    expect(filled[2]).toMatchObject({ tmax_C: 14, rain_mm: 0, filled: true });
  });
});
