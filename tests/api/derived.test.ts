import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { derived, derivedByKey, derivedRows, forgetDerived, type RowsByKey } from '../../db/file/derived.ts';
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

  test('is worked out anew after a change, an undo and a redo', async () => {
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
  const rows = (of: string): number => t.farm.db.all(sql`SELECT 1 FROM ${sql.identifier(of)}`).length;
  const codes = () =>
    derived(t.farm.db, 'codes', () => t.farm.db.all<{ code: string }>(sql`SELECT code FROM bed`)).map(({ code }) => code);
  const rename = (code: string) =>
    t.farm.sqlite.prepare('UPDATE bed SET code = ? WHERE id = (SELECT min(id) FROM bed)').run(code);

  /** Counts how often it was worked out of a table, by a name of its own. */
  const counted = (name: string, of: string) => {
    let times = 0;
    return () =>
      derived(t.farm.db, name, () => {
        rows(of);
        times += 1;
        return { times };
      });
  };

  test('works a thing out once while no row of a table that it read is written', () => {
    const [settings, beds] = [counted('of settings', 'setting'), counted('of beds', 'bed')];
    expect([settings().times, settings().times, beds().times]).toEqual([1, 1, 1]);
    t.farm.unrecorded(() => t.farm.sqlite.prepare(`INSERT INTO setting(name, value) VALUES ('x', '1')`).run());
    expect([settings().times, settings().times, beds().times]).toEqual([2, 2, 1]);
    rename('QQ-2');
    expect([settings().times, beds().times]).toEqual([2, 2]);
  });

  test('works anew what rests on another thing, also where that was kept, or was handed to it', () => {
    const beds = counted('inner', 'bed');
    let times = 0;
    const within = () => derived(t.farm.db, 'reads it within', () => ({ beds: beds().times }));
    const given = () => {
      const from = beds();
      return derived(t.farm.db, 'is given it', () => ({ beds: from.times, times: ++times }), [from]);
    };
    beds();
    expect([within().beds, given().beds, given().times]).toEqual([1, 1, 1]);
    rename('QQ-3');
    expect([within().beds, given().beds, given().times]).toEqual([2, 2, 2]);
    expect(() => derived(t.farm.db, 'is given a stranger', () => 1, [{}])).toThrow(RangeError);
  });

  test('lets what rests on rows stand while those are the same, whatever else of their table is written', () => {
    const retired = () =>
      derivedRows(t.farm.db, 'codes of retired beds', () =>
        t.farm.db.all<{ code: string }>(sql`SELECT code FROM bed WHERE retired_date IS NOT NULL ORDER BY code`),
      );
    let times = 0;
    const resting = () =>
      derived(t.farm.db, 'rests on retired beds', () => ({ codes: retired().map(({ code }) => code), times: ++times }));
    const given = (from: object) => derived(t.farm.db, 'is given retired beds', () => ({ times }), [from]);
    const rows = retired();
    expect(resting()).toEqual({ codes: [], times: 1 });
    const first = given(rows);
    rename('QQ-5');
    expect(retired()).toBe(rows);
    expect(resting().times).toBe(1);
    expect(given(rows)).toBe(first);
    t.farm.unrecorded(() =>
      t.farm.sqlite.prepare(`UPDATE bed SET retired_date = '2026-01-01' WHERE id = (SELECT min(id) FROM bed)`).run(),
    );
    expect(resting()).toEqual({ codes: ['QQ-5'], times: 2 });
    expect(given(retired())).not.toBe(first);
    rename('QQ-6');
    expect(resting()).toEqual({ codes: ['QQ-6'], times: 3 });
  });

  describe('of tables whose rows are told apart', () => {
    const seasons = () =>
      t.farm.db.all<{ id: string }>(sql`SELECT DISTINCT season_id AS id FROM planting ORDER BY id`).map(({ id }) => id);
    const write = (query: string, ...values: string[]) => t.farm.unrecorded(() => t.farm.sqlite.prepare(query).run(...values));
    const renumber = (seasonId: string) =>
      write('UPDATE planting SET number = number + 1 WHERE id = (SELECT min(id) FROM planting WHERE season_id = ?)', seasonId);

    test('reads rows of one key again only where a row of that key was written', () => {
      const [one = '', other = ''] = seasons();
      let times = 0;
      const numbers = () =>
        derivedRows(
          t.farm.db,
          `numbers ${one}`,
          () => {
            times += 1;
            return t.farm.db.all<{ number: number }>(sql`SELECT number FROM planting WHERE season_id = ${one} ORDER BY id`);
          },
          { planting: one },
        );
      const before = numbers();
      renumber(other);
      expect([numbers(), times]).toEqual([before, 1]);
      renumber(one);
      expect(numbers()).not.toEqual(before);
      expect(times).toBe(2);
      // moved out of the season: it was of that key before
      write('UPDATE planting SET season_id = ? WHERE id = (SELECT min(id) FROM planting WHERE season_id = ?)', other, one);
      expect(numbers()).toHaveLength(before.length - 1);
      // where a planting stands is of its season too, and what is gone with it may be of any
      write('DELETE FROM planting_bed WHERE id = (SELECT min(id) FROM planting_bed)');
      numbers();
      expect(times).toBe(3);
      expect(() => derivedRows(t.farm.db, 'of no table', () => [], { nothing: one })).toThrow(RangeError);
    });

    const counted = (asked: (readonly (string | null)[] | 'all')[]) => (): RowsByKey<{ seasonId: string; plantings: number }> =>
      derivedByKey(t.farm.db, 'plantings by season', {
        tables: ['planting'],
        read: (keys) => {
          asked.push(keys);
          const rows = t.farm.db.all<{ seasonId: string; plantings: number }>(
            sql`SELECT season_id AS "seasonId", count(*) AS plantings FROM planting GROUP BY season_id ORDER BY season_id`,
          );
          return keys === 'all' ? rows : rows.filter(({ seasonId }) => keys.includes(seasonId));
        },
        keyOf: (row) => row.seasonId,
      });

    test('reads by key the rows of the written keys alone, and stands where those are the same', () => {
      const asked: (readonly (string | null)[] | 'all')[] = [];
      const plantings = counted(asked);
      const before = plantings();
      const one = seasons().at(-1) ?? '';
      renumber(one);
      expect(plantings()).toBe(before);
      expect(asked).toEqual(['all', [one]]);
      const removed = t.farm.sqlite
        .prepare<[string], string>(
          'SELECT id FROM planting p WHERE season_id = ? AND NOT EXISTS (SELECT 1 FROM harvest WHERE planting_id = p.id)',
        )
        .pluck()
        .all(one)[0];
      expect(removed).toBeDefined();
      write('DELETE FROM planting WHERE id = ?', removed ?? '');
      expect(plantings().get(one)?.[0]?.plantings).toBe((before.get(one)?.[0]?.plantings ?? 0) - 1);
      forgetDerived(t.farm.db);
      expect(new Map(plantings())).toEqual(new Map([...counted([])()]));
    });

    test('reads all of them again where so much was written that it is no longer known what', () => {
      const asked: (readonly (string | null)[] | 'all')[] = [];
      const plantings = counted(asked);
      forgetDerived(t.farm.db);
      const before = plantings();
      const [one = '', other = ''] = seasons();
      renumber(one);
      for (let n = 0; n < 4000; n += 1) renumber(other);
      expect(plantings()).toEqual(before);
      expect(asked).toEqual(['all', 'all']);
    });
  });

  test('knows that a list handed to a query is no table', () => {
    const listed = () =>
      derived(t.farm.db, 'listed', () =>
        t.farm.db.all(sql`SELECT name FROM design WHERE id IN (SELECT value FROM json_each('[]'))`),
      );
    const columns = () =>
      derived(t.farm.db, 'columns', () => t.farm.db.all(sql`SELECT d.name FROM design d, pragma_table_info('bed') LIMIT 1`));
    expect(listed()).toBe(listed());
    expect(columns()).not.toBe(columns());
  });

  test('keeps nothing of which it is not known what it was read of', () => {
    let times = 0;
    const blind = () => derived(t.farm.db, 'past the query builder', () => (times += 1));
    expect([blind(), blind()]).toEqual([1, 2]);
    const steps = counted('of the log of undo', 'undo_step');
    expect([steps().times, steps().times]).toEqual([1, 2]);
  });

  test('knows the tables of a query that is answered by an index alone, and of one within another', () => {
    const ofIndex = () =>
      derived(t.farm.db, 'codes by index', () => t.farm.db.all(sql`SELECT block_id, code FROM bed ORDER BY block_id, code`));
    const ofInner = () =>
      derived(t.farm.db, 'by an inner query', () =>
        t.farm.db.all(sql`SELECT name FROM design WHERE id IN (SELECT design_id FROM bed)`),
      );
    const [before, inner] = [ofIndex(), ofInner()];
    expect([ofIndex(), ofInner()]).toEqual([before, inner]);
    expect(ofIndex()).toBe(before);
    rename('QQ-4');
    expect(ofIndex()).not.toBe(before);
    expect(ofIndex()).not.toEqual(before);
    expect(ofInner()).not.toBe(inner);
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
    const count = () => derived(t.farm.db, 'values of sheets', () => rows('soil_test_value'));
    const before = count();
    expect(before).toBeGreaterThan(0);
    t.farm.unrecorded(() => t.farm.sqlite.prepare('DELETE FROM soil_test').run());
    expect(count()).toBe(0);
  });

  test('is bounded: the eldest is forgotten', () => {
    let made = 0;
    const ask = (n: number) =>
      derived(t.farm.db, `thing ${n}`, () => {
        rows('block');
        made += 1;
      });
    for (let n = 0; n < 500; n += 1) ask(n);
    ask(499);
    expect(made).toBe(500);
    ask(0);
    expect(made).toBe(501);
  });
});
