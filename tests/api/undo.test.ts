import { eq } from 'drizzle-orm';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openFarm } from '../../db/file/open-farm.ts';
import { bed, bedPart, design } from '../../db/schema/beds.ts';
import { planting } from '../../db/schema/plantings.ts';
import { aProgram, FIXED_NOW, migrations, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
beforeAll(() => {
  t = aProgram({ beds: 24, years: 1 });
});
afterAll(() => t.end());

/** Every row of every table that undo is about. Revisions count up for ever and are left out. */
function everything(): string {
  const { sqlite } = t.farm;
  const tables = sqlite
    .prepare<[], { name: string }>(
      `SELECT name FROM sqlite_schema WHERE type='table' AND name NOT LIKE 'undo_%' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' AND name NOT LIKE 'sqlite_%' AND name NOT IN ('weather_day', 'crop_value') ORDER BY name`,
    )
    .all();
  return JSON.stringify(
    tables.map(({ name }) => [
      name,
      sqlite
        .prepare<[], Record<string, unknown>>(`SELECT * FROM "${name}"`)
        .all()
        .map((row) => JSON.stringify({ ...row, revision: 0 }))
        .sort(),
    ]),
  );
}

test('a settings change is taken back and done again, by name', async () => {
  const before = await t.api.farm.get();
  await t.api.farm.set({ values: { name: 'Another name' }, revision: before.revision });
  expect(await t.api.undo.state()).toEqual({ undo: 'Change the farm’s settings', redo: null });
  expect(await t.api.undo.undo()).toEqual({ note: 'Change the farm’s settings' });
  expect((await t.api.farm.get()).name).toBe(before.name);
  expect(await t.api.undo.state()).toMatchObject({ redo: 'Change the farm’s settings' });
  await t.api.undo.redo();
  expect((await t.api.farm.get()).name).toBe('Another name');
});

test('a save over a stale revision is refused, also after an undo', async () => {
  const seen = await t.api.farm.get();
  await t.api.farm.set({ values: { elevation_m: 99 }, revision: seen.revision });
  await t.api.undo.undo();
  await expect(t.api.farm.set({ values: { elevation_m: 5 }, revision: seen.revision })).rejects.toThrow(/another window/);
});

test('deleting a bed’s design with all that hangs on it comes back whole', () => {
  const before = everything();
  t.farm.change('Remove everything of a design', () => {
    const beds = t.farm.db.select().from(bed).where(eq(bed.designId, 'design-bag')).all();
    for (const row of beds) t.farm.db.delete(bedPart).where(eq(bedPart.bedId, row.id)).run();
    t.farm.sqlite.exec(
      `DELETE FROM design_part WHERE design_id = 'design-bag'; DELETE FROM design_layer WHERE design_id = 'design-bag'`,
    );
  });
  expect(everything()).not.toBe(before);
  t.farm.undo();
  expect(everything()).toBe(before);
});

test('any run of changes is taken back to the start and done again to the end', () => {
  const edits = fc.array(
    fc.record({
      kind: fc.constantFrom('move', 'rename', 'part', 'plants', 'cascade'),
      at: fc.nat(23),
      value: fc.integer({ min: 1, max: 900 }),
    }),
    { minLength: 1, maxLength: 12 },
  );
  fc.assert(
    fc.property(edits, (list) => {
      const beds = t.farm.db.select().from(bed).all();
      const start = everything();
      let steps = 0;
      const state = () => t.farm.undoState().undo;
      for (const { kind, at, value } of list) {
        const row = beds[at];
        if (row === undefined) continue;
        const before = everything();
        t.farm.change(`edit ${kind}`, () => {
          if (kind === 'move')
            t.farm.db
              .update(bed)
              .set({ x_m: value / 10 })
              .where(eq(bed.id, row.id))
              .run();
          if (kind === 'rename')
            t.farm.db
              .update(bed)
              .set({ notes: `it's "${value}"\n—` })
              .where(eq(bed.id, row.id))
              .run();
          if (kind === 'part') t.farm.db.delete(bedPart).where(eq(bedPart.bedId, row.id)).run();
          if (kind === 'plants') t.farm.db.update(planting).set({ plants: value }).run();
          if (kind === 'cascade')
            t.farm.db
              .insert(design)
              .values({
                id: `d-${at}-${value}-${steps}-${Math.abs(before.length)}`,
                name: `d ${at} ${value} ${steps} ${before.length}`,
                kind: 'framed',
                outline: 'rectangle',
                length_m: 1,
                width_m: 1,
                depth_m: 0.2,
                fillDepth_m: 0.2,
                watering: 'top',
              })
              .run();
        });
        if (everything() !== before) steps += 1;
      }
      const end = everything();
      for (let n = 0; n < steps; n += 1) t.farm.undo();
      expect(everything()).toBe(start);
      for (let n = 0; n < steps; n += 1) t.farm.redo();
      expect(everything()).toBe(end);
      for (let n = 0; n < steps; n += 1) t.farm.undo();
      expect(everything()).toBe(start);
      expect(state() === null || typeof state() === 'string').toBe(true);
    }),
    { numRuns: 12, seed: 11 },
  );
});

test('a change that fails leaves no row and no step behind', () => {
  const before = everything();
  const step = t.farm.undoState();
  expect(() =>
    t.farm.change('Half a change', () => {
      t.farm.db.update(bed).set({ x_m: -1 }).run();
      throw new Error('broken off');
    }),
  ).toThrow('broken off');
  expect(everything()).toBe(before);
  expect(t.farm.undoState()).toEqual(step);
});

test('a change can still be taken back after a restart', async () => {
  const mine = aProgram({ beds: 4, years: 0 });
  const path = mine.farm.path;
  const { name, revision } = await mine.api.farm.get();
  await mine.api.farm.set({ values: { name: 'Renamed' }, revision });
  mine.farm.close();
  const again = openFarm(path, { migrations, now: () => FIXED_NOW });
  expect(again.undo()).toBe('Change the farm’s settings');
  expect(again.sqlite.prepare('SELECT name FROM farm').pluck().get()).toBe(name);
  again.close();
  await mine.end();
});
