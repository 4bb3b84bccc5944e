import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { aProgram, resources, type TestProgram } from '../builders/a-farm.ts';

let on: TestProgram;
beforeAll(() => {
  on = aProgram({ beds: 12, years: 1 });
});
afterAll(() => on.end());

const station = {
  name: 'Airfield',
  latitude_deg: 47.6,
  longitude_deg: -122.3,
  elevation_m: 130,
  windHeight_m: 10,
  source: 'test',
};

const noaa = [
  'USC00450000,20240612,TMAX,211,,,7,0700',
  'USC00450000,20240612,TMIN,98,,,7,0700',
  'USC00450000,20240612,PRCP,0,T,,7,0700',
  'USC00450000,20240614,TMAX,489,,I,7,0700',
  'USC00450000,20240614,TMIN,101,,,7,0700',
  'USC00450000,20240614,PRCP,12,,,7,0700',
].join('\n');

describe('importing weather', () => {
  test('shows what a file holds and what is doubtful, and keeps nothing', async () => {
    const before = await on.api.weather.record();
    const seen = await on.api.weather.preview({ text: noaa, latitude_deg: 47.6 });
    expect(seen).toMatchObject({
      count: 2,
      refused: 1,
      traces: 1,
      observedTimes: ['0700'],
      from: '2024-06-12',
      to: '2024-06-14',
    });
    expect(seen.doubts.map((doubt) => [doubt.date, doubt.code])).toEqual([
      ['2024-06-13', 'no-row'],
      ['2024-06-14', 'missing'],
    ]);
    expect((await on.api.weather.record()).stations).toEqual(before.stations);
  });

  test('keeps days under a new station; gaps stay empty until the grower agrees to fill them', async () => {
    const { stationId, days } = await on.api.weather.importFile({
      text: noaa,
      stationId: null,
      station,
      fill: false,
      skipFaults: false,
    });
    expect(days).toBe(2);
    const other = (await on.api.weather.record()).stations.find((each) => each.stationId === stationId);
    expect(other).toMatchObject({ days: 2, filled: 0 });
    const again = await on.api.weather.importFile({ text: noaa, stationId, station, fill: true, skipFaults: false });
    expect(again).toMatchObject({ days: 3, filled: 2 });
    expect((await on.api.weather.record()).stations.find((each) => each.stationId === stationId)).toMatchObject({
      days: 3,
      filled: 2,
    });
  });

  test('importing the shipped record twice does not double it', async () => {
    const text = readFileSync(join(resources, 'weather', 'coast-47n-2012-2015.csv'), 'utf8');
    const own = { ...station, name: 'Twice' };
    const { stationId } = await on.api.weather.importFile({
      text,
      stationId: null,
      station: own,
      fill: false,
      skipFaults: false,
    });
    await on.api.weather.importFile({ text, stationId, station: own, fill: false, skipFaults: false });
    expect((await on.api.weather.record()).stations.find((each) => each.stationId === stationId)?.days).toBe(1461);
  });

  test('one import is one step of undo', async () => {
    const before = (await on.api.weather.record()).stations.length;
    await on.api.weather.importFile({
      text: noaa,
      stationId: null,
      station: { ...station, name: 'Undone' },
      fill: false,
      skipFaults: false,
    });
    await on.api.undo.undo();
    expect((await on.api.weather.record()).stations).toHaveLength(before);
  });

  test('a latitude beyond the pole, an absurd elevation and a bad cell are refused at their field', async () => {
    const ask = (extra: object) =>
      on.api.weather.importFile({
        text: noaa,
        stationId: null,
        station: { ...station, ...extra },
        fill: false,
        skipFaults: false,
      });
    await expect(ask({ latitude_deg: 95 })).rejects.toThrow(/latitude_deg/);
    await expect(ask({ elevation_m: 12_000 })).rejects.toThrow(/elevation_m/);
    const bad = 'date,tmax_C,tmin_C,rain_mm\n2024-06-12,21,warm,0\n';
    const seen = await on.api.weather.preview({ text: bad, latitude_deg: 47.6 });
    expect(seen.faults).toEqual([{ line: 2, column: 'tmin_C', message: '"warm" is not a number.' }]);
    await expect(
      on.api.weather.importFile({ text: bad, stationId: null, station, fill: false, skipFaults: false }),
    ).rejects.toThrow(/line 2/);
    await expect(on.api.weather.preview({ text: 'a,b\n1,2\n', latitude_deg: 47.6 })).rejects.toThrow(/no weather file/);
  });

  test('the farm can be left without a record, and says so', async () => {
    const { stations, stationId } = await on.api.weather.record();
    for (const each of stations) await on.api.weather.remove({ stationId: each.stationId });
    expect((await on.api.waterDemand.overview({ seasonId: null, year: null })).record).toBeNull();
    expect((await on.api.weather.record()).stationId).toBeNull();
    for (const _ of stations) await on.api.undo.undo();
    expect((await on.api.weather.record()).stationId).toBe(stationId);
  });
});

describe('salts', () => {
  test('a test of the water gives each crop its leaching share and each closed bed its flushes', async () => {
    expect((await on.api.waterDemand.salts({ seasonId: null })).restriction).toBeNull();
    await on.api.waterDemand.addSaltTest({ date: '2026-11-01', point: 'tank', ecw_dS_per_m: 0.9, laboratory: 'invented' });
    const found = await on.api.waterDemand.salts({ seasonId: null });
    expect(found).toMatchObject({ ecw_dS_per_m: 0.9, restriction: 'slight to moderate', dissolved_mg_per_L: 576 });
    for (const crop of found.crops) if (crop.leachingShare !== null) expect(crop.leachingShare).toBeLessThan(1);
    for (const bed of found.closedBeds) if (bed.flushes !== null) expect(bed.flushes).toBeGreaterThanOrEqual(1);
  });
  test('a reading in the wrong unit is refused at its field', async () => {
    await expect(
      on.api.waterDemand.addSaltTest({ date: '2026-11-01', point: '', ecw_dS_per_m: 900, laboratory: '' }),
    ).rejects.toThrow(/0 to 20/);
  });
});
