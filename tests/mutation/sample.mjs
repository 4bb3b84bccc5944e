// `npm run mutation -- --sample 600 --seed 1 [--under planner/water]`: the score from mutants drawn at random, every
// mutant as likely as any other, so that minutes tell what a whole run of days would, within the printed interval.
import { spawnSync } from 'node:child_process';
import { globSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { nameOf, textForPeople } from './plugins.mjs';

const { values: asked, positionals: passedOn } = parseArgs({
  options: {
    sample: { type: 'string' },
    seed: { type: 'string', default: '1' },
    under: { type: 'string', multiple: true, default: ['planner'] },
    concurrency: { type: 'string', default: '2' },
  },
  allowPositionals: true,
});
const wanted = Number(asked.sample);
const seed = Number(asked.seed);
if (!Number.isInteger(wanted) || wanted < 1 || !Number.isInteger(seed) || passedOn.length > 0) {
  console.error('npm run mutation -- --sample 600 --seed 1 [--under planner/water] [--concurrency 1]');
  process.exit(2);
}
const folder = import.meta.dirname;
const reports = resolve('reports');

/** A generator of shares 0..1 from a seed (Marsaglia, Xorshift RNGs, 2003), after a multiplicative mixing of the seed. */
function randomShares(from) {
  let state = Math.imul(from ^ 0x9e3779b9, 0x85ebca6b) | 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** `count` of `all` without repeats, each as likely: the first steps of a Fisher-Yates shuffle. */
function draw(all, count, share) {
  const rest = [...all];
  const taken = Math.min(count, rest.length);
  for (let at = 0; at < taken; at += 1) {
    const other = at + Math.floor(share() * (rest.length - at));
    [rest[at], rest[other]] = [rest[other], rest[at]];
  }
  return rest.slice(0, taken);
}

async function mutantsUnder(prefixes) {
  const names = prefixes.flatMap((prefix) => (prefix.endsWith('.ts') ? [prefix] : globSync(`${prefix}/**/*.ts`))).sort();
  if (names.length === 0) throw new Error(`no files under ${prefixes.join(', ')}`);
  const files = names.map((name) => ({ name: resolve(name), mutate: true, content: readFileSync(name, 'utf8') }));
  const quiet = { debug() {}, info() {}, warn: console.warn, isDebugEnabled: () => false };
  const options = { plugins: null, excludedMutations: [], ignorers: [textForPeople], noHeader: false };
  return (await new Instrumenter(quiet).instrument(files, options)).mutants.filter(({ status }) => status === undefined);
}

/** Columns and lines as the runner reads them on its command line: lines from 1, columns from 0. */
const rangeOf = ({ fileName, location: { start, end } }) =>
  `${nameOf({ fileName, location: { start, end } }).split(':')[0]}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`;

/** The 95 % interval of a share: Wilson, Probable inference, the law of succession, and statistical inference, 1927. */
function wilson(hits, of) {
  const z = 1.96;
  const share = hits / of;
  const middle = share + z ** 2 / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2));
  return [(middle - half) / (1 + z ** 2 / of), (middle + half) / (1 + z ** 2 / of)];
}

const all = await mutantsUnder(asked.under);
const drawn = draw(all, wanted, randomShares(seed));
console.log(`${all.length} mutants under ${asked.under.join(', ')}; ${drawn.length} drawn with seed ${seed}.`);

mkdirSync(reports, { recursive: true });
const sampleFile = join(reports, 'mutation-sample.json');
writeFileSync(sampleFile, JSON.stringify(drawn.map(nameOf)));
const configFile = join(reports, 'mutation-sample-config.json');
const base = JSON.parse(readFileSync(join(folder, 'stryker.config.json'), 'utf8'));
const reportFile = join(reports, 'mutation-sample-report.json');
writeFileSync(
  configFile,
  JSON.stringify({
    ...base,
    mutate: [...new Set(drawn.map(rangeOf))],
    checkers: ['only-sampled'],
    concurrency: Number(asked.concurrency),
    reporters: ['json'],
    jsonReporter: { fileName: reportFile },
    thresholds: { high: 90, low: 80, break: null },
  }),
);
const ran = spawnSync(process.execPath, [join(folder, 'node_modules/@stryker-mutator/core/bin/stryker.js'), 'run', configFile], {
  stdio: 'inherit',
  env: { ...process.env, BEDWRIGHT_MUTANT_SAMPLE: sampleFile },
});
if (ran.status !== 0) process.exit(ran.status ?? 1);

const { files } = JSON.parse(readFileSync(reportFile, 'utf8'));
const outcomes = Object.entries(files).flatMap(([file, { source, mutants }]) =>
  mutants.map((mutant) => ({ file, source, ...mutant })),
);
const isKilled = ({ status }) => status === 'Killed' || status === 'Timeout';
const counted = outcomes.filter((each) => isKilled(each) || each.status === 'Survived' || each.status === 'NoCoverage');
const kept = counted.filter((each) => !isKilled(each));

const folderOf = (file) => (/^planner\/[^/]+\//.test(file) ? file.split('/').slice(0, 2).join('/') : file);
const byFolder = Map.groupBy(counted, ({ file }) => folderOf(file));
const percent = (share) => (100 * share).toFixed(0).padStart(3);
const line = (name, list) => {
  const killed = list.filter(isKilled).length;
  const [low, high] = wilson(killed, list.length);
  return `${name.padEnd(24)} ${String(list.length).padStart(5)} ${percent(killed / list.length)} % (${percent(low)} to ${percent(high)} %)`;
};
console.log(`\n${'folder'.padEnd(24)} count score (95 % interval)`);
for (const [name, list] of [...byFolder].sort(([a], [b]) => a.localeCompare(b))) console.log(line(name, list));
if (counted.length > 0) console.log(line('all', counted));
console.log(`${drawn.length - counted.length} of the drawn are in data read once at loading (or no program), and don't count.`);

const textOf = ({ source, location: { start, end } }) => {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  return lines.join('\n').slice(start.column - 1);
};
const survivors = kept
  .sort((a, b) => a.file.localeCompare(b.file) || a.location.start.line - b.location.start.line)
  .map(
    (each) =>
      `${each.file}:${each.location.start.line}:${each.location.start.column} ${each.status} ${each.mutatorName}\n` +
      `- ${textOf(each).slice(0, 300)}\n+ ${each.replacement.slice(0, 300)}\n`,
  );
writeFileSync(join(reports, 'mutation-survivors.txt'), survivors.join('\n'));
console.log(`${kept.length} survivors are in reports/mutation-survivors.txt.`);
