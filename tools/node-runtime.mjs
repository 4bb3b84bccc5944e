// Which Node runs the program: the pinned one from the lock file, else a system Node of 24 or newer.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const WANTED = 24;

export function nodePath() {
  const system = process.platform === 'win32' ? 'win' : process.platform;
  const own = join(
    root,
    'node_modules',
    `node-${system}-${process.arch}`,
    'bin',
    process.platform === 'win32' ? 'node.exe' : 'node',
  );
  if (existsSync(own)) return own;
  if (Number(process.versions.node.split('.')[0]) >= WANTED) return process.execPath;
  console.error(
    `Node ${WANTED} or newer is needed on this system (${process.platform}, ${process.arch}); this is ${process.versions.node}. Install it and try again.`,
  );
  process.exit(1);
}

export function environment() {
  const path = [dirname(nodePath()), join(root, 'node_modules', '.bin'), process.env.PATH ?? ''].join(delimiter);
  return { ...process.env, PATH: path };
}

/** Runs a program of node_modules/.bin and answers with its exit code. */
export function run(program, args, extra = {}) {
  return new Promise((done) => {
    const child = spawn(program, args, {
      cwd: root,
      env: { ...environment(), ...extra },
      stdio: 'inherit',
      shell: process.platform === 'win32',
    });
    child.on('error', (error) => {
      console.error(`${program} could not be started: ${error.message}`);
      done(1);
    });
    child.on('exit', (code) => done(code ?? 1));
  });
}
