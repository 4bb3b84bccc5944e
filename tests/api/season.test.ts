import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addDays, daysBetween, type IsoDate } from '../../planner/calendar.ts';
import { checkPlan } from '../../planner/season/check-plan.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let made: TestProgram;
beforeAll(() => {
  made = aProgram({ beds: 24 });
});
afterAll(() => made.end());

const date = (text: string): IsoDate => text as IsoDate;
const carrots = {
  cropId: 'carrot',
  varietyId: null,
  method: 'direct' as const,
  anchor: { at: 'in-bed' as const, date: date('2027-05-03') },
  datesBy: 'days' as const,
  window_days: null,
  layout: 'rows' as const,
  inRow_m: 0.05,
  row_m: 0.25,
  margin_m: null,
  seedsPerHole: 1,
  cellsPerTray: null,
};

async function freeBed() {
  const board = await made.api.plantings.board({ seasonId: null });
  const taken = new Set(board.plantings.flatMap((each) => each.spans.map((span) => span.bedId)));
  const bed = board.beds.find((each) => !taken.has(each.id)) ?? board.beds[0];
  if (bed === undefined) throw new Error('the farm has no bed');
  return { board, bed };
}

describe('the season board', () => {
  test('shows every bed and planting with frost dates from the weather on record', async () => {
    const board = await made.api.plantings.board({ seasonId: null });
    expect(board.beds).toHaveLength(24);
    expect(board.plantings.length).toBe(board.rows.length);
    expect(board.frost.from).toBe('weather-record');
    expect(board.frost.lastFrost?.slice(0, 4)).toBe('2027');
    const findings = checkPlan({ beds: board.beds, plantings: board.plantings, rules: board.rules });
    expect(findings.filter((each) => each.code === 'overlap')).toEqual([]);
  });

  test('an entry shows what it would make and then makes just that', async () => {
    const { board, bed } = await freeBed();
    const input = {
      seasonId: board.season.id,
      entry: carrots,
      spans: [{ bedId: bed.id, fromShare: 0, toShare: 0.5 }],
      succession: null,
    };
    const preview = await made.api.plantings.preview(input);
    const { plantingIds } = await made.api.plantings.add(input);
    const sheet = await made.api.plantings.one({ plantingId: plantingIds[0] ?? '' });
    expect(sheet.record.plants).toBe(preview.plants);
    expect(sheet.record.firstHarvestDate).toBe(preview.dates.firstHarvest);
    expect(sheet.seed?.seeds).toBeGreaterThanOrEqual(sheet.record.plants);
    expect(sheet.range.early <= sheet.range.likely && sheet.range.likely <= sheet.range.late).toBe(true);
    expect(sheet.weeks.reduce((sum, each) => sum + each.typical, 0)).toBeCloseTo(sheet.record.yieldTypical ?? 0, 6);
    await made.api.undo.undo();
    const after = await made.api.plantings.board({ seasonId: board.season.id });
    expect(after.plantings).toHaveLength(board.plantings.length);
  });

  test('a date before the season is refused at the date', async () => {
    const { board, bed } = await freeBed();
    await expect(
      made.api.plantings.add({
        seasonId: board.season.id,
        entry: { ...carrots, anchor: { at: 'in-bed', date: date('2026-10-01') } },
        spans: [{ bedId: bed.id, fromShare: 0, toShare: 1 }],
        succession: null,
      }),
    ).rejects.toThrow(/outside the season/);
  });

  test('a succession goes where beds are free and says how many have none', async () => {
    const { board, bed } = await freeBed();
    const answer = await made.api.plantings.add({
      seasonId: board.season.id,
      entry: { ...carrots, cropId: 'lettuce-leaf', method: 'transplant', layout: 'staggered', inRow_m: 0.25, row_m: 0.25 },
      spans: [{ bedId: bed.id, fromShare: 0, toShare: 1 }],
      succession: { interval_days: 14, notAfter: date('2027-06-28'), by: 'interval' },
    });
    expect(answer.plantingIds).toHaveLength(5);
    expect(answer.unplaced).toBeGreaterThan(0);
    await made.api.undo.undo();
  });

  test('a move keeps every length and may put the planting into another bed; a stale one is refused', async () => {
    const { board, bed } = await freeBed();
    const row = board.rows[0];
    const plan = board.plantings[0];
    if (row === undefined || plan === undefined) throw new Error('nothing is planned');
    await made.api.plantings.move({
      moves: [
        {
          plantingId: row.plantingId,
          revision: row.revision,
          how: 'move',
          days: 5,
          spans: [{ bedId: bed.id, fromShare: 0, toShare: 1 }],
        },
      ],
    });
    const after = await made.api.plantings.one({ plantingId: row.plantingId });
    expect(daysBetween(plan.inBed, after.dates.inBed)).toBe(5);
    expect(daysBetween(plan.inBed, plan.free)).toBe(daysBetween(after.dates.inBed, after.dates.free));
    expect(after.spans.map((span) => span.bedId)).toEqual([bed.id]);
    await expect(
      made.api.plantings.move({ moves: [{ plantingId: row.plantingId, revision: row.revision, how: 'move', days: 1 }] }),
    ).rejects.toThrow(/changed in another window/);
  });

  test('what fits into a gap has nothing against it', async () => {
    const { board, bed } = await freeBed();
    const here = board.plantings.filter((each) => each.spans.some((span) => span.bedId === bed.id));
    await made.api.plantings.remove({ plantingIds: here.map((each) => each.id) });
    const answer = await made.api.plantings.whatFits({
      seasonId: board.season.id,
      bedId: bed.id,
      fromShare: 0,
      toShare: 1,
      from: date('2027-04-15'),
      to: date('2027-11-30'),
    });
    expect(answer.suggestions.length).toBeGreaterThan(3);
    for (const each of answer.suggestions) expect(each.inBed >= '2027-04-15' && each.free <= '2027-11-30').toBe(true);
    await made.api.undo.undo();
  });
});

