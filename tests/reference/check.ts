/** `npm run check -- FILE...`: runs case files against the planner. Exit 1 on a failure, 2 on a file that cannot be read. */
import { readFileSync } from 'node:fs';
import { type ReferenceCase, runCase } from './compare.ts';
import { registry } from './registry.ts';

function readCases(file: string): readonly ReferenceCase[] {
  const parsed: unknown = JSON.parse(readFileSync(file, 'utf8'));
  const cases = Array.isArray(parsed) ? parsed : (parsed as { cases?: unknown }).cases;
  if (!Array.isArray(cases)) throw new Error('no list of cases in it');
  return cases as ReferenceCase[];
}

const files = process.argv.slice(2);
if (files.length === 0) {
  console.error('Name one or more case files: npm run check -- FILE...');
  process.exit(2);
}
const count = { passed: 0, failed: 0, skipped: 0 };
for (const file of files) {
  let cases: readonly ReferenceCase[];
  try {
    cases = readCases(file);
  } catch (error) {
    console.error(`${file}: cannot be read as a case file (${error instanceof Error ? error.message : String(error)}).`);
    process.exit(2);
  }
  for (const each of cases) {
    const outcome = runCase(each, registry);
    count[outcome.state] += 1;
    if (outcome.state === 'failed') {
      console.log(`FAILED ${each.id} (${each.fn})`);
      for (const line of outcome.differences) console.log(`  ${line}`);
      console.log(`  source: ${each.source}`);
    }
  }
}
console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
process.exit(count.failed > 0 ? 1 : 0);
