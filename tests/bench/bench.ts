import { exponentOf, type Figure, figureOf } from './figure.ts';

/** One thing measured against a floor in the same run: the cheapest work that touches the same data. */
export type Bench = {
  readonly name: string;
  /** Made once for each size, not measured. */
  readonly prepare: (beds: number) => unknown | Promise<unknown>;
  readonly run: (prepared: never) => unknown | Promise<unknown>;
  /** The floor, over the same prepared data. */
  readonly floor: (prepared: never) => unknown | Promise<unknown>;
  /** After the last round of a size. */
  readonly end?: (prepared: never) => unknown | Promise<unknown>;
  /** Wanted at the most, in ms on a small two-core machine; printed beside, never a test. */
  readonly target_ms?: number;
  readonly rounds?: number;
  /** Sizes at which it is run, to fit how it grows; the figure is that of {@link BEDS}. */
  readonly sizes?: readonly number[];
};

export const BEDS = 1000;
export const SIZES: readonly number[] = [100, 1000, 5000];

export type Times = { readonly p50_ms: number; readonly p95_ms: number; readonly core50_ms: number; readonly core95_ms: number };

/** By nearest rank: the least value that such a share of them does not pass. Of twenty rounds p95 is the second longest. */
export const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.max(0, Math.ceil(values.length * share) - 1)] ?? 0;

const onCore_ms = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Rounds of a piece of work by the clock and by the time on a core; what comes before each round is not counted. */
export async function timed(rounds: number, work: () => unknown, before: () => unknown = () => undefined): Promise<Times> {
  const [times, cores]: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round += 1) {
    await before();
    const [from, core] = [performance.now(), onCore_ms()];
    await work();
    times.push(performance.now() - from);
    cores.push(onCore_ms() - core);
  }
  return {
    p50_ms: quantile(times, 0.5),
    p95_ms: quantile(times, 0.95),
    core50_ms: quantile(cores, 0.5),
    core95_ms: quantile(cores, 0.95),
  };
}

/** What is held against what is wanted: the clock's time, or the core's where other work made the process wait. */
export const least = (clock_ms: number, core_ms: number): number => Math.min(clock_ms, core_ms);

export async function runBench(topic: string, bench: Bench, quick: boolean): Promise<Figure> {
  const rounds = quick ? Math.min(5, bench.rounds ?? 5) : (bench.rounds ?? 15);
  const sizes = quick ? (bench.sizes ?? [BEDS]).filter((beds) => beds <= BEDS) : (bench.sizes ?? [BEDS]);
  const found = new Map<number, { work: Times; floor: Times }>();
  for (const beds of sizes) {
    const prepared = (await bench.prepare(beds)) as never;
    await bench.run(prepared);
    await bench.floor(prepared);
    found.set(beds, {
      work: await timed(rounds, () => bench.run(prepared)),
      floor: await timed(rounds, () => bench.floor(prepared)),
    });
    await bench.end?.(prepared);
  }
  const own = found.get(BEDS) ?? [...found.values()][0];
  if (own === undefined) throw new Error(`${bench.name} was run at no size.`);
  const { work, floor } = own;
  return figureOf({
    topic,
    what: bench.name,
    figure: work.p50_ms,
    p95: work.p95_ms,
    onCore_ms: work.core50_ms,
    floor: floor.p50_ms,
    exponent: exponentOf([...found].map(([beds, { work: of }]) => [beds, least(of.p50_ms, of.core50_ms)])),
    wanted: bench.target_ms ?? null,
    judged: least(work.p50_ms, work.core50_ms),
  });
}