describe('this week', () => {
  test('done work feeds its real date into the planting, and the later dates follow', async () => {
    const early = aProgram({ beds: 12 }, () => '2027-05-24T08:00:00');
    try {
      const { tasks } = await early.api.week.list({ monday: null, weeks: 1 });
      const late = tasks.find((task) => task.kind === 'set-out' && task.late);
      if (late === undefined || late.plantingId === null) throw new Error('no setting out is late in May');
      const before = await early.api.plantings.one({ plantingId: late.plantingId });
      await early.api.week.done({ tasks: [late], date: date('2027-05-24') });
      const after = await early.api.plantings.one({ plantingId: late.plantingId });
      expect(after.record.inBedActual).toBe('2027-05-24');
      expect(after.record.inBedDate).toBe(before.record.inBedDate);
      expect(after.dates.firstHarvest > before.dates.firstHarvest).toBe(true);
      const again = await early.api.week.list({ monday: null, weeks: 1 });
      expect(again.tasks.find((task) => task.key === late.key)?.state).toBe('done');
      await early.api.undo.undo();
      expect((await early.api.plantings.one({ plantingId: late.plantingId })).record.inBedActual).toBeNull();
    } finally {
      await early.end();
    }
  });

  test("skipped work leaves the list of what is open, the grower's own stays until it is done", async () => {
    const { taskId } = await made.api.week.add({ title: 'Mend the gate', due: date('2026-11-20'), bedId: null, note: '' });
    const { tasks } = await made.api.week.list({ monday: null, weeks: 1 });
    const own = tasks.find((task) => task.taskId === taskId);
    expect(own?.late).toBe(true);
    if (own === undefined) return;
    await made.api.week.skip({ tasks: [own] });
    const after = await made.api.week.list({ monday: null, weeks: 1 });
    expect(after.tasks.find((task) => task.taskId === taskId && task.state === 'open')).toBeUndefined();
  });

  test('work cannot be done tomorrow', async () => {
    const { tasks } = await made.api.week.list({ monday: date('2027-04-05'), weeks: 1 });
    const [task] = tasks;
    if (task === undefined) throw new Error('nothing to do in April');
    await expect(made.api.week.done({ tasks: [task], date: date('2027-04-06') })).rejects.toThrow(/future/);
  });
});

