import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { FarmFileError } from '../../db/file/errors.ts';
import type { Log } from '../explain-error.ts';
import { fillSampleFarm } from '../sample/fill-sample-farm.ts';
import type { Desktop } from './desktop.ts';
import { faultReports, markRunning } from './fault-reports.ts';
import { clockOf, dataFolder } from './places.ts';
import { createProgram, type Program, type ProgramPlaces } from './program.ts';

/** Finds the program's folder from an entry's own address, bundled (`dist/main/`) or not. */
function rootOf(entry: string): string {
  let folder = dirname(fileURLToPath(entry));
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('The program’s folder has no package.json above it.');
    folder = above;
  }
  return folder;
}

/** The folder of the fonts that come with the maker of documents, wherever the installer put it. */
export function fontsFrom(entry: string): string {
  return join(dirname(createRequire(entry).resolve('pdfmake/package.json')), 'fonts', 'Roboto');
}

function versionOf(root: string): string {
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { readonly version: string };
  return version;
}

/** Where everything lies, told from the address of the entry module. In a packaged program the worker stands outside the archive. */
export function placesOf(entry: string, env: NodeJS.ProcessEnv): ProgramPlaces {
  const root = rootOf(entry);
  const bundled = extname(fileURLToPath(entry)) === '.js';
  const worker = bundled ? join(dirname(fileURLToPath(entry)), 'jobs.worker.js') : join(root, 'api', 'jobs', 'jobs.worker.ts');
  return {
    version: versionOf(root),
    migrations: join(root, 'db', 'migrations'),
    resources: join(root, 'resources'),
    pages: join(root, 'dist', 'renderer'),
    worker: pathToFileURL(worker.replace('app.asar', 'app.asar.unpacked')),
    fonts: fontsFrom(entry),
    data: dataFolder(env, process.platform),
  };
}

export const SAMPLE_FILE = 'Saltgrass Lane (invented sample).bedwright';

/** Opens the farm asked for, else the last one used, else makes and opens the invented sample farm. */
export function openFirstFarm(program: Program, asked: string | undefined): void {
  if (asked !== undefined) {
    program.open(asked);
    return;
  }
  for (const path of program.recent.list()) {
    if (!existsSync(path)) continue;
    try {
      program.open(path);
      return;
    } catch (error) {
      if (!(error instanceof FarmFileError)) throw error;
      program.log(error.message);
    }
  }
  const sample = join(program.places.data, SAMPLE_FILE);
  if (existsSync(sample)) program.open(sample);
  else
    program.create(sample, (farm) => fillSampleFarm(farm, { resources: program.places.resources, beds: 96, years: 2, seed: 1 }));
}

/** The running program with the mark that it runs; where an earlier run left its own behind, that is reported. */
export function startProgram(places: ProgramPlaces, log: Log, desktop: Desktop | null = null): Program {
  const clock = clockOf(process.env);
  const markEnded = markRunning(places.data, faultReports(places.data, places.version, clock, log), log);
  process.once('exit', markEnded);
  return createProgram(places, clock, log, desktop, markEnded);
}
