/** `npm run bench [-- --quick] [-- NAME...]`: every `*.bench.ts` here, or those whose name holds one of the words, and a table of it all. */
import { fork } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { type Figure, tableOf, verdictOf } from './figure.ts';

const words = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const options = process.argv.slice(2).filter((word) => word.startsWith('--'));
const folder = new URL('./', import.meta.url);
/** The engine as the launcher starts the program with it. */
const hostFlags = JSON.parse(readFileSync(new URL('../../tools/host-flags.json', import.meta.url), 'utf8')) as string[];
const topics = readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .map((name) => name.replace('.bench.ts', ''))
  .filter((name) => words.length === 0 || words.some((word) => name.includes(word)))
  .sort();

function figuresOf(topic: string): Promise<readonly Figure[]> {
  const child = fork(new URL('./topic.ts', import.meta.url), [topic, ...options], { stdio: 'inherit', execArgv: hostFlags });
  return new Promise((resolve, reject) => {
    let figures: readonly Figure[] = [];
    child.on('message', (said) => {
      figures = said as readonly Figure[];
    });
    child.on('exit', (code) => (code === 0 ? resolve(figures) : reject(new Error(`${topic} ended with ${code}.`))));
  });
}

const started = performance.now();
const load = () => loadavg()[0]?.toFixed(1);
const loads = [load()];
const all: Figure[] = [];
const broken: string[] = [];
for (const topic of topics) {
  console.log(`\n${topic}`);
  const from = performance.now();
  try {
    all.push(...(await figuresOf(topic)));
  } catch (error) {
    console.error(`  ${String(error)}`);
    broken.push(topic);
  }
  loads.push(load());
  console.log(`  (${((performance.now() - from) / 1000).toFixed(0)} s)`);
}
const missed = all.filter((each) => verdictOf(each) === 'MISSED');
console.log(`\n${tableOf(all)}`);
console.log(
  `\n${all.length} figures in ${((performance.now() - started) / 1000).toFixed(0)} s on ${availableParallelism()} cores, load ${loads.join(' ')}; ${missed.length} of ${all.filter((each) => each.wanted !== null).length} wanted were missed. Times are medians; "on the core" is the processor time of the process; the smaller of the two is held against what is wanted.`,
);
if (broken.length > 0) {
  console.error(`Not measured: ${broken.join(', ')}.`);
  process.exitCode = 1;
}
