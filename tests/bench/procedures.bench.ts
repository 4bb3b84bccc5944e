import { partsAhead } from '../../api/program/parts-ahead.ts';
import { soilTablesIn } from '../../api/soil/soil-tables.ts';
import { forgetDerived } from '../../db/file/derived.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { readingsOf } from '../builders/reading-inputs.ts';
import { BEDS, least, quantile, SIZES, type Times, timed } from './bench.ts';
import { changesOf } from './changes.ts';
import { exponentOf, type Figure, figureOf, lineOf } from './figure.ts';

const TARGET_P95_MS = 50;
const SHOWN = 8;
/** Rounds that are not counted: the program runs all day, its machine code is made in the first minutes. */
const WARM_UP = 5;

/** Worse than this is no longer about linear. */
const LINEAR = 1.25;

/** With nothing kept; first asked after the work ahead; after the daily change that it minds most; while nothing was changed. */
type Found = {
  readonly anew: Map<number, Times>;
  readonly ahead: Map<number, Times>;
  readonly changed: Map<number, Changed>;
  readonly again: Map<number, Times>;
};
const nothingFound = (): Found => ({ anew: new Map(), ahead: new Map(), changed: new Map(), again: new Map() });
type Changed = { readonly change: string; readonly times: Times };

/** The daily changes after which a reading is measured: those that meet most of what is kept. */
const DAILY = ['beds.setMany, one bed', 'plantings.move, one planting', 'harvest.add', 'labour.add'];

/** Worth measuring after each change: a reading that is quick with nothing kept is no slower after one. */
const isSlow = ({ p95_ms, core95_ms }: Times): boolean => least(p95_ms, core95_ms) > TARGET_P95_MS;

async function measure(t: TestProgram, beds: number, rounds: number, results: Map<string, Found>): Promise<void> {
  const changes = await changesOf(t);
  const daily = changes.filter(({ name }) => DAILY.includes(name));
  for (const { name, read } of readingsOf(t)) {
    const entry: Found = results.get(name) ?? nothingFound();
    results.set(name, entry);
    for (let round = 0; round < WARM_UP; round += 1) {
      forgetDerived(t.farm.db);
      await read();
    }
    const anew = await timed(rounds, read, () => forgetDerived(t.farm.db));
    entry.anew.set(beds, anew);
    if (beds === BEDS && isSlow(anew)) {
      entry.ahead.set(
        beds,
        await timed(AHEAD_ROUNDS, read, () => {
          forgetDerived(t.farm.db);
          for (const _ of partsOf(t)) {
            // each part is kept
          }
        }),
      );
      const after: Changed[] = [];
      for (const { name: change, run } of daily) after.push({ change, times: await timed(rounds, read, run) });
      const [worst] = after.toSorted(
        (a, b) => least(b.times.p95_ms, b.times.core95_ms) - least(a.times.p95_ms, a.times.core95_ms),
      );
      if (worst !== undefined) entry.changed.set(beds, worst);
    }
    entry.again.set(beds, await timed(Math.ceil(rounds / 2), read));
  }
  if (beds === BEDS) results.set(LONGEST_PART, { ...nothingFound(), anew: new Map([[beds, longestPart(t, rounds)]]) });
  for (const { name, run } of changes) {
    const entry: Found = results.get(name) ?? nothingFound();
    results.set(name, entry);
    entry.anew.set(beds, await timed(rounds, run));
  }
}

const AHEAD_ROUNDS = 8;
const LONGEST_PART = 'the longest part of the work ahead';

const partsOf = (t: TestProgram) =>
  partsAhead({ db: t.farm.db, today: t.program.now().slice(0, 10) as IsoDate }, soilTablesIn(t.program.places.resources));

/** A page that asks meanwhile waits for one part at the most. */
function longestPart(t: TestProgram, rounds: number): Times {
  const longest: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    forgetDerived(t.farm.db);
    const parts = partsOf(t);
    let most = 0;
    for (let done: boolean | undefined = false; done !== true; ) {
      const from = performance.now();
      done = parts.next().done;
      most = Math.max(most, performance.now() - from);
    }
    longest.push(most);
  }
  const [p50_ms, p95_ms] = [quantile(longest, 0.5), quantile(longest, 0.95)];
  return { p50_ms, p95_ms, core50_ms: p50_ms, core95_ms: p95_ms };
}

type Judged = Figure & {
  /** With nothing kept, p95. */
  readonly opened_ms: number;
  /** First asked after the work ahead, p95; null where it is quick with nothing kept. */
  readonly ahead_ms: number | null;
  /** While nothing was changed, median; null for changes. */
  readonly again_ms: number | null;
};

