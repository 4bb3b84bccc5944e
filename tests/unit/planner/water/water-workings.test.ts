import { expect, test } from 'vitest';
import { explainBedUse } from '../../../../planner/water/bed-demand.ts';
import { type BedStore, explainRootedStore } from '../../../../planner/water/bed-store.ts';
import { bedYear } from '../../../../planner/water/bed-year.ts';
import { explainDaysAway } from '../../../../planner/water/days-away.ts';
import { explainLeaching } from '../../../../planner/water/salts.ts';
import { explainTotalAvailable } from '../../../../planner/water/soil-store.ts';
import { explainLineInterval } from '../../../../planner/water/watering-interval.ts';
import { explainThirstiestWeek } from '../../../../planner/water/week-need.ts';
import { linesOf } from '../../../builders/working-lines.ts';

const bed: BedStore = {
  bedId: 'b',
  area_m2: 2,
  rain_m2: 2,
  wall_m2: 1.5,
  wallFactor: 0.2,
  depth_m: 0.4,
  availableShare: 0.25,
  free: null,
};

test('the use of a bed shows the reference, what covers it, its wall, and the two parts', () => {
  const year = bedYear({ area_m2: 2, depth_m: 0.4, crops: [], cover: { bareReduction: 0, exposure: 1 } });
  const working = explainBedUse({ store: bed, year, yearDay: 180, eto_mm_per_day: 5, code: 'A-01' });
  // bare ground 0.3 x 2 m2; 5 mm of 0.6 m2 is 3 L, 5 mm x 0.2 x 1.5 m2 of wall 1.5 L
  expect(linesOf(working)).toEqual({
    symbols: { ETo: '5 mm_per_day', 'Σ Kc A': '0.6 m2', A: '2 m2', A_wall: '1.5 m2', k: '0.2 share' },
    steps: ['3 L_per_day', '1.5 L_per_day'],
    result: '4.5 L_per_day',
  });
  expect(working.steps.map((step) => step.figures)).toEqual(['5.00 mm × 0.600 m²', '5.00 mm × 0.2 × 1.50 m²']);
  expect(working.sources.join()).toMatch(/Paper 56/);
});

// FAO-56 eq. 82 and 83: 1000 x 0.25 x 0.2 m is 50 mm, on 2 m2 100 L; half of it without stress
test('the water that roots can reach shows share, depth, ground and what may be taken', () => {
  const working = explainRootedStore(bed, 0.2, 0.5);
  expect(linesOf(working)).toEqual({
    symbols: { a: '0.25 share', Zr: '0.2 m_short', A: '2 m2', p: '0.5 share' },
    steps: ['50 L'],
    result: '100 L',
  });
  expect(working.steps[0]?.figures).toBe('0.50 × 100 L');
  expect(working.sources.join()).toMatch(/eq. 82, 83/);
});

test('the same for a depth of soil, in millimetres', () => {
  const working = explainTotalAvailable({ fieldCapacityShare: 0.25, wiltingShare: 0.125, rootDepth_m: 0.4, p: 0.4 });
  expect(linesOf(working)).toEqual({
    symbols: { FC: '0.25 share', WP: '0.125 share', Zr: '0.4 m_short', p: '0.4 share' },
    steps: ['20 mm'],
    result: '50 mm',
  });
  expect(working.steps[0]?.figures).toBe('0.4 × 50.0 mm');
  expect(working.sources.join()).toMatch(/eq. 82, 83/);
});

// FAO Irrigation and Drainage Paper 29, section 2.4: LR = ECw / (5 ECe - ECw)
test('the leaching requirement shows water, crop and the step between', () => {
  const working = explainLeaching({ ecw_dS_per_m: 1, ece_dS_per_m: 1.2 });
  expect(linesOf(working)).toEqual({
    symbols: { ECw: '1 dS_per_m', ECe: '1.2 dS_per_m' },
    steps: ['5 dS_per_m'],
    result: '0.2 share',
  });
  expect(working.steps[0]?.figures).toBe('5 × 1.2 − 1');
  expect(working.sources.join()).toMatch(/Paper 29/);
});

test('the thirstiest week shows its days, weather and beds', () => {
  const days = Array.from({ length: 9 }, (_, at) => ({
    date: `2027-07-0${at + 1}`,
    need_L: at === 0 ? 0 : 14,
    eto_mm: 5,
    rain_mm: 1,
  }));
  const working = explainThirstiestWeek(days, { name: 'Line 1', beds: 4 });
  if (working === null) throw new Error('nine days hold a week');
  // the first of two equal weeks is told: from the 2nd to the 8th
  expect(linesOf(working)).toEqual({
    symbols: { n: '4', ETo: '5 mm_per_day', P: '7 mm' },
    steps: ['98 L'],
    result: '14 L_per_day',
  });
  expect(working.symbols[1]?.name).toMatch('2027-07-02 to 2027-07-08');
  expect(working.sources.join()).toMatch(/eq. 58/);
});

test('the interval of a line shows the bed that runs dry first and the water of a run', () => {
  const row = { bedId: 'b', days: 4, run_L: 30, stands_days: null, fill_L: null };
  const found = { days: 4, limitedBy: 'b', run_L: 75, beds: [{ ...row, bedId: 'a', days: 9 }, row] };
  const working = explainLineInterval(found, { line: 'Line 1', bed: 'B-02', confidence: 0.9 });
  expect(linesOf(working)).toEqual({ symbols: { c: '0.9 share', first: '4 d', run: '75 L' }, steps: [], result: '4 d' });
  expect(working.sources.join()).toMatch(/Paper 56/);
  const none = { days: null, limitedBy: null, run_L: 0, beds: [] };
  expect(linesOf(explainLineInterval(none, { line: 'Line 1', bed: '', confidence: 0.9 })).result).toBe('0 d');
});

test('days away show the departures, the middle and the worst of them', () => {
  const working = explainDaysAway(
    { departures: 40, days: 6, median_days: 9, worst_days: 4, worstYear: 2015, limit_days: 30, beds: [], supplies: [] },
    0.9,
  );
  expect(linesOf(working)).toEqual({
    symbols: { n: '40', c: '0.9 share', median: '9 d', worst: '4 d' },
    steps: [],
    result: '6 d',
  });
  expect(working.symbols[3]?.name).toMatch('2015');
  expect(working.notes[1]).toMatch('30 days');
  expect(working.sources.join()).toMatch(/eq. 84 to 86/);
});
