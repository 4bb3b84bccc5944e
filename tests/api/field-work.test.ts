import { afterEach, beforeEach, expect, test } from 'vitest';
import { fieldEntry } from '../../api/field/field-app.ts';
import { fieldWorkOf } from '../../api/field/field-work.ts';
import { ctxOf } from '../../api/procedure.ts';
import { harvest } from '../../db/schema/harvests.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

/** A summer day of the invented farm's planned season, when plantings stand and work is due. */
const SUMMER = '2027-07-06T09:00:00';

let t: TestProgram;
let work: ReturnType<typeof fieldWorkOf>;
beforeEach(() => {
  t = aProgram({ beds: 48, years: 1 }, () => SUMMER);
  work = fieldWorkOf(() => ctxOf({ program: t.program, farmKey: null, log: () => undefined }));
});
afterEach(() => t.end());

type Week = {
  readonly tasks: readonly { readonly key: string }[];
  readonly plantings: readonly { readonly plantingId: string; readonly unit: string }[];
};
const week = (): Week => work.week() as Week;
const harvests = () => t.farm.db.select().from(harvest).all().length;

test('a harvest from the field is taken once, however often it is sent, and can be undone', async () => {
  const [planting] = week().plantings;
  const entry = fieldEntry.parse({
    kind: 'harvest',
    id: 'entry-0001',
    date: '2027-07-06',
    plantingId: planting?.plantingId,
    amount: 1.5,
    unit: planting?.unit,
    confirmed: true,
  });
  const before = harvests();
  expect(work.log(entry, 'Phone of Kim')).toEqual({ id: 'entry-0001', taken: 'now' });
  expect(work.log(entry, 'Phone of Kim')).toEqual({ id: 'entry-0001', taken: 'before' });
  expect(harvests()).toBe(before + 1);
  expect((await t.api.undo.state()).undo).toContain('in the field');
  await t.api.undo.undo();
  expect(harvests()).toBe(before);
});

test('a task done in the field is gone from the week', () => {
  const [task] = week().tasks;
  expect(task).toBeDefined();
  work.log(fieldEntry.parse({ kind: 'task', id: 'entry-0002', date: '2027-07-06', taskId: task?.key, state: 'done' }), 'Phone');
  expect(week().tasks.some((each) => each.key === task?.key)).toBe(false);
});

test('an entry of tomorrow, and one for a planting that is gone, are refused and not remembered', () => {
  const [planting] = week().plantings;
  const entry = {
    kind: 'harvest',
    id: 'entry-0003',
    date: '2027-07-07',
    plantingId: planting?.plantingId,
    amount: 1,
    unit: 'kg',
    confirmed: true,
  };
  expect(() => work.log(fieldEntry.parse(entry), 'Phone')).toThrow(/future/);
  expect(() => work.log(fieldEntry.parse({ ...entry, date: '2027-07-06', plantingId: 'gone' }), 'Phone')).toThrow(
    /no longer there/,
  );
  expect(work.log(fieldEntry.parse({ ...entry, date: '2027-07-06', unit: planting?.unit }), 'Phone')).toEqual({
    id: 'entry-0003',
    taken: 'now',
  });
});
