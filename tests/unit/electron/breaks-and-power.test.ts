import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { askScheme, desktop, endDesktop, menuItem, type StandInWindow, startDesktop } from '../../builders/stand-in-desktop.ts';

vi.mock('electron', async () => (await import('../../builders/stand-in-desktop.ts')).standInRuntime());

type Heard = (error: unknown) => void;
const faults = ['uncaughtException', 'unhandledRejection'] as const;
const heardBefore = new Map(faults.map((name) => [name, process.listeners(name as 'uncaughtException')] as const));
/** What the program itself does about a fault; the tests' own listeners are left out. */
const ours = (name: (typeof faults)[number]): Heard => {
  const added = process.listeners(name as 'uncaughtException').filter((each) => heardBefore.get(name)?.includes(each) !== true);
  expect(added).toHaveLength(1);
  return added[0] as unknown as Heard;
};

let home: string;
let window: StandInWindow;
const reports = async () => {
  const [said] = (await askScheme('program.reports')) as [
    {
      result: {
        data: readonly { readonly what: string; readonly kind: string; readonly text: string; readonly seen: boolean }[];
      };
    },
  ];
  return said.result.data;
};
const propose = async (): Promise<string> => {
  const [begun] = (await askScheme('proposals.propose', {
    seasonId: 'season-2027',
    goal: { aim: 'most-margin', weight: 'clearly' },
    effort: 'thorough',
    seed: 1,
  })) as [{ result: { data: { jobId: string } } }];
  return begun.result.data.jobId;
};
const ended = (jobId: string) =>
  vi.waitFor(
    async () => expect(await askScheme('jobs.get', { jobId })).not.toMatchObject([{ result: { data: { state: 'running' } } }]),
    30_000,
  );

beforeAll(async () => {
  home = await startDesktop();
  window = desktop.windows[0] as StandInWindow;
});
afterAll(async () => {
  await endDesktop(home);
  for (const name of faults)
    for (const each of process.listeners(name as 'uncaughtException'))
      if (heardBefore.get(name)?.includes(each) !== true) process.off(name, each);
});
beforeEach(() => {
  desktop.boxes.length = 0;
  desktop.errors.length = 0;
  desktop.presses = 0;
});

describe('when something breaks', () => {
  test('a promise that nobody waited for is reported, and the program goes on', async () => {
    ours('unhandledRejection')(new RangeError('Anna’s field'));
    expect(await reports()).toMatchObject([{ what: 'promise', kind: 'RangeError', seen: false }]);
    expect((await reports())[0]?.text).not.toContain('Anna');
    expect(desktop.app.exits).toEqual([]);
  });
  test('a page that broke off is reported and read anew, not over and over; one that ended in order is not', async () => {
    desktop.app.tell('render-process-gone', {}, window.webContents, { reason: 'clean-exit', exitCode: 0 });
    expect(window.webContents.reloads).toBe(0);
    for (let n = 0; n < 3; n += 1)
      desktop.app.tell('render-process-gone', {}, window.webContents, { reason: 'crashed', exitCode: 139 });
    expect(window.webContents.reloads).toBe(1);
    expect((await reports()).filter(({ what }) => what === 'page')).toMatchObject([{ kind: 'crashed' }]);
  });
  test('a helping process that broke off is reported', async () => {
    desktop.app.tell('child-process-gone', {}, { type: 'GPU', reason: 'oom' });
    desktop.app.tell('child-process-gone', {}, { type: 'Utility', reason: 'killed' });
    expect((await reports()).filter(({ what }) => what === 'helper')).toMatchObject([{ kind: 'GPU-oom' }]);
  });
  test('a window that does not answer is reported; the reader waits, or has it read anew', async () => {
    const before = window.webContents.reloads;
    window.tell('unresponsive');
    window.tell('unresponsive');
    expect(desktop.boxes).toMatchObject([{ message: 'This window does not answer.', buttons: ['Wait', 'Read the page anew'] }]);
    await vi.waitFor(() => expect(window.webContents.reloads).toBe(before));
    desktop.presses = 1;
    await Promise.resolve();
    window.tell('unresponsive');
    await vi.waitFor(() => expect(window.webContents.reloads).toBe(before + 1));
    expect((await reports()).filter(({ what }) => what === 'unanswering')).toHaveLength(1);
  });
  test('a fault of the program itself ends it, said in plain words, reported, and not reported again as an end without closing', async () => {
    ours('uncaughtException')(new Error('key=c2VjcmV0'));
    expect(desktop.app.exits).toEqual([1]);
    expect(desktop.errors).toMatchObject([
      { title: 'Bedwright must end', text: expect.stringContaining('What was entered is kept') },
    ]);
    expect((await reports()).filter(({ what }) => what === 'program')).toHaveLength(1);
    expect(existsSync(join(home, `running-${process.pid}`))).toBe(false);
    const files = readdirSync(join(home, 'fault-reports')).map((name) => readFileSync(join(home, 'fault-reports', name), 'utf8'));
    expect(files.join()).not.toMatch(/c2VjcmV0|Anna|Saltgrass/);
  });
  test('the reader sees them once, copies or deletes them', async () => {
    const [newest] = (await reports()) as unknown as readonly { readonly name: string }[];
    await askScheme('program.seeReports');
    expect((await reports()).every(({ seen }) => seen)).toBe(true);
    const count = (await reports()).length;
    await askScheme('program.dropReport', { name: newest?.name ?? '' });
    expect(await reports()).toHaveLength(count - 1);
    expect(await askScheme('program.dropReport', { name: '../program.log' })).toMatchObject([
      { error: { data: { bedwright: { code: 'not-found' } } } },
    ]);
  });
});

