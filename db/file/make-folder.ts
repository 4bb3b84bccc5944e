import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder and what is missing above it. Node's own `recursive` never returns where a file system answers "no such folder" below a
 * folder that is there (the kernel's own file systems do).
 */
export function makeFolder(path: string): void {
  if (existsSync(path)) return;
  if (dirname(path) !== path) makeFolder(dirname(path));
  mkdirSync(path);
}
