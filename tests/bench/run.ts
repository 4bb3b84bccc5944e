/** `npm run bench [-- NAME...]`: every `*.bench.ts` here, or those whose name holds one of the words. */
import { readdirSync } from 'node:fs';
import { type Bench, runBench } from './bench.ts';

const words = process.argv.slice(2);
const folder = new URL('./', import.meta.url);
for (const file of readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .sort()) {
  if (words.length > 0 && !words.some((word) => file.includes(word))) continue;
  const { benches } = (await import(new URL(file, folder).href)) as { readonly benches: readonly Bench[] };
  console.log(`\n${file.replace('.bench.ts', '')}`);
  for (const bench of benches) console.log(`  ${await runBench(bench)}`);
}