describe('the computer’s power', () => {
  const log_B = () => statSync(join(home, 'Saltgrass Lane (invented sample).bedwright-wal')).size;
  test.each(['suspend', 'lock-screen'])('%s brings everything into the farm’s own file first', async (event) => {
    expect(await askScheme('files.backUp')).toMatchObject([{ result: {} }]);
    const [farm] = (await askScheme('farm.get')) as [{ result: { data: { revision: number } } }];
    await askScheme('farm.set', { values: { elevation_m: event === 'suspend' ? 41 : 42 }, revision: farm.result.data.revision });
    expect(log_B()).toBeGreaterThan(0);
    desktop.power.tell(event);
    expect(log_B()).toBe(0);
  });
  test.each(['resume', 'unlock-screen'])('after %s every window reads anew what is today', (event) => {
    menuItem('New window').click?.({}, window);
    desktop.power.tell(event);
    for (const each of desktop.windows.filter(({ gone }) => !gone)) expect(each.webContents.scripts.at(-1)).toContain('"renew"');
    desktop.windows.at(-1)?.close();
  });
  test('is held on only while long work runs', async () => {
    expect(desktop.blockers.size).toBe(0);
    const jobId = await propose();
    expect(desktop.blockers.size).toBe(1);
    await askScheme('jobs.stop', { jobId });
    await ended(jobId);
    expect(desktop.blockers.size).toBe(0);
  });
});

describe('leaving while a computation runs', () => {
  test('is asked about: going on keeps the window and the program', async () => {
    const jobId = await propose();
    expect(window.close()).toBe(false);
    desktop.app.quit();
    expect(desktop.boxes).toMatchObject([
      { message: 'A computation is still running.', buttons: ['Go on computing', 'End all the same'] },
      { message: 'A computation is still running.' },
    ]);
    expect(await askScheme('jobs.get', { jobId })).toMatchObject([{ result: { data: { state: 'running' } } }]);
    await askScheme('jobs.stop', { jobId });
    await ended(jobId);
    desktop.boxes.length = 0;
  });
  test('is not asked when the computer goes down; the work is stopped and the farm closed in order', async () => {
    const jobId = await propose();
    desktop.power.tell('shutdown');
    expect(desktop.boxes).toEqual([]);
    await vi.waitFor(() => expect(desktop.app.ended).toBe(true), 30_000);
    expect(await askScheme('jobs.get', { jobId })).toMatchObject([{ error: {} }]);
    expect(existsSync(join(home, 'Saltgrass Lane (invented sample).bedwright-wal'))).toBe(false);
    expect(desktop.blockers.size).toBe(0);
  });
});
