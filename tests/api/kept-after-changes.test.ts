import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { callerFactory } from '../../api/procedure.ts';
import { router } from '../../api/router.ts';
import { forgetDerived } from '../../db/file/derived.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { changesOfProgram } from '../builders/change-inputs.ts';
import { type Reading, readingsOf } from '../builders/reading-inputs.ts';

let t: TestProgram;
let readings: readonly Reading[];
beforeAll(() => {
  t = aProgram({ years: 1 });
  // a preview gives what it would make new ids each time
  readings = readingsOf(t).filter(({ name }) => name !== 'plantings.preview');
});
afterAll(() => t.end());

type Call = (input: unknown) => Promise<unknown>;
const caller = () => callerFactory(router)(t.door) as unknown as Readonly<Record<string, Readonly<Record<string, Call>>>>;

/** Every answer as text; a refusal too is an answer, as when the thing asked for is gone. */
async function answers(): Promise<ReadonlyMap<string, string>> {
  const given = new Map<string, string>();
  for (const { name, read } of readings) {
    given.set(
      name,
      await read().then(
        (answer) => JSON.stringify(answer) ?? '',
        (refused: Error) => `refused: ${refused.message}`,
      ),
    );
  }
  return given;
}

/** The readings that answer otherwise with what is kept than with nothing kept, so that a failure names them instead of printing a farm. */
async function stale(): Promise<readonly string[]> {
  const kept = await answers();
  forgetDerived(t.farm.db);
  const fresh = await answers();
  return [...kept].flatMap(([name, answer]) => (answer === fresh.get(name) ? [] : [name]));
}

const changes = () => changesOfProgram(t);

describe('after a change, and after its undo and the next change, no reading gives what was kept of rows that are no more', () => {
  test('there are changes and readings to be compared', () => {
    expect(changes().length).toBeGreaterThan(100);
    expect(readings.length).toBeGreaterThan(100);
  });

  test('all changes in turn', { timeout: 900_000 }, async () => {
    const wrong: string[] = [];
    for (const { name } of changes()) {
      const found = changes().find((each) => each.name === name);
      const atRest = t.farm.undoState().undo;
      const input = await found?.input();
      const [group = '', leaf = ''] = name.split('.');
      await caller()[group]?.[leaf]?.(input);
      wrong.push(...(await stale()).map((reading) => `${reading} after ${name}`));
      while (t.farm.undoState().undo !== atRest && t.farm.undo() !== null);
    }
    expect(wrong).toEqual([]);
  });
});
