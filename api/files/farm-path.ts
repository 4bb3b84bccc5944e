import { existsSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, extname, isAbsolute, join } from 'node:path';
import { refuse } from '../../planner/errors.ts';
import type { Program } from '../program/program.ts';

export const FARM_EXTENSION = '.bedwright';

/** `~` and `~/…` are the reader's own folder; any other text stays. */
export const fromHome = (text: string): string => (text === '~' || text.startsWith('~/') ? join(homedir(), text.slice(1)) : text);

/** A path as a person writes it: `~`, a bare name (then in the program's own folder), with or without the ending. */
export function farmPath(program: Program, text: string, field = 'path'): string {
  const plain = text.trim();
  if (plain === '') refuse(field, 'missing', 'Give the file a name.');
  if (plain.includes('\0')) refuse(field, 'wrong', 'A file name cannot hold this character.');
  const home = fromHome(plain);
  const full = isAbsolute(home) ? home : join(program.places.data, home);
  return extname(full) === FARM_EXTENSION ? full : `${full}${FARM_EXTENSION}`;
}

/** Where a farm's file or its copy is to lie: the path that was given, or the same name in the folder that was given. */
export function placeFor(program: Program, text: string, farm: string): string {
  const home = fromHome(text.trim());
  const folder = isAbsolute(home) && existsSync(home) && statSync(home).isDirectory();
  return farmPath(program, folder ? join(home, basename(farm)) : text);
}
