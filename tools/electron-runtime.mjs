// Is the desktop runtime here, or can it be fetched? Never imports `electron`: importing starts a download.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { environment, nodePath, root } from './node-runtime.mjs';

const folder = join(root, 'node_modules', 'electron');
const FETCH_LIMIT_MS = 180_000;

export function hasDisplay() {
  return process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

export function installedElectron() {
  const pointer = join(folder, 'path.txt');
  if (!existsSync(pointer)) return null;
  const program = join(folder, 'dist', readFileSync(pointer, 'utf8').trim());
  return existsSync(program) ? program : null;
}

export async function electronPath() {
  const there = installedElectron();
  if (there !== null) return there;
  if (!existsSync(join(folder, 'install.js'))) return null;
  spawnSync(nodePath(), [join(folder, 'install.js')], {
    cwd: root,
    env: environment(),
    stdio: 'ignore',
    timeout: FETCH_LIMIT_MS,
  });
  return installedElectron();
}
