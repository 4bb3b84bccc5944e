/** `npm run report -- [--farm FILE] [--season NAME] [--out FOLDER] [--language CODE]`: the season report as HTML and CSV. */
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { FarmFileError } from '../../db/file/errors.ts';
import { makeFolder } from '../../db/file/make-folder.ts';
import { InputError, refuse } from '../../planner/errors.ts';
import { Refusal } from '../errors.ts';
import { loadMilpSolver } from '../jobs/milp/highs.ts';
import { ctxOf } from '../procedure.ts';
import { placesOf, startProgram } from '../program/start-program.ts';
import { fillSampleFarm } from '../sample/fill-sample-farm.ts';
import { gatherReport, seasonForReport, writeReport } from './make-report.ts';

/** The search for the cheapest list ends here at the latest; the best list so far is then shown with its gap. */
const SEARCH_LIMIT_MS = 4000;
const log = (line: string) => console.error(line);
const started = performance.now();
const scratch = mkdtempSync(join(tmpdir(), 'bedwright-report-'));
const places = { ...placesOf(import.meta.url, process.env), data: scratch };
const program = startProgram(places, log);

function writableFolder(path: string): string {
  const folder = resolve(path);
  if (existsSync(folder) && !statSync(folder).isDirectory())
    refuse('out', 'not-a-folder', `--out ${folder} is a file, not a folder.`);
  try {
    makeFolder(folder);
    writeFileSync(join(folder, '.writable'), '');
    rmSync(join(folder, '.writable'));
  } catch (error) {
    refuse(
      'out',
      'read-only',
      `--out ${folder} cannot be written (${error instanceof Error ? error.message : String(error)}). Nothing was written.`,
    );
  }
  return folder;
}

let code = 0;
try {
  const { values } = parseArgs({
    options: {
      farm: { type: 'string' },
      season: { type: 'string' },
      out: { type: 'string' },
      language: { type: 'string', default: 'en' },
    },
  });
  if (values.farm !== undefined) program.open(values.farm);
  else
    program.create(join(scratch, 'sample.bedwright'), (farm) =>
      fillSampleFarm(farm, { resources: places.resources, beds: 96, years: 2, seed: 1 }),
    );
  const ctx = ctxOf({ program, farmKey: null, log });
  const data = gatherReport(ctx, seasonForReport(ctx.farm, values.season), values.language);
  const until = performance.now() + SEARCH_LIMIT_MS;
  const files = writeReport(data, await loadMilpSolver(), { shouldStop: () => performance.now() > until });
  const folder = writableFolder(values.out ?? 'season-report');
  for (const file of files) writeFileSync(join(folder, file.name), file.text);
  console.log(
    `Wrote ${files.length} files to ${folder} in ${((performance.now() - started) / 1000).toFixed(1)} s: ${files.map((file) => file.name).join(', ')}.`,
  );
} catch (error) {
  const known =
    error instanceof InputError ||
    error instanceof FarmFileError ||
    error instanceof Refusal ||
    (error instanceof TypeError && 'code' in error);
  if (!known) throw error;
  console.error(error.message);
  code = 2;
} finally {
  await program.closeAll();
  rmSync(scratch, { recursive: true, force: true });
}
process.exit(code);
