/** One thing measured against a floor in the same run: the cheapest work that touches the same data. */
export type Bench = {
  readonly name: string;
  /** Made once, not measured. */
  readonly prepare: () => unknown | Promise<unknown>;
  readonly run: (prepared: never) => unknown | Promise<unknown>;
  /** The floor, over the same prepared data. */
  readonly floor: (prepared: never) => unknown | Promise<unknown>;
  /** Wanted at the most, in ms on a small two-core machine; printed beside, never a test. */
  readonly target_ms?: number;
  readonly rounds?: number;
};

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

async function timed(rounds: number, work: () => unknown): Promise<{ readonly median_ms: number; readonly p95_ms: number }> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const from = performance.now();
    await work();
    times.push(performance.now() - from);
  }
  return { median_ms: median(times), p95_ms: times.toSorted((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1] ?? 0 };
}

export async function runBench(bench: Bench): Promise<string> {
  const prepared = (await bench.prepare()) as never;
  const rounds = bench.rounds ?? 15;
  await bench.run(prepared);
  await bench.floor(prepared);
  const work = await timed(rounds, () => bench.run(prepared));
  const floor = await timed(rounds, () => bench.floor(prepared));
  const ratio = floor.median_ms > 0 ? (work.median_ms / floor.median_ms).toFixed(1) : 'no floor';
  const target =
    bench.target_ms === undefined ? '' : `  target ${bench.target_ms} ms${work.median_ms > bench.target_ms ? '  MISSED' : ''}`;
  return `${bench.name.padEnd(58)} ${work.median_ms.toFixed(2).padStart(9)} ms  p95 ${work.p95_ms.toFixed(2).padStart(9)}  ratio to floor ${ratio.padStart(8)}${target}`;
}
