// The launcher: plain JavaScript of Node 18 with built-ins only, since it runs before anything is installed.
// It installs what the lock file names and is missing, builds what is stale, then runs the wanted program on Node 24.
import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildIfStale } from './build.mjs';
import { chromiumPath } from './chromium.mjs';
import { electronPath, hasDisplay } from './electron-runtime.mjs';
import { installIfNeeded } from './install.mjs';
import { environment, nodePath, root, run } from './node-runtime.mjs';
import { runTests } from './test.mjs';

const [command = 'start', ...rest] = process.argv.slice(2);

function last(program, args, env = environment()) {
  const child = spawn(program, args, { cwd: root, env, stdio: 'inherit' });
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.on('error', (error) => {
    console.error(`${program} could not be started: ${error.message}`);
    process.exit(1);
  });
  child.on('exit', (code, signal) => process.exit(code ?? (signal === 'SIGINT' ? 130 : 1)));
}

// What is kept of a farm is small beside what answers are made of and thrown away: a smaller part of the heap for the young takes 120 MB
// less, and no longer.
const hostFlags = JSON.parse(readFileSync(join(root, 'tools', 'host-flags.json'), 'utf8'));

function openBrowser(address) {
  if (process.env.CI || process.env.BEDWRIGHT_NO_BROWSER) return;
  const opener = process.platform === 'darwin' ? 'open' : process.platform === 'win32' ? 'explorer' : 'xdg-open';
  if (process.platform === 'linux' && !hasDisplay()) return;
  spawn(opener, [address], { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}

function startHost(why, args) {
  console.log(why);
  const child = spawn(nodePath(), [...hostFlags, join(root, 'dist', 'main', 'host.js'), ...args], {
    cwd: root,
    env: environment(),
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  child.on('message', (message) => openBrowser(message.address));
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.on('exit', (code, signal) => process.exit(code ?? (signal === 'SIGINT' ? 130 : 1)));
}

async function start() {
  await buildIfStale();
  const args = rest.filter((each) => each !== '--host');
  if (rest.includes('--host')) return startHost('Serving the program to your browser, as asked.', args);
  if (!hasDisplay())
    return startHost('There is no display for a desktop window, so the program is served to your browser.', args);
  const electron = await electronPath();
  if (electron === null)
    return startHost('The desktop runtime cannot be had on this computer, so the program is served to your browser.', args);
  return last(electron, [root, ...args]);
}

const builtCommand = async (file) => {
  await buildIfStale();
  last(nodePath(), [join(root, 'dist', 'main', file), ...rest]);
};

const commands = {
  start,
  test: () => runTests(rest),
  report: () => builtCommand('report.js'),
  farm: () => builtCommand('farm.js'),
  check: async () => last(nodePath(), [join(root, 'tests', 'reference', 'check.ts'), ...rest]),
  bench: async () => {
    await buildIfStale();
    const chromium = await chromiumPath();
    last(nodePath(), [join(root, 'tests', 'bench', 'run.ts'), ...rest], { ...environment(), CHROMIUM: chromium ?? '' });
  },
  // more than 100,000 inputs over all procedures and importers; `-- 2000` for as many to each, `-- 2000 7` with another seed
  fuzz: async () => {
    const [inputs = '450', seed = '20261125', ...more] = rest;
    last('vitest', ['run', 'tests/faults/fuzz', '--maxWorkers=1', ...more], { ...environment(), FUZZ: inputs, FUZZ_SEED: seed });
  },
  shots: async () => {
    await buildIfStale();
    const chromium = await chromiumPath();
    last(nodePath(), [join(root, 'tests', 'e2e', 'shots.ts'), ...rest], { ...environment(), CHROMIUM: chromium ?? '' });
  },
  icons: async () => {
    const chromium = await chromiumPath();
    last(nodePath(), [join(root, 'tools', 'icons', 'draw.ts')], { ...environment(), CHROMIUM: chromium ?? '' });
  },
  package: async () => {
    // installed outside the rooms, whose sources tests read
    const folder = join(root, 'dist', 'packager');
    const packaging = join(root, 'electron', 'packaging');
    mkdirSync(folder, { recursive: true });
    for (const name of ['package.json', 'package-lock.json']) copyFileSync(join(packaging, name), join(folder, name));
    const installed = await run('npm', [
      'ci',
      '--prefix',
      folder,
      '--ignore-scripts',
      '--no-audit',
      '--no-fund',
      '--loglevel=error',
    ]);
    if (installed !== 0) process.exit(installed);
    await buildIfStale();
    const packager = join(folder, 'node_modules', 'electron-builder', 'cli.js');
    last(nodePath(), [packager, '--config', join(packaging, 'builder.json'), ...rest]);
  },
  build: async () => {
    rmSync(join(root, 'dist', '.inputs'), { force: true });
    await buildIfStale();
  },
  typecheck: async () => {
    for (const project of ['planner', '.', 'renderer']) {
      const code = await run('tsc', ['-p', project]);
      if (code !== 0) process.exit(code);
    }
  },
  e2e: async () => {
    await buildIfStale();
    const chromium = await chromiumPath();
    last('playwright', ['test', ...rest], { ...environment(), CHROMIUM: chromium ?? '' });
  },
  'every-state': async () => {
    await buildIfStale();
    const chromium = await chromiumPath();
    const env = { ...environment(), CHROMIUM: chromium ?? '', EVERY_LOOK: '1' };
    last('playwright', ['test', 'every-state', ...rest], env);
  },
  mutation: async () => {
    const folder = join(root, 'tests', 'mutation');
    const installed = await run('npm', [
      'ci',
      '--prefix',
      folder,
      '--ignore-scripts',
      '--no-audit',
      '--no-fund',
      '--loglevel=error',
    ]);
    if (installed !== 0) process.exit(installed);
    if (rest.includes('--sample')) return last(nodePath(), [join(folder, 'sample.mjs'), ...rest]);
    const runner = join(folder, 'node_modules', '@stryker-mutator', 'core', 'bin', 'stryker.js');
    return last(nodePath(), [runner, 'run', join(folder, 'stryker.config.json'), ...rest]);
  },
  exec: async () => last(rest[0], rest.slice(1)),
};

if (!existsSync(join(root, 'package-lock.json'))) {
  console.error('package-lock.json is missing: this folder is not a whole copy of the program.');
  process.exit(1);
}
const chosen = commands[command];
if (chosen === undefined) {
  console.error(`There is no command "${command}". Known: ${Object.keys(commands).join(', ')}.`);
  process.exit(2);
}
await installIfNeeded();
await chosen();
