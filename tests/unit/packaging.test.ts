import { createHash } from 'node:crypto';
import { existsSync, globSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const folder = new URL('../../electron/packaging/', import.meta.url).pathname;
/** Where `npm run package` installs the packager, which is no dependency of the program. */
const packagers = new URL('../../dist/packager/', import.meta.url).pathname;
const icon = (name: string): Buffer => readFileSync(join(folder, 'icons', name));
const config = JSON.parse(readFileSync(join(folder, 'builder.json'), 'utf8')) as {
  readonly fileAssociations: readonly { readonly ext: string; readonly mimeType: string; readonly icon: string }[];
  readonly nsis: { readonly perMachine: boolean };
  readonly publish: null;
} & Readonly<Record<'linux' | 'mac' | 'win', { readonly icon: string; readonly files: readonly string[] }>>;

/** Width and height of a PNG (ISO/IEC 15948: signature, then the header chunk with both). */
function sidesOf(png: Buffer): readonly [number, number] {
  expect(png.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
  expect(png.subarray(12, 16).toString('latin1')).toBe('IHDR');
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}

describe('the icons', () => {
  test('are drawn from the SVGs as they stand', () => {
    const drawnFrom = JSON.parse(icon('drawn-from.json').toString()) as Readonly<Record<string, string>>;
    expect(Object.keys(drawnFrom)).toEqual(['program.svg', 'farm-file.svg']);
    for (const [name, sum] of Object.entries(drawnFrom))
      expect(createHash('sha256').update(icon(name)).digest('hex'), `${name}: run npm run icons`).toBe(sum);
  });
  test('of Linux are as large as their names say', () => {
    const names = globSync('*.png', { cwd: join(folder, 'icons', 'linux') });
    expect(names.length).toBe(9);
    for (const name of names) {
      const side_px = Number.parseInt(name, 10);
      expect(sidesOf(icon(join('linux', name))), name).toEqual([side_px, side_px]);
    }
  });
  test.each(['program.ico', 'farm-file.ico'])('%s holds the sizes its head names, each where it says, up to its end', (name) => {
    const file = icon(name);
    expect([file.readUInt16LE(0), file.readUInt16LE(2), file.readUInt16LE(4)]).toEqual([0, 1, 7]);
    const ends = Array.from({ length: 7 }, (_, index) => {
      const at = 6 + 16 * index;
      const start = file.readUInt32LE(at + 12);
      const [width, height] = sidesOf(file.subarray(start));
      expect([width % 256, height % 256]).toEqual([file.readUInt8(at), file.readUInt8(at + 1)]);
      return start + file.readUInt32LE(at + 8);
    });
    expect(ends.at(-1)).toBe(file.length);
  });
  test.each(['program.icns', 'farm-file.icns'])('%s is a chain of pictures to its end, the largest 1,024 px', (name) => {
    const file = icon(name);
    expect(file.subarray(0, 4).toString('latin1')).toBe('icns');
    expect(file.readUInt32BE(4)).toBe(file.length);
    const sides: number[] = [];
    let at = 8;
    while (at < file.length) {
      sides.push(sidesOf(file.subarray(at + 8))[0]);
      at += file.readUInt32BE(at + 4);
    }
    expect(at).toBe(file.length);
    expect(sides).toEqual([16, 32, 32, 64, 128, 256, 256, 512, 512, 1024]);
  });
});

describe('the packaging', () => {
  test('takes along the database engine of its own system alone', () => {
    const systems = { linux: 'linux', mac: 'darwin', win: 'win32' } as const;
    for (const [os, own] of Object.entries(systems) as ['linux', string][]) {
      const left = /\{(.+)\}/.exec(config[os].files[0] ?? '')?.[1]?.split(',') ?? [];
      expect([...left, own].toSorted()).toEqual(['darwin', 'linux', 'linuxmusl', 'win32']);
    }
  });
  test('names icons that are there, and gives farm files to the program under a type of their own', () => {
    for (const os of ['linux', 'mac', 'win'] as const) expect(existsSync(join(folder, config[os].icon)), os).toBe(true);
    expect(config.fileAssociations).toMatchObject([{ ext: 'bedwright', mimeType: 'application/x-bedwright-farm' }]);
    for (const ending of ['ico', 'icns'])
      expect(existsSync(join(folder, `${config.fileAssociations[0]?.icon}.${ending}`)), ending).toBe(true);
    // the packager registers file types on Windows only when installing for all users
    expect(config.nsis.perMachine).toBe(true);
  });
  test('publishes nowhere, so that no package looks for a newer one', () => {
    expect(config.publish).toBeNull();
  });
  test.skipIf(!existsSync(join(packagers, 'node_modules')))(
    'is as the packager’s own schema wants it (only where the packager is installed)',
    async () => {
      const packager = createRequire(join(packagers, 'package.json'));
      type Check = { readonly validateConfiguration: (config: unknown, log: unknown) => Promise<void> };
      const { validateConfiguration } = packager('app-builder-lib/out/util/config/config.js') as Check;
      const { DebugLogger } = packager('builder-util') as { readonly DebugLogger: new (on: boolean) => unknown };
      await validateConfiguration(structuredClone(config), new DebugLogger(false));
      await expect(validateConfiguration({ ...config, colour: 'green' }, new DebugLogger(false))).rejects.toThrow('colour');
    },
  );
});
