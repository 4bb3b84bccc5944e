// Builds the pages and the program when a source has changed, by content.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, run } from './node-runtime.mjs';

const rooms = ['planner', 'db', 'api', 'electron', 'renderer', 'resources'];
const files = ['package-lock.json', 'vite.config.ts', 'vite.main.config.ts', 'tsconfig.base.json'];

function* filesBelow(folder) {
  const entries = readdirSync(join(root, folder), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* filesBelow(path);
    else yield path;
  }
}

function digest() {
  const hash = createHash('sha256');
  for (const file of [...rooms.flatMap((room) => [...filesBelow(room)]), ...files]) {
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(join(root, file)))
      .update('\0');
  }
  return hash.digest('hex');
}

export async function buildIfStale() {
  const stamp = join(root, 'dist', '.inputs');
  const now = digest();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return;
  for (const args of [
    ['build', '--logLevel', 'warn'],
    ['build', '-c', 'vite.main.config.ts', '--logLevel', 'warn'],
  ]) {
    const code = await run('vite', args);
    if (code !== 0) {
      console.error('The program could not be built; see the lines above.');
      process.exit(code);
    }
  }
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(stamp, now);
}
