import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { callerFactory, type DoorContext } from '../../api/procedure.ts';
import { createProgram, type Program, type ProgramPlaces } from '../../api/program/program.ts';
import { fontsFrom } from '../../api/program/start-program.ts';
import { router } from '../../api/router.ts';
import { fillSampleFarm } from '../../api/sample/fill-sample-farm.ts';
import type { FarmFile } from '../../db/file/open-farm.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
export const FIXED_NOW = '2026-11-25T09:00:00';
export const resources = join(root, 'resources');
export const migrations = join(root, 'db', 'migrations');

export const placesIn = (data: string): ProgramPlaces => ({
  version: '0.0.0',
  migrations,
  resources,
  pages: join(root, 'dist', 'renderer'),
  worker: pathToFileURL(join(root, 'api', 'jobs', 'jobs.worker.ts')),
  fonts: fontsFrom(import.meta.url),
  data,
});

export type TestProgram = {
  readonly program: Program;
  readonly farm: FarmFile;
  readonly folder: string;
  readonly logged: string[];
  readonly door: DoorContext;
  /** Calls the real procedures against the real file. */
  readonly api: ReturnType<ReturnType<typeof callerFactory<(typeof router)['_def']['record']>>>;
  readonly end: () => Promise<void>;
};

export type SampleSize = { readonly beds?: number; readonly years?: number; readonly seed?: number };

/** A running program on an invented farm in a folder of its own; `end()` closes and removes it. The clock stands at {@link FIXED_NOW}. */
export function aProgram(size: SampleSize = {}, now: () => string = () => FIXED_NOW): TestProgram {
  const folder = mkdtempSync(join(tmpdir(), 'bedwright-'));
  const logged: string[] = [];
  const program = createProgram(placesIn(folder), now, (line) => logged.push(line));
  program.create(join(folder, 'sample.bedwright'), (file) =>
    fillSampleFarm(file, { resources, beds: size.beds ?? 96, years: size.years ?? 2, seed: size.seed ?? 1 }),
  );
  const door: DoorContext = { program, farmKey: null, log: (line) => logged.push(line) };
  return {
    program,
    farm: program.farm(null),
    folder,
    logged,
    door,
    api: callerFactory(router)(door) as TestProgram['api'],
    end: async () => {
      await program.closeAll();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
