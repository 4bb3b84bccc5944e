import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import {
  anEvent,
  askScheme,
  desktop,
  endDesktop,
  menuItem,
  type StandInWindow,
  startDesktop,
} from '../../builders/stand-in-desktop.ts';

vi.mock('electron', async () => (await import('../../builders/stand-in-desktop.ts')).standInRuntime());

let home: string;
let first: StandInWindow;
const north = () => join(home, 'North field.bedwright');
const openFarms = async (): Promise<readonly { readonly key: string; readonly path: string }[]> => {
  const [said] = (await askScheme('files.state')) as [{ result: { data: { open: [] } } }];
  return said.result.data.open;
};
const last = (): StandInWindow => desktop.windows.at(-1) as StandInWindow;

beforeAll(async () => {
  home = await startDesktop();
  first = last();
  expect(await askScheme('files.saveCopy', { path: north() })).toMatchObject([{ result: {} }]);
});
afterAll(() => endDesktop(home));
beforeEach(() => {
  for (const window of desktop.windows.filter((each) => each !== first && !each.gone)) window.close();
  desktop.boxes.length = 0;
  desktop.errors.length = 0;
});

test('a page opens a second farm in a second window, as locked as the first, each with its own file', async () => {
  const [opened] = (await askScheme('files.open', { path: north() })) as [{ result: { data: { key: string } } }];
  const { key } = opened.result.data;
  expect(first.webContents.opened({ url: `bedwright://app/week?farm=${key}` })).toEqual({ action: 'deny' });
  const second = last();
  expect(second).not.toBe(first);
  expect(second.webContents.url).toBe(`bedwright://app/week?farm=${key}`);
  expect(second.options['webPreferences']).toEqual(first.options['webPreferences']);
  expect((await openFarms()).map(({ path }) => path)).toEqual([expect.stringContaining('Saltgrass'), north()]);
});

test('a farm that is let go with its window can be opened anew', async () => {
  menuItem('Open farm…');
  desktop.chosen = north();
  menuItem('Open farm…').click?.({}, first);
  await vi.waitFor(() => expect(last().webContents.url).toMatch(/farm=\d+$/));
  expect(await openFarms()).toHaveLength(2);
  last().close();
  expect(await openFarms()).toHaveLength(1);
  menuItem('North field  ('.concat(home, ')')).click?.({}, first);
  expect(await openFarms()).toHaveLength(2);
});

test('the same farm in a second window is refused in plain words, and its own window comes to the front', async () => {
  const windows = desktop.windows.length;
  const raised = first.focused;
  expect(first.webContents.opened({ url: 'bedwright://app/week?farm=1' })).toEqual({ action: 'deny' });
  expect(desktop.windows).toHaveLength(windows);
  expect(first.focused).toBe(raised + 1);
  expect(desktop.boxes).toMatchObject([
    { message: 'Saltgrass Lane (invented sample) is open already.', detail: expect.stringContaining('one window at a time') },
  ]);
});

test('a window does not go to a farm that another shows, and lets its own go when it takes another', async () => {
  menuItem('New window').click?.({}, first);
  const second = last();
  expect(second.webContents.url).toBe('bedwright://app/?farm=none');
  expect(second.go('bedwright://app/week?farm=1')).toBe(false);
  expect(desktop.boxes).toHaveLength(1);
  const [opened] = (await askScheme('files.open', { path: north() })) as [{ result: { data: { key: string } } }];
  expect(second.go(`bedwright://app/week?farm=${opened.result.data.key}`)).toBe(true);
  expect(await openFarms()).toHaveLength(2);
  expect(second.go('bedwright://app/week?farm=none')).toBe(true);
  expect(await openFarms()).toHaveLength(1);
});

test('a window without a farm shows that none is open, and may be there twice', async () => {
  menuItem('New window').click?.({}, first);
  menuItem('New window').click?.({}, first);
  const answer = await desktop.scheme?.handle(
    new Request('bedwright://app/trpc/farm.get?batch=1', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-bedwright-farm': 'none' },
      body: '{}',
    }),
  );
  expect(await answer?.json()).toMatchObject([{ error: { data: { bedwright: { code: 'no-farm' } } } }]);
  expect(desktop.boxes).toEqual([]);
});

test('a second start hands its file to the first, found from the folder it was started in; without one a window comes to the front', async () => {
  const raised = first.focused;
  desktop.app.tell('second-instance', {}, ['bedwright', '--flag', 'North field.bedwright'], home);
  expect((await openFarms()).at(-1)?.path).toBe(north());
  desktop.app.tell('second-instance', {}, ['bedwright'], '/');
  expect(first.focused).toBe(raised + 1);
});

test('a double click on a file opens it; one that is no farm is told in plain words and left as it is', async () => {
  const event = anEvent();
  desktop.app.tell('open-file', event, north());
  expect(event.prevented).toBe(true);
  expect((await openFarms()).at(-1)?.path).toBe(north());
  desktop.app.tell('open-file', anEvent(), join(home, 'nowhere.bedwright'));
  expect(desktop.errors).toMatchObject([
    { title: 'This farm was not opened', text: expect.stringContaining('nowhere.bedwright') },
  ]);
  expect(existsSync(join(home, 'nowhere.bedwright'))).toBe(false);
});

test('what is to be downloaded is downloaded, and no other window is made', () => {
  const windows = desktop.windows.length;
  first.webContents.opened({ url: 'bedwright://app/export/shopping-list.pdf?season=season-2026' });
  expect(first.webContents.downloads).toEqual(['bedwright://app/export/shopping-list.pdf?season=season-2026']);
  first.webContents.opened({ url: 'https://example.org/' });
  first.webContents.opened({ url: 'file:///etc/passwd' });
  expect(desktop.windows).toHaveLength(windows);
});
