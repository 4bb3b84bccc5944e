import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tryEngine } from '../../db/file/try-engine.ts';
import { bed } from '../../db/schema/beds.ts';
import { fillSampleFarm } from '../sample/fill-sample-farm.ts';
import { licencesIn } from './licences.ts';
import { localNow } from './places.ts';
import { createProgram, type Program, type ProgramPlaces } from './program.ts';

export type SelfTestLine = { readonly what: string; readonly fine: boolean; readonly detail: string };

/** Draws the first page of a running program where nobody sees it and answers its title; only a window can. */
export type DrawPage = (program: Program) => Promise<string>;

const JOB_LIMIT_MS = 20_000;
const LOOK_AGAIN_MS = 50;

/**
 * Tries what every start rests on, in a folder of its own: the engine in memory, the shipped data, the pages, making a farm, writing and taking
 * back a change, a backup, long work in its thread, a PDF, opening again. Says what is fine and what is not; leaves nothing behind.
 */
export async function selfTest(places: ProgramPlaces, drawPage?: DrawPage): Promise<readonly SelfTestLine[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bedwright-self-test-'));
  const lines: SelfTestLine[] = [];
  const program = createProgram(
    { ...places, data: folder },
    () => localNow(),
    () => undefined,
  );
  /** A step answers what it found, or throws. */
  const step = async (what: string, run: () => string | Promise<string>): Promise<void> => {
    try {
      lines.push({ what, fine: true, detail: await run() });
    } catch (error) {
      lines.push({ what, fine: false, detail: error instanceof Error ? error.message : String(error) });
    }
  };
  const path = join(folder, 'self-test.bedwright');
  const beds = () => program.farm(null).db.select().from(bed).all();
  await step('the database engine works in memory, through all its migrations', () => `SQLite ${tryEngine(places.migrations)}`);
  await step('the shipped data can be read', () => {
    const cautions = readJson<{ readonly cautions: readonly unknown[] }>(places.resources, 'cautions.json').cautions.length;
    const texts = Object.keys(readJson<object>(places.resources, 'texts', 'en.json')).length;
    const commands = readJson<readonly unknown[]>(places.resources, 'commands.json').length;
    return several({ cautions, texts, commands, licences: licencesIn(places.resources).length });
  });
  await step('the pages are there', () => {
    const page = readFileSync(join(places.pages, 'index.html'), 'utf8');
    const files = [...page.matchAll(/(?:src|href)="\/(assets\/[^"]+)"/g)].map(([, file]) => file ?? '');
    for (const file of files) if (!existsSync(join(places.pages, file))) throw new Error(`${file} is missing.`);
    return several({ 'files of the first page': files.length });
  });
  await step('a farm can be made from the shipped libraries', () => {
    program.create(path, (farm) => fillSampleFarm(farm, { resources: places.resources, beds: 6, years: 0, seed: 1 }));
    return several({ beds: beds().length });
  });
  await step('a change is kept and can be taken back', () => {
    const farm = program.farm(null);
    const before = JSON.stringify(beds());
    farm.change('self-test', () => farm.db.update(bed).set({ x_m: -1 }).run());
    if (JSON.stringify(beds()) === before) throw new Error('The change was not kept.');
    farm.undo();
    if (JSON.stringify(beds()) !== before) throw new Error('The change was not taken back.');
    farm.redo();
    return '';
  });
  await step('a backup can be written', () => {
    program.farm(null).backup('by-hand');
    return '';
  });
  await step('long work runs in a thread of its own', () => workInThread(program));
  await step('a document can be made for the printer', () => oneDocument(places.fonts));
  if (drawPage !== undefined) await step('a page is drawn in a window', () => drawPage(program));
  await program.closeAll();
  await step('the farm opens again, whole, with its last change', () => {
    program.open(path);
    const verdict = program.farm(null).sqlite.pragma('integrity_check', { simple: true });
    if (verdict !== 'ok') throw new Error(String(verdict));
    if (beds().some(({ x_m }) => x_m !== -1)) throw new Error('The change before closing is not in the file.');
    return several({ beds: beds().length });
  });
  await program.closeAll();
  rmSync(folder, { recursive: true, force: true });
  return lines;
}

/** The result as lines to print; the last says it all. */
export function printedResult(lines: readonly SelfTestLine[]): string {
  const broken = lines.filter(({ fine }) => !fine).length;
  return [
    ...lines.map(({ what, fine, detail }) => `${fine ? 'fine' : 'NOT FINE'}: ${what}${detail === '' ? '' : ` (${detail})`}`),
    broken === 0 ? `Self-test passed: ${lines.length} of ${lines.length}.` : `Self-test failed: ${broken} of ${lines.length}.`,
  ].join('\n');
}

/** The exit code for scripts: 0 when all is fine. */
export const exitCodeOf = (lines: readonly SelfTestLine[]): number => (lines.every(({ fine }) => fine) ? 0 : 1);

function readJson<Shape>(folder: string, ...names: readonly string[]): Shape {
  return JSON.parse(readFileSync(join(folder, ...names), 'utf8')) as Shape;
}

/** Counts in words; nothing of a kind is a fault. */
function several(counts: Readonly<Record<string, number>>): string {
  for (const [name, count] of Object.entries(counts)) if (count === 0) throw new Error(`There are no ${name}.`);
  return Object.entries(counts)
    .map(([name, count]) => `${count} ${name}`)
    .join(', ');
}

async function workInThread({ jobs }: Program): Promise<string> {
  const jobId = jobs.start('self-test', null);
  for (let waited_ms = 0; jobs.get(jobId).state === 'running'; waited_ms += LOOK_AGAIN_MS) {
    if (waited_ms > JOB_LIMIT_MS) throw new Error('It does not answer.');
    await new Promise((later) => setTimeout(later, LOOK_AGAIN_MS));
  }
  const { state, message, result } = jobs.get(jobId);
  if (state !== 'done') throw new Error(message);
  return `solved: ${String(result)}`;
}

async function oneDocument(fonts: string): Promise<string> {
  // an engine that made a document before holds its fonts already
  const files = readdirSync(fonts).length;
  const { pdfOf } = await import('../report/pdf.ts');
  const body = await pdfOf({ title: 'Self-test', made: localNow(), content: [{ text: 'Self-test' }] }, fonts);
  if (Buffer.from(body.subarray(0, 5)).toString('latin1') !== '%PDF-') throw new Error('What was made is no PDF.');
  return several({ 'files of fonts': files, bytes: body.length });
}
