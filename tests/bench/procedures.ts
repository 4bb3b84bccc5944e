/** `npm run bench:procedures [-- SIZE...]`: every reading procedure on invented farms, beside a bare scan of the beds, with its growth. */
import type { z } from 'zod';
import { callerFactory } from '../../api/procedure.ts';
import { router } from '../../api/router.ts';
import { aProgram } from '../builders/a-farm.ts';

type AnyProcedure = { readonly _def: { readonly type: 'query' | 'mutation'; readonly inputs: readonly z.ZodType[] } };
type AnyCaller = Readonly<Record<string, Readonly<Record<string, (input: unknown) => Promise<unknown>>>>>;

const ROUNDS = 12;
const TARGET_P95_MS = 50;
const sizes = process.argv
  .slice(2)
  .map(Number)
  .filter((n) => n > 0);
const farms = sizes.length > 0 ? sizes : [100, 1000, 5000];

const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? 0;

async function timesOf(run: () => unknown): Promise<readonly number[]> {
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const from = performance.now();
    await run();
    times.push(performance.now() - from);
  }
  return times;
}

const results = new Map<string, Map<number, { p50: number; p95: number; ratio: number }>>();
for (const beds of farms) {
  const started = performance.now();
  const t = aProgram({ beds, years: 2, seed: 7 });
  console.log(
    `\nfarm of ${beds} beds made in ${((performance.now() - started) / 1000).toFixed(1)} s, memory ${Math.round(process.memoryUsage().rss / 1e6)} MB`,
  );
  const idOf = (table: string) => t.farm.sqlite.prepare<[], string>(`SELECT id FROM ${table} LIMIT 1`).pluck().get() ?? '';
  const season = 'season-2027';
  const tries = [
    undefined,
    {},
    { seasonId: season },
    { seasonId: season, year: 2015 },
    { bedId: idOf('bed') },
    { plantingId: idOf('planting') },
    { lineId: idOf('water_line') },
    { cropId: idOf('crop') },
    { materialId: idOf('material') },
    { seasonId: season, bedId: idOf('bed') },
  ];
  const caller = callerFactory(router)(t.door) as unknown as AnyCaller;
  const scan = t.farm.sqlite.prepare('SELECT * FROM bed');
  const floor = quantile(await timesOf(() => scan.all()), 0.5);
  for (const [name, procedure] of Object.entries(router._def.procedures as unknown as Record<string, AnyProcedure>)) {
    if (procedure._def.type !== 'query') continue;
    const [group = '', leaf = ''] = name.split('.');
    const call = caller[group]?.[leaf];
    if (call === undefined) continue;
    const input = tries.find((each) => procedure._def.inputs[0]?.safeParse(each).success === true);
    if (input === undefined && procedure._def.inputs[0]?.safeParse(undefined).success !== true) continue;
    const works = await Promise.resolve(call(input)).then(
      () => true,
      () => false,
    );
    if (!works) continue;
    const times = await timesOf(() => call(input));
    const entry = results.get(name) ?? new Map();
    entry.set(beds, { p50: quantile(times, 0.5), p95: quantile(times, 0.95), ratio: quantile(times, 0.5) / floor });
    results.set(name, entry);
  }
  await t.end();
}

const first = farms[0] ?? 1;
const last = farms.at(-1) ?? 1;
console.log(
  `\n${'procedure'.padEnd(34)}${farms.map((n) => `p50@${n}`.padStart(11) + `p95@${n}`.padStart(11)).join('')}   ratio to a scan   growth`,
);
for (const [name, bySize] of [...results].sort((a, b) => (b[1].get(last)?.p95 ?? 0) - (a[1].get(last)?.p95 ?? 0))) {
  const cells = farms
    .map(
      (n) =>
        `${(bySize.get(n)?.p50 ?? Number.NaN).toFixed(1).padStart(11)}${(bySize.get(n)?.p95 ?? Number.NaN).toFixed(1).padStart(11)}`,
    )
    .join('');
  const at1000 = bySize.get(1000);
  const growth =
    farms.length > 1
      ? Math.log((bySize.get(last)?.p50 ?? 1) / (bySize.get(first)?.p50 ?? 1)) / Math.log(last / first)
      : Number.NaN;
  console.log(
    `${name.padEnd(34)}${cells}   ${(at1000?.ratio ?? Number.NaN).toFixed(1).padStart(15)}   beds^${growth.toFixed(2)}${at1000 !== undefined && at1000.p95 > TARGET_P95_MS ? '  MISSED 50 ms' : ''}`,
  );
}
