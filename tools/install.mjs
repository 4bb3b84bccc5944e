// Installs what the lock file names, when something of it is missing.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './node-runtime.mjs';

function packagesOf(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).packages : null;
}

export function isInstalled() {
  const wanted = packagesOf(join(root, 'package-lock.json'));
  const there = packagesOf(join(root, 'node_modules', '.package-lock.json'));
  if (there === null) return false;
  return Object.entries(wanted).every(([path, entry]) => {
    if (path === '') return true;
    const got = there[path];
    return got === undefined ? entry.optional === true || entry.peer === true : got.version === entry.version;
  });
}

export async function installIfNeeded() {
  if (isInstalled()) return;
  console.log('Installing what is missing (once; some minutes on a slow line) …');
  const args = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env.npm_execpath;
  const done =
    npm !== undefined && /npm-cli\.[cm]?js$/.test(npm)
      ? spawnSync(process.execPath, [npm, ...args], { cwd: root, stdio: 'inherit' })
      : spawnSync('npm', args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
  if (done.status !== 0) {
    console.error('The packages could not be installed; see the lines above. Is there a network?');
    process.exit(1);
  }
}
