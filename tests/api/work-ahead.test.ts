import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { partsAhead } from '../../api/program/parts-ahead.ts';
import { type WorkAhead, workAhead } from '../../api/program/work-ahead.ts';
import { soilTablesIn } from '../../api/soil/soil-tables.ts';
import { forgetDerived } from '../../db/file/derived.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { WORKED } from '../builders/reading-inputs.ts';

let t: TestProgram;
let ahead: WorkAhead;
beforeEach(() => {
  vi.useFakeTimers();
  t = aProgram({ beds: 24, years: 1 });
});
afterEach(async () => {
  ahead?.end();
  vi.useRealTimers();
  await t.end();
});

function counted(most = Infinity, last: () => void = () => undefined) {
  const done: number[] = [];
  function* parts() {
    for (let part = 1; part <= most; part += 1) {
      done.push(part);
      yield;
    }
    last();
  }
  ahead = workAhead(t.program, () => parts());
  return done;
}

describe('work ahead', () => {
  test('begins once nobody has asked for a while, and waits again whenever somebody does', () => {
    const done = counted();
    vi.advanceTimersByTime(10_000);
    expect(done).toEqual([]);
    ahead.asked(null);
    vi.advanceTimersByTime(399);
    ahead.asked(null);
    vi.advanceTimersByTime(399);
    expect(done).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(done).toEqual([1]);
    vi.advanceTimersByTime(20);
    expect(done).toEqual([1, 2, 3]);
    ahead.asked(null);
    vi.advanceTimersByTime(399);
    expect(done).toEqual([1, 2, 3]);
    vi.advanceTimersByTime(1);
    expect(done).toEqual([1, 2, 3, 4]);
  });

  test('is done once for each farm, and no more once it is closed or the program ends', () => {
    const done = counted(2);
    ahead.asked(null);
    vi.advanceTimersByTime(1000);
    ahead.asked(t.program.farms()[0]?.key ?? '');
    vi.advanceTimersByTime(1000);
    expect(done).toEqual([1, 2]);
    const endless = counted();
    ahead.asked(null);
    vi.advanceTimersByTime(400);
    ahead.end();
    vi.advanceTimersByTime(1000);
    expect(endless).toEqual([1]);
    ahead.asked(null);
    t.program.close(t.program.farms()[0]?.key ?? '');
    vi.advanceTimersByTime(1000);
    expect(endless).toEqual([1]);
    ahead.asked(null);
    expect(vi.getTimerCount()).toBe(0);
  });

  test('ends at a part that fails: a fault of the program is logged, and asking goes on', () => {
    const log = vi.spyOn(t.program, 'log').mockImplementation(() => undefined);
    const done = counted(1, () => {
      throw new TypeError('broken part');
    });
    ahead.asked(null);
    vi.advanceTimersByTime(1000);
    expect(done).toEqual([1]);
    expect(log.mock.calls.flat().join('\n')).toContain('broken part');
    expect(vi.getTimerCount()).toBe(0);
    ahead.asked(null);
    vi.advanceTimersByTime(1000);
    expect(done).toEqual([1]);
  });
});

describe('the parts of a farm', () => {
  /** How many queries an answer takes. */
  async function queriesOf(read: () => Promise<unknown>): Promise<number> {
    const prepare = vi.spyOn(Object.getPrototypeOf(t.farm.sqlite.prepare('SELECT 1')), 'all');
    await read();
    const { length } = prepare.mock.calls;
    prepare.mockRestore();
    return length;
  }

  test('leave the slowest pages little to read', async () => {
    const slow = {
      'costs.view': () => t.api.costs.view({ seasonId: WORKED, by: 'bed' }),
      'proposals.overview': () => t.api.proposals.overview({ seasonId: null }),
      'plantings.board': () => t.api.plantings.board({ seasonId: null }),
    };
    for (const [name, read] of Object.entries(slow)) {
      forgetDerived(t.farm.db);
      const anew = await queriesOf(read);
      const parts = [...partsAhead({ db: t.farm.db, today: '2026-11-25' as IsoDate }, soilTablesIn(t.program.places.resources))];
      expect(parts.length).toBeGreaterThan(20);
      // the program's own day, as the page's question has it
      expect([name, (await queriesOf(read)) < anew / 2]).toEqual([name, true]);
    }
  });

  test('of a farm without a season are none', () => {
    t.farm.sqlite.exec('PRAGMA foreign_keys = OFF; DELETE FROM season; PRAGMA foreign_keys = ON;');
    expect([...partsAhead({ db: t.farm.db, today: '2026-11-25' as IsoDate }, soilTablesIn(t.program.places.resources))]).toEqual(
      [],
    );
  });
});