describe('demand, learning and the next season', () => {
  test('harvest less demand is the surplus, in every week and unit', async () => {
    const { balance } = await made.api.demand.list({ seasonId: null });
    expect(balance.length).toBeGreaterThan(20);
    for (const row of balance) expect(row.over).toBeCloseTo(row.typical - row.wanted, 9);
  });

  test('the next season is a copy on the same days with figures of its own records', async () => {
    const seasons = await made.api.seasons.list();
    const last = seasons.filter((each) => each.state === 'closed').at(-1);
    if (last === undefined) throw new Error('no season is closed');
    const copy = await made.api.seasons.copy({ fromSeasonId: last.id, name: 'Copy', years: 3, keepBeds: true, useLearned: true });
    expect(copy.plantings).toBeGreaterThan(5);
    expect(copy.corrected).toBeGreaterThan(0);
    const board = await made.api.plantings.board({ seasonId: copy.seasonId });
    const source = await made.api.plantings.board({ seasonId: last.id });
    expect(board.plantings).toHaveLength(source.plantings.length);
    expect(board.rows.every((row) => row.state === 'planned' && !row.hasHappened)).toBe(true);
    await made.api.undo.undo();
  });

  test("the grower's own figure stands over the library's and can be taken away again", async () => {
    const ask = () => made.api.crops.one({ cropId: 'carrot', varietyId: null });
    const figure = async () => (await ask()).facts.find((fact) => fact.name === 'maturity_min_days');
    const shipped = await figure();
    const set = (number: number | null) =>
      made.api.crops.setFact({
        cropId: 'carrot',
        varietyId: null,
        name: 'maturity_min_days',
        number,
        words: null,
        source: 'own field',
      });
    await set(72);
    expect(await figure()).toMatchObject({ number: 72, origin: 'own', libraryNumber: shipped?.number });
    await set(null);
    expect(await figure()).toMatchObject({ number: shipped?.number, origin: 'library' });
    await expect(set(-4)).rejects.toThrow(/number/);
  });

  test('own records give days and yields, and say what they rest on', async () => {
    const list = await made.api.crops.list();
    const grown = [];
    for (const crop of list) {
      const one = await made.api.crops.one({ cropId: crop.cropId, varietyId: null });
      if (one.learned.some((each) => each.toHarvest_days !== null && each.yield_per_m2 !== null)) grown.push(crop.cropId);
    }
    const [cropId] = grown;
    if (cropId === undefined) throw new Error('nothing was ever grown');
    await made.api.crops.takeLearned({ cropId });
    const { facts, learned } = await made.api.crops.one({ cropId, varietyId: null });
    const days = facts.find((fact) => fact.name === 'maturity_min_days');
    expect(days?.origin).toBe('learned');
    expect(days?.source).toMatch(/plantings? in \d years?/);
    expect(learned.some((each) => each.toHarvest_days?.least === days?.number)).toBe(true);
    await made.api.undo.undo();
  });

  test('plantings with weather on record teach a heat sum, and then dates can go by heat', async () => {
    const board = await made.api.plantings.board({ seasonId: null });
    const [bed] = board.beds;
    if (bed === undefined) throw new Error('the farm has no bed');
    const { seasonId } = await made.api.seasons.add({
      name: 'With weather',
      startDate: date('2014-01-01'),
      endDate: date('2014-12-31'),
    });
    const { plantingIds } = await made.api.plantings.add({
      seasonId,
      entry: { ...carrots, cropId: 'sweet-corn', row_m: 0.5, inRow_m: 0.2, anchor: { at: 'in-bed', date: date('2014-05-20') } },
      spans: [],
      succession: null,
    });
    await made.api.plantings.record({
      plantingId: plantingIds[0] ?? '',
      revision: 1,
      actual: { sownActual: date('2014-05-20'), inBedActual: date('2014-05-20'), firstHarvestActual: date('2014-08-20') },
    });
    await made.api.crops.takeLearned({ cropId: 'sweet-corn' });
    const { facts } = await made.api.crops.one({ cropId: 'sweet-corn', varietyId: null });
    const heat = facts.find((fact) => fact.name === 'gdd_to_harvest_C_days');
    expect(heat?.origin).toBe('learned');
    expect(heat?.number).toBeGreaterThan(300);
    const ask = (datesBy: 'heat' | 'days') =>
      made.api.plantings.preview({
        seasonId: board.season.id,
        entry: {
          ...carrots,
          cropId: 'sweet-corn',
          row_m: 0.5,
          inRow_m: 0.2,
          datesBy,
          anchor: { at: 'in-bed', date: date('2027-05-20') },
        },
        spans: [],
        succession: null,
      });
    const byHeat = await ask('heat');
    // the years on record differ, so the normals bring the same heat within some weeks of the year it was learned in
    expect(Math.abs(daysBetween(byHeat.dates.firstHarvest, date('2027-08-20')))).toBeLessThan(25);
  });

  test('trays stand on the bench from sowing to setting out', async () => {
    const { weeks, have_m2 } = await made.api.demand.bench({ seasonId: null });
    expect(have_m2).toBe(12);
    expect(weeks.length).toBeGreaterThan(5);
    expect(Math.max(...weeks.map((each) => each.bench_m2))).toBeGreaterThan(0);
  });

  test('a farm without a season can be given one', async () => {
    const empty = aProgram({ beds: 2, years: 0 });
    try {
      await expect(
        empty.api.seasons.add({ name: '2028', startDate: date('2028-12-01'), endDate: date('2028-02-01') }),
      ).rejects.toThrow(/ends after it starts/);
      const { seasonId } = await empty.api.seasons.add({
        name: '2028',
        startDate: date('2028-01-01'),
        endDate: date('2028-12-31'),
      });
      expect((await empty.api.plantings.board({ seasonId })).plantings).toEqual([]);
    } finally {
      await empty.end();
    }
  });

  test('a copy some days on keeps the season in order', async () => {
    const board = await made.api.plantings.board({ seasonId: null });
    const [row] = board.rows;
    if (row === undefined) throw new Error('nothing is planned');
    const { plantingId } = await made.api.plantings.copy({ plantingId: row.plantingId, days: 10 });
    const copy = await made.api.plantings.one({ plantingId });
    const source = await made.api.plantings.one({ plantingId: row.plantingId });
    expect(copy.dates.inBed).toBe(addDays(source.dates.inBed, 10));
  });
});