export async function figures(quick: boolean): Promise<readonly Figure[]> {
  const results = new Map<string, Found>();
  const sizes = quick ? SIZES.filter((beds) => beds <= BEDS) : SIZES;
  let floor_ms = 0;
  for (const beds of sizes) {
    const from = performance.now();
    const t = aProgram({ beds, years: 2, seed: 7 });
    console.log(`  farm of ${beds} beds made in ${((performance.now() - from) / 1000).toFixed(1)} s`);
    const scan = t.farm.sqlite.prepare('SELECT * FROM bed');
    if (beds === BEDS) floor_ms = (await timed(12, () => scan.all())).p50_ms;
    await measure(t, beds, quick ? 5 : beds > BEDS ? 6 : 20, results);
    await t.end();
  }
  const grown = (of: ReadonlyMap<number, Times>) =>
    exponentOf(
      [...of]
        .filter(([beds]) => beds >= BEDS || sizes.length < 3)
        .map(([beds, each]) => [beds, least(each.p50_ms, each.core50_ms)]),
    );
  const all = [...results].flatMap(([name, { anew, ahead, changed, again }]): readonly Judged[] => {
    const opened = anew.get(BEDS);
    if (opened === undefined) return [];
    const after = changed.get(BEDS);
    const own = after?.times ?? opened;
    return [
      {
        ...figureOf({
          topic: 'procedures',
          what: after === undefined ? name : `${name} after ${after.change}`,
          figure: own.p50_ms,
          p95: own.p95_ms,
          onCore_ms: own.core50_ms,
          floor: floor_ms,
          exponent: grown(anew),
          wanted: TARGET_P95_MS,
          judged: least(own.p95_ms, own.core95_ms),
        }),
        opened_ms: least(opened.p95_ms, opened.core95_ms),
        ahead_ms: ahead.get(BEDS) === undefined ? null : least(ahead.get(BEDS)?.p95_ms ?? 0, ahead.get(BEDS)?.core95_ms ?? 0),
        again_ms: again.get(BEDS)?.p50_ms ?? null,
      },
    ];
  });
  const sorted = all.toSorted((a, b) => b.judged - a.judged);
  console.log(
    '  each with nothing kept; what is then over the wanted time, after the daily change that it minds most. "Opened" is the p95 with nothing kept, "after work ahead" that of the first question once the program has worked ahead in the quiet after opening, "again" while nothing was changed. Growth is with nothing kept, from 1,000 to 5,000 beds.',
  );
  for (const each of sorted)
    console.log(
      `  ${lineOf(each)}  opened ${each.opened_ms.toFixed(1)} ms${each.ahead_ms === null ? '' : `  after work ahead ${each.ahead_ms.toFixed(1)} ms`}${each.again_ms === null ? '' : `  again ${each.again_ms.toFixed(1)} ms`}`,
    );
  const slow = all.filter((each) => each.judged > TARGET_P95_MS);
  const slowOpened = all.filter((each) => each.opened_ms > TARGET_P95_MS);
  const slowAhead = all.filter((each) => (each.ahead_ms ?? 0) > TARGET_P95_MS);
  const worse = all.filter((each) => (each.exponent ?? 0) > LINEAR && each.figure > 5);
  console.log(
    `  ${all.length} procedures; over ${TARGET_P95_MS} ms p95 with nothing kept: ${slowOpened.length}, after the work ahead: ${slowAhead.length}, after a change: ${slow.length}, again: ${all.filter((each) => (each.again_ms ?? 0) > TARGET_P95_MS).length}`,
  );
  console.log(
    `  growing faster than beds^${LINEAR}: ${worse.map((each) => `${each.what} (${each.exponent?.toFixed(2)})`).join(', ') || 'none'}`,
  );
  const middle = sorted[Math.floor(sorted.length / 2)];
  return [
    ...sorted.slice(0, SHOWN).map(({ again_ms, ahead_ms, opened_ms, ...each }) => ({
      ...each,
      what: `${each.what}; with nothing kept p95 ${opened_ms.toFixed(0)} ms${ahead_ms === null ? '' : `, after work ahead ${ahead_ms.toFixed(0)} ms`}${again_ms === null ? '' : `; again ${again_ms.toFixed(1)} ms`}`,
    })),
    ...(middle === undefined ? [] : [{ ...middle, what: `the middle one of ${all.length} procedures (${middle.what})` }]),
  ];
}
