import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { AwayResult } from '../../api/jobs/water/days-away.ts';
import type { StressResult } from '../../api/jobs/water/stress-years.ts';
import { callerFactory } from '../../api/procedure.ts';
import { router } from '../../api/router.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let on: TestProgram;
beforeAll(() => {
  on = aProgram({ beds: 96, years: 2 });
});
afterAll(() => on.end());

async function finished<Result>(jobId: string): Promise<Result> {
  return await vi.waitFor(
    async () => {
      const view = await on.api.jobs.get({ jobId });
      if (view.state === 'failed') throw new Error(view.message);
      expect(view.state).toBe('done');
      return view.result as Result;
    },
    { timeout: 20_000, interval: 50 },
  );
}

describe('the farm’s demand for water', () => {
  test('stands against each line’s capacity, day by day, in the year of the hottest week', async () => {
    const found = await on.api.waterDemand.overview({ seasonId: null, year: null });
    expect(found.record?.years).toEqual([2012, 2013, 2014, 2015]);
    expect(found.record?.hottest?.from).toBe('2015-06-30');
    expect(found.demand?.year).toBe(2015);
    expect(found.demand?.byDay).toHaveLength(365);
    expect(found.demand?.beds).toHaveLength(96);
    const groups = found.demand?.groups ?? [];
    expect(groups.map((group) => group.name)).toEqual(['Bag line', 'Strip line', 'By hand']);
    const day = found.demand?.byDay[190];
    const sum = Object.values(day?.need_L ?? {}).reduce((total, each) => total + each, 0);
    expect(sum).toBeGreaterThan(0);
    expect(groups.reduce((total, group) => total + group.beds, 0)).toBe(96);
  });

  test('by bed adds up to the need by line over the year', async () => {
    const { demand } = await on.api.waterDemand.overview({ seasonId: null, year: 2014 });
    for (const group of demand?.groups ?? []) {
      const beds = (demand?.beds ?? []).filter((bed) => bed.groupId === group.groupId);
      expect(beds.reduce((sum, bed) => sum + bed.need_L, 0)).toBeCloseTo(group.year_L, 6);
    }
  });

  test('one bed’s chart never misses more than its soil holds, and its working ends in the use of the day', async () => {
    const { demand } = await on.api.waterDemand.overview({ seasonId: null, year: 2015 });
    const bed = demand?.beds.toSorted((a, b) => b.use_L - a.use_L)[0];
    const bedId = bed?.bedId ?? '';
    const trace = await on.api.waterDemand.trace({ seasonId: null, year: 2015, bedId, watering: 'rain-only' });
    const most_L = 1000 * trace.store.availableShare * trace.store.depth_m * trace.store.area_m2;
    expect(Math.max(...trace.days.map((day) => day.missing_L))).toBeLessThanOrEqual(most_L + 1e-6);
    const working = await on.api.waterDemand.explainDay({ seasonId: null, year: 2015, bedId, date: bed?.peakDate ?? '' });
    expect(working.result.value).toBeCloseTo(bed?.peak_L_per_day ?? 0, 6);
    expect(working.parts).toHaveLength(2);
  });

  test('the interval of a line is its shortest bed’s', async () => {
    const found = await on.api.waterDemand.intervals({ seasonId: null, month: 7 });
    for (const group of found.groups) {
      if (group.days === null) continue;
      expect(group.days).toBe(Math.max(1, Math.min(...group.rows.map((row) => row.days))));
      expect(group.run_L).toBeCloseTo(
        group.rows.reduce((sum, row) => sum + row.run_L, 0),
        6,
      );
    }
  });

  test('every year of record runs through the plan in a worker', async () => {
    const { jobId } = await on.api.waterDemand.startStress({ seasonId: null });
    const found = await finished<StressResult>(jobId);
    expect(found.beds).toHaveLength(96);
    for (const bed of found.beds)
      for (const chance of bed.chance) if (chance !== null) expect([0, 0.25, 0.5, 0.75, 1]).toContain(chance);
  });

  test('no bed is said to last longer than the farm’s shortest allows', async () => {
    const { jobId } = await on.api.waterDemand.startDaysAway({ seasonId: null, month: 7, confidence: 0.9, limit_days: 21 });
    const found = await finished<AwayResult>(jobId);
    expect(found.departures).toBeGreaterThan(20);
    expect(found.days).toBeLessThanOrEqual(Math.min(...found.beds.map((bed) => bed.days)));
    expect(found.working.result.value).toBe(found.days);
  });

  test('choices are kept, can be taken back, and are refused out of range at their field', async () => {
    const { choices } = await on.api.waterDemand.overview({ seasonId: null, year: null });
    await on.api.waterDemand.setChoices({ ...choices, exposure: 1.3 });
    expect((await on.api.waterDemand.overview({ seasonId: null, year: null })).choices.exposure).toBe(1.3);
    await expect(on.api.waterDemand.setChoices({ ...choices, exposure: 9 })).rejects.toThrow();
  });

  test('a farm just founded has no beds and no weather, and none of it is a fault', async () => {
    const { path } = await on.api.files.create({
      path: join(on.folder, 'founded.bedwright'),
      name: 'Founded',
      latitude_deg: 47.6,
      longitude_deg: -122.3,
      elevation_m: 35,
      unitSystem: 'metric',
      currency: 'USD',
      year: 2027,
    });
    expect(path).toContain('founded');
    const key = on.program.farms().find((farm) => farm.path.includes('founded'))?.key ?? null;
    const founded = callerFactory(router)({ ...on.door, farmKey: key });
    expect(await founded.waterDemand.overview({ seasonId: null, year: null })).toMatchObject({
      beds: 0,
      record: null,
      demand: null,
    });
    expect(await founded.waterDemand.salts({ seasonId: null })).toMatchObject({ crops: [], closedBeds: [] });
    await expect(founded.waterDemand.intervals({ seasonId: null, month: 7 })).rejects.toThrow(/weather record/);
  });
});
