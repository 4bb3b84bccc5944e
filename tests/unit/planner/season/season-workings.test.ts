import { expect, test } from 'vitest';
import { dayNumber } from '../../../../planner/calendar.ts';
import { explainAreaForDemand } from '../../../../planner/season/demand.ts';
import { explainCountBack } from '../../../../planner/season/frost-windows.ts';
import { clockOf, dayClock } from '../../../../planner/season/growth-clock.ts';
import { explainHarvestRange } from '../../../../planner/season/harvest-range.ts';
import { explainPlantingDates } from '../../../../planner/season/planting-dates.ts';
import { explainSeedNeed } from '../../../../planner/season/seed-need.ts';
import { explainTrays } from '../../../../planner/season/trays.ts';
import { day } from '../../../builders/a-plan.ts';
import { linesOf } from '../../../builders/working-lines.ts';

const start = dayNumber(day('2027-01-01'));
const toHarvest = { early_days: 60, likely_days: 70, late_days: 80 };

test('the area for a demand shows demand, loss, yield and the division', () => {
  const working = explainAreaForDemand({ demand: 90, loss_share: 0.1, yield_per_m2: 4 });
  expect(linesOf(working)).toEqual({
    symbols: { Q: '90', l: '0.1 share', Y: '4', A: '25 m2' },
    steps: ['25 m2'],
    result: '25 m2',
  });
  expect(working.steps[0]?.figures).toBe('90 / ((1 - 0.1) x 4)');
  expect(working.sources).not.toEqual([]);
});

// Virginia Cooperative Extension, fall formula: days to maturity + raising + harvest + autumn factor, two weeks more when tender
test('counting back shows each part and the date', () => {
  const input = {
    firstFrost: day('2027-10-19'),
    maturity_days: 55,
    seedToTransplant_days: 21,
    harvest_days: 10,
    fallFactor_days: 14,
    isTender: true,
  };
  const working = explainCountBack(input);
  expect(linesOf(working)).toEqual({
    symbols: { 'days to maturity': '55 days', raising: '21 days', harvest: '10 days', 'autumn factor': '14 days' },
    steps: ['114 days'],
    result: '114 days',
  });
  expect(working.steps[0]).toMatchObject({ text: 'Sow on 2027-06-27', figures: '2027-10-19 less 114 days' });
  expect(working.notes[0]).toMatch(/two weeks more/);
  expect(explainCountBack({ ...input, isTender: false }).notes[0]).toMatch(/Not frost-tender/);
  expect(working.sources).not.toEqual([]);
});

test('the dates of a planting show what each step takes', () => {
  const timing = {
    method: 'transplant' as const,
    indoors_days: 35,
    potOn_days: null,
    toHarvest,
    window_days: 28,
    turnover_days: 3,
  };
  const input = { timing, anchor: { at: 'in-bed' as const, date: day('2027-05-01') }, clock: dayClock(start, 400) };
  const working = explainPlantingDates(input);
  expect(linesOf(working)).toEqual({
    symbols: { indoors: '35 days', need: '70 days', window: '28 days', turnover: '3 days' },
    steps: ['35 days', '70 days', '70 days', '31 days'],
    result: '70 days',
  });
  expect(working.steps.map((step) => step.text.slice(-10))).toEqual(['2027-03-27', '2027-05-01', '2027-07-10', '2027-08-10']);
  expect(working.formula).toMatch(/^in bed = sow/);
  expect(working.sources).not.toEqual([]);
  const set = explainPlantingDates({ ...input, timing: { ...timing, method: 'set' } });
  expect(set.steps).toHaveLength(3);
  const backwards = explainPlantingDates({ ...input, anchor: { at: 'first-harvest', date: day('2027-07-10') } });
  expect(backwards.formula).toMatch(/^in bed = first harvest/);
});

test('early and late show their days, and whether the record or the varieties say so', () => {
  const every = (heat: number) =>
    clockOf(
      start,
      Array.from({ length: 400 }, () => heat),
    );
  const input = {
    inBed: day('2027-05-01'),
    likely: day('2027-07-10'),
    toHarvest,
    normals: every(10),
    years: [8, 9, 10, 11, 12].map(every),
  };
  const byRecord = explainHarvestRange(input);
  expect(linesOf(byRecord)).toEqual({
    symbols: { early: '61 days', late: '84 days' },
    steps: ['61 days', '70 days', '84 days'],
    result: '70 days',
  });
  expect(byRecord.steps[0]?.figures).toBe('5 years');
  expect(byRecord.notes).toEqual([]);
  expect(byRecord.sources.join()).toMatch(/weather record/);
  // two years are no record yet
  for (const years of [[], [every(8), every(12)]]) {
    const byVarieties = explainHarvestRange({ ...input, years });
    expect(linesOf(byVarieties).symbols).toEqual({ early: '60 days', late: '80 days' });
    expect(byVarieties.notes).toHaveLength(1);
    expect(byVarieties.sources.join()).toMatch(/library/);
  }
  expect(linesOf(explainHarvestRange({ ...input, normals: null })).symbols).toEqual({ early: '60 days', late: '80 days' });
});

// at least one success in k: with half of them coming up, two seeds in a hole fail in a quarter of the holes
test('the seed needed shows the chance of a station, the stations and the seeds', () => {
  const working = explainSeedNeed({
    plants: 60,
    germination_share: 0.5,
    emergence_share: 1,
    seedsPerHole: 2,
    overage_share: 0.25,
  });
  expect(linesOf(working)).toEqual({
    symbols: { N: '60 plants', g: '0.5 share', e: '1 share', k: '2', o: '0.25 share' },
    steps: ['0.75 share', '100', '200 seeds'],
    result: '200 seeds',
  });
  expect(working.steps.map((step) => step.figures)).toEqual(['1 - (1 - 0.5 x 1)^2', '60 x (1 + 0.25) / p', '2 x 100']);
  expect(working.sources).not.toEqual([]);
});

test('trays show cells and the cells of a tray', () => {
  const working = explainTrays({ cells: 150, cellsPerTray: 72 });
  expect(linesOf(working)).toEqual({ symbols: { cells: '150', c: '72' }, steps: ['3 trays'], result: '3 trays' });
  expect(working.steps[0]?.figures).toBe('150 / 72');
  expect(working.sources).not.toEqual([]);
});
