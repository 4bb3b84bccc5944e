/** One topic in a process of its own, started by `run.ts`, so that no topic's memory weighs on another's times. */
import { type Bench, runBench } from './bench.ts';
import { type Figure, lineOf } from './figure.ts';

const [topic = '', ...words] = process.argv.slice(2);
const quick = words.includes('--quick');

type Module = { readonly benches: readonly Bench[] } | { readonly figures: (quick: boolean) => Promise<readonly Figure[]> };
const module = (await import(new URL(`./${topic}.bench.ts`, import.meta.url).href)) as Module;
const figures: Figure[] = [];
if ('benches' in module) {
  for (const bench of module.benches) {
    const figure = await runBench(topic, bench, quick);
    console.log(`  ${lineOf(figure)}`);
    figures.push(figure);
  }
} else figures.push(...(await module.figures(quick)));
process.send?.(figures);
