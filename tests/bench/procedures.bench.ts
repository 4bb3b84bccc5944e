import { forgetDerived } from '../../db/file/derived.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { readingsOf } from '../builders/reading-inputs.ts';
import { BEDS, least, SIZES, type Times, timed } from './bench.ts';
import { changesOf } from './changes.ts';
import { exponentOf, type Figure, figureOf, lineOf } from './figure.ts';

const TARGET_P95_MS = 50;
const SHOWN = 8;
/** Rounds that are not counted: the program runs all day, its machine code is made in the first minutes. */
const WARM_UP = 5;

/** Worse than this is no longer about linear. */
const LINEAR = 1.25;

type Found = { readonly anew: Map<number, Times>; readonly again: Map<number, Times> };

/** After a change nothing is kept of the farm's rows, so each round is measured both ways. */
async function measure(t: TestProgram, beds: number, rounds: number, results: Map<string, Found>): Promise<void> {
  for (const { name, read } of readingsOf(t)) {
    const entry = results.get(name) ?? { anew: new Map(), again: new Map() };
    results.set(name, entry);
    for (let round = 0; round < WARM_UP; round += 1) {
      forgetDerived(t.farm.db);
      await read();
    }
    entry.anew.set(beds, await timed(rounds, read, () => forgetDerived(t.farm.db)));
    entry.again.set(beds, await timed(Math.ceil(rounds / 2), read));
  }
  for (const { name, run } of await changesOf(t)) {
    const entry = results.get(name) ?? { anew: new Map(), again: new Map() };
    results.set(name, entry);
    entry.anew.set(beds, await timed(rounds, run));
  }
}

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
  const all = [...results].flatMap(([name, { anew, again }]): readonly (Figure & { readonly again_ms: number | null })[] => {
    const own = anew.get(BEDS);
    if (own === undefined) return [];
    return [
      {
        ...figureOf({
          topic: 'procedures',
          what: name,
          figure: own.p50_ms,
          p95: own.p95_ms,
          onCore_ms: own.core50_ms,
          floor: floor_ms,
          exponent: grown(anew),
          wanted: TARGET_P95_MS,
          judged: least(own.p95_ms, own.core95_ms),
        }),
        again_ms: again.get(BEDS)?.p50_ms ?? null,
      },
    ];
  });
  const sorted = all.toSorted((a, b) => b.judged - a.judged);
  console.log('  each after a change, with nothing kept; "again" while nothing was changed. Growth is from 1,000 to 5,000 beds.');
  for (const each of sorted)
    console.log(`  ${lineOf(each)}${each.again_ms === null ? '' : `  again ${each.again_ms.toFixed(1)} ms`}`);
  const slow = all.filter((each) => each.judged > TARGET_P95_MS);
  const worse = all.filter((each) => (each.exponent ?? 0) > LINEAR && each.figure > 5);
  console.log(
    `  ${all.length} procedures; over ${TARGET_P95_MS} ms p95 after a change: ${slow.length}, again: ${all.filter((each) => (each.again_ms ?? 0) > TARGET_P95_MS).length}`,
  );
  console.log(
    `  growing faster than beds^${LINEAR}: ${worse.map((each) => `${each.what} (${each.exponent?.toFixed(2)})`).join(', ') || 'none'}`,
  );
  const middle = sorted[Math.floor(sorted.length / 2)];
  return [
    ...sorted.slice(0, SHOWN).map(({ again_ms, ...each }) => ({
      ...each,
      what: `${each.what}, after a change${again_ms === null ? '' : `; again ${again_ms.toFixed(1)} ms`}`,
    })),
    ...(middle === undefined ? [] : [{ ...middle, what: `the middle one of ${all.length} procedures (${middle.what})` }]),
  ];
}
