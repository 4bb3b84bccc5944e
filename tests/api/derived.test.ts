import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { derived, forgetDerived } from '../../db/file/derived.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { type Reading, readingNames, readingsOf } from '../builders/reading-inputs.ts';

let t: TestProgram;
let readings: readonly Reading[];
beforeAll(() => {
  t = aProgram({ beds: 24 });
  // a preview gives what it would make new ids each time, and orders by them
  readings = readingsOf(t).filter(({ name }) => name !== 'plantings.preview');
});
afterAll(() => t.end());

/** As text, so that no answer can be altered later. */
const textOf = (answer: unknown): string => JSON.stringify(answer) ?? '';

/** All answers, each with nothing kept. */
async function answersAnew(): Promise<ReadonlyMap<string, string>> {
  const answers = new Map<string, string>();
  for (const { name, read } of readings) {
    forgetDerived(t.farm.db);
    answers.set(name, textOf(await read()));
  }
  return answers;
}

async function answersKept(of: readonly Reading[]): Promise<ReadonlyMap<string, string>> {
  const answers = new Map<string, string>();
  for (const { name, read } of of) answers.set(name, textOf(await read()));
  return answers;
}

const firstBed = async () => {
  const [bed] = await t.api.beds.list();
  if (bed === undefined) throw new Error('the farm has no bed');
  return bed;
};

describe('what is kept of a farm’s rows', () => {
  test('is compared for every reading procedure: a new one is given its input in tests/builders/reading-inputs.ts', () => {
    expect(readingsOf(t).map(({ name }) => name)).toEqual(readingNames);
  });

  test('gives every reading procedure the answer that it works out anew, in whatever order they are asked', async () => {
    const anew = await answersAnew();
    expect(anew.size).toBeGreaterThan(100);
    for (const order of [readings, readings.toReversed(), readings])
      for (const [name, answer] of await answersKept(order)) expect(answer, name).toBe(anew.get(name));
  });

  test('is forgotten by a change, an undo and a redo', async () => {
    const bed = await firstBed();
    const before = await answersKept(readings);
    await t.api.beds.setMany({ edits: [{ bedId: bed.bedId, revision: bed.revision, values: { code: 'ZZ-99' } }] });
    const changed = await answersKept(readings);
    expect(changed.get('beds.list')).not.toBe(before.get('beds.list'));
    expect(changed).toEqual(await answersAnew());
    await t.api.undo.undo();
    expect(await answersKept(readings)).toEqual(await answersAnew());
    expect((await answersKept(readings)).get('plantings.board')).toBe(before.get('plantings.board'));
    await t.api.undo.redo();
    const redone = await answersKept(readings);
    expect(redone.get('plantings.board')).toBe(changed.get('plantings.board'));
    expect(redone).toEqual(await answersAnew());
  });
});

describe('keeping', () => {
  const codes = () =>
    derived(t.farm.db, 'codes', () => t.farm.sqlite.prepare<[], string>('SELECT code FROM bed ORDER BY code').pluck().all());
  const rename = (code: string) =>
    t.farm.sqlite.prepare('UPDATE bed SET code = ? WHERE id = (SELECT min(id) FROM bed)').run(code);

  test('works a thing out once while no row is written', () => {
    let times = 0;
    const count = () => derived(t.farm.db, 'times', () => (times += 1));
    expect([count(), count(), count()]).toEqual([1, 1, 1]);
    t.farm.unrecorded(() => t.farm.sqlite.prepare(`INSERT INTO setting(name, value) VALUES ('x', '1')`).run());
    expect([count(), count()]).toEqual([2, 2]);
  });

  test('never keeps what was read inside a change that is then rolled back', () => {
    const before = codes();
    expect(() =>
      t.farm.change('Rename', () => {
        rename('QQ-1');
        expect(codes()).toContain('QQ-1');
        throw new RangeError('no');
      }),
    ).toThrow(RangeError);
    expect(codes()).toEqual(before);
  });

  test('sees rows that a cascade deleted', () => {
    const count = () =>
      derived(t.farm.db, 'layers', () => t.farm.sqlite.prepare<[], number>('SELECT count(*) FROM soil_test_value').pluck().get());
    const before = count() ?? 0;
    expect(before).toBeGreaterThan(0);
    t.farm.unrecorded(() => t.farm.sqlite.prepare('DELETE FROM soil_test').run());
    expect(count()).toBe(0);
  });

  test('is bounded: the eldest is forgotten', () => {
    let made = 0;
    const ask = (n: number) => derived(t.farm.db, `thing ${n}`, () => (made += 1));
    for (let n = 0; n < 500; n += 1) ask(n);
    ask(499);
    expect(made).toBe(500);
    ask(0);
    expect(made).toBe(501);
  });
});
