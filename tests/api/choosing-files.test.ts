import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createApp } from '../../api/http/app.ts';
import { callerFactory, type DoorContext } from '../../api/procedure.ts';
import type { FileWish } from '../../api/program/desktop.ts';
import { createProgram } from '../../api/program/program.ts';
import { router } from '../../api/router.ts';
import { aProgram, FIXED_NOW, placesIn, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
beforeEach(() => {
  t = aProgram({ beds: 6, years: 0 });
});
afterEach(() => t.end());

const namesOf = (list: readonly { readonly name: string }[]) => list.map(({ name }) => name);

describe('the folders that the browser host shows', () => {
  test('hold folders and farm files, and tell nothing of any other file', async () => {
    mkdirSync(join(t.folder, 'Field 10'));
    mkdirSync(join(t.folder, 'Field 9'));
    mkdirSync(join(t.folder, '.hidden'));
    writeFileSync(join(t.folder, 'letter.txt'), 'private');
    mkdirSync(join(t.folder, 'trap.bedwright'));
    symlinkSync(join(t.folder, 'gone'), join(t.folder, 'broken.bedwright'));
    const view = await t.api.files.folder({ folder: t.folder });
    expect(namesOf(view.folders)).toEqual(['Field 9', 'Field 10', 'trap.bedwright']);
    expect(namesOf(view.farms)).toEqual(['sample.bedwright']);
    expect(JSON.stringify(view)).not.toContain('letter');
    expect(view.trail.at(-1)?.path).toBe(t.folder);
    expect(view.trail[0]?.path).toBe('/');
  });
  test('begin in the program’s own folder, follow ~, and say plainly what cannot be shown', async () => {
    expect((await t.api.files.folder({ folder: '' })).folder).toBe(t.folder);
    expect((await t.api.files.folder({ folder: '~' })).folder).toBe(homedir());
    await expect(t.api.files.folder({ folder: join(t.folder, 'nowhere') })).rejects.toThrow(/There is no folder/);
    await expect(t.api.files.folder({ folder: t.farm.path })).rejects.toThrow(/is a file, not a folder/);
    await expect(t.api.files.folder({ folder: 'a\0b' })).rejects.toThrow(/cannot hold this character/);
  });
});

describe('the system’s dialog', () => {
  test('is offered by the desktop window only', async () => {
    expect((await t.api.files.state()).chooser).toBe('page');
    await expect(t.api.files.choose({ kind: 'open', title: 'Open', at: '' })).rejects.toThrow(/Only the desktop window/);
  });
  test('begins where the page says and answers what was chosen', async () => {
    const wishes: FileWish[] = [];
    const desktop = {
      chooseFile: async (wish: FileWish) => {
        wishes.push(wish);
        return wish.kind === 'open' ? join(t.folder, 'chosen.bedwright') : null;
      },
      followLook: () => undefined,
      recentChanged: () => undefined,
    };
    const program = createProgram(
      placesIn(t.folder),
      () => FIXED_NOW,
      () => undefined,
      desktop,
    );
    const door: DoorContext = { program, farmKey: null, log: () => undefined };
    const api = callerFactory(router)(door) as TestProgram['api'];
    expect((await api.files.state()).chooser).toBe('system');
    expect(await api.files.choose({ kind: 'open', title: 'Open', at: '' })).toEqual({ path: join(t.folder, 'chosen.bedwright') });
    expect(await api.files.choose({ kind: 'save', title: 'Save', at: 'Copy' })).toEqual({ path: null });
    expect(wishes.map(({ at }) => at)).toEqual([t.folder, join(t.folder, 'Copy.bedwright')]);
    await program.closeAll();
  });
});

describe('a farm file dropped on the window', () => {
  const drop = (name: string, body: BodyInit) =>
    createApp({ program: t.program, pages: t.folder }).fetch(
      new Request(`http://program/farm-file?name=${encodeURIComponent(name)}`, { method: 'POST', body }),
    );
  const copyOfFarm = (name: string): Buffer => {
    const path = join(t.folder, name);
    t.farm.saveCopy(path);
    const bytes = readFileSync(path);
    rmSync(path);
    return bytes;
  };

  test('is opened as a copy of its own, beside a file of the same name', async () => {
    const bytes = new Uint8Array(copyOfFarm('else.bedwright'));
    const first = (await (await drop('sample.bedwright', bytes)).json()) as { path: string; key: string; copied: boolean };
    expect(first).toMatchObject({ path: join(t.folder, 'sample 2.bedwright'), copied: true });
    expect((await t.api.files.state()).open.map(({ path }) => path)).toContain(first.path);
  });
  test('is opened where it lies when the program knows the very file', async () => {
    const path = join(t.folder, 'known.bedwright');
    t.farm.saveCopy(path);
    const said = await (await drop('known.bedwright', new Uint8Array(readFileSync(path)))).json();
    expect(said).toMatchObject({ path, copied: false });
  });
  test('is refused when it is cut short, no farm, or named to lie elsewhere; nothing is left behind', async () => {
    const bytes = copyOfFarm('cut.bedwright');
    const before = namesOf((await t.api.files.folder({ folder: t.folder })).farms);
    const cut = await drop('cut.bedwright', new Uint8Array(bytes.subarray(0, 30_000)));
    expect(cut.status).toBe(400);
    expect(await cut.text()).toMatch(/^cut\.bedwright is (cut short|damaged)/);
    expect(await (await drop('letter.bedwright', 'Dear grower')).text()).toContain('letter.bedwright is not a farm file');
    for (const name of ['../up.bedwright', '/etc/x.bedwright', 'a\\b.bedwright', 'letter.txt', ''])
      expect((await drop(name, new Uint8Array(bytes))).status, name).toBe(400);
    expect(namesOf((await t.api.files.folder({ folder: t.folder })).farms)).toEqual(before);
  });
});
