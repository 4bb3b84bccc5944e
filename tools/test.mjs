// `npm test`: every check in turn; runs them all, then names what failed.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildIfStale } from './build.mjs';
import { chromiumPath } from './chromium.mjs';
import { hasDisplay, installedElectron } from './electron-runtime.mjs';
import { root, run } from './node-runtime.mjs';

const reports = join(root, 'reports');

function vitestTotals(file) {
  if (!existsSync(file)) return { passed: 0, failed: 0, skipped: 0 };
  const said = JSON.parse(readFileSync(file, 'utf8'));
  return { passed: said.numPassedTests, failed: said.numFailedTests, skipped: said.numPendingTests + said.numTodoTests };
}

function playwrightTotals(file) {
  if (!existsSync(file)) return { passed: 0, failed: 0, skipped: 0 };
  const { stats } = JSON.parse(readFileSync(file, 'utf8'));
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected, skipped: stats.skipped };
}

export async function runTests() {
  rmSync(reports, { recursive: true, force: true });
  mkdirSync(reports, { recursive: true });
  const failed = [];
  const step = async (name, program, args, env) => {
    console.log(`\n== ${name}`);
    const code = await run(program, args, env);
    if (code !== 0) failed.push(name);
  };
  await step('types of the planner', 'tsc', ['-p', 'planner']);
  await step('types of the program', 'tsc', ['-p', '.']);
  await step('types of the pages', 'tsc', ['-p', 'renderer']);
  await step('lint', 'biome', ['ci', '.']);
  await buildIfStale();
  const unit = join(reports, 'unit.json');
  await step('unit, reference, api and fault tests', 'vitest', [
    'run',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${unit}`,
  ]);
  const chromium = await chromiumPath();
  const pages = join(reports, 'pages.json');
  const journeys = join(reports, 'e2e.json');
  if (chromium === null) {
    failed.push('a Chromium for the page tests');
  } else {
    const desktop = hasDisplay() ? installedElectron() : null;
    const env = {
      CHROMIUM: chromium,
      ...(desktop === null ? {} : { BEDWRIGHT_ELECTRON: desktop }),
      PLAYWRIGHT_JSON_OUTPUT_NAME: journeys,
    };
    await step(
      'tests of the pages’ parts',
      'vitest',
      ['run', '-c', 'vitest.browser.config.ts', '--reporter=dot', '--reporter=json', `--outputFile.json=${pages}`],
      env,
    );
    await step('journeys through the program', 'playwright', ['test', '--reporter=line,json'], env);
  }
  if (installedElectron() === null || !hasDisplay()) {
    console.log(
      '\n*** DESKTOP WINDOW NOT TESTED: the desktop runtime or a display is missing here. Its code was tested up to that edge. ***',
    );
  }
  const totals = [vitestTotals(unit), vitestTotals(pages), playwrightTotals(journeys)];
  const sum = (name) => totals.reduce((all, each) => all + each[name], 0);
  console.log(failed.length > 0 ? `\nFailed: ${failed.join('; ')}.` : '\nAll checks passed.');
  console.log(`${sum('passed')} passed, ${sum('failed')} failed, ${sum('skipped')} skipped`);
  process.exit(failed.length > 0 ? 1 : 0);
}
