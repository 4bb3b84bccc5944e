import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import type Database from 'better-sqlite3';
import { FarmFileError, farmFileErrorOf } from './errors.ts';
import { makeFolder } from './make-folder.ts';

export type Backup = {
  readonly path: string;
  readonly name: string;
  readonly size_B: number;
  readonly why: 'daily' | 'migration' | 'by-hand' | 'restore';
};

const KEEP = { daily: 30, migration: 10, 'by-hand': 200, restore: 10 } as const;
const form = /^(.*) (\d{4}-\d{2}-\d{2}) (\d{6}) (daily|migration|by-hand|restore)(?: \d+)?\.bedwright$/;

export const backupFolderOf = (farmPath: string): string =>
  join(dirname(farmPath), `${basename(farmPath, extname(farmPath))} backups`);

/** Backups of a farm, newest first. */
export function listBackups(farmPath: string): Backup[] {
  const folder = backupFolderOf(farmPath);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap((name) => {
      const parts = form.exec(name);
      if (parts === null) return [];
      const path = join(folder, name);
      return [{ path, name, size_B: statSync(path).size, why: parts[4] as Backup['why'] }];
    })
    .sort((a, b) => sortKey(b.name).localeCompare(sortKey(a.name)) || b.name.localeCompare(a.name));
}

const sortKey = (name: string): string => {
  const parts = form.exec(name);
  return `${parts?.[2] ?? ''} ${parts?.[3] ?? ''}`;
};

/** Writes a consistent copy of the open farm beside it and drops the oldest of the same kind beyond what is kept. `at` is `YYYY-MM-DDTHH:MM:SS...`. */
export function makeBackup(sqlite: Database.Database, farmPath: string, why: Backup['why'], at: string): string {
  const folder = backupFolderOf(farmPath);
  const stem = `${basename(farmPath, extname(farmPath))} ${at.slice(0, 10)} ${at.slice(11, 19).replaceAll(':', '')} ${why}`;
  let path = join(folder, `${stem}.bedwright`);
  for (let n = 2; existsSync(path); n += 1) path = join(folder, `${stem} ${n}.bedwright`);
  try {
    makeFolder(folder);
    sqlite.prepare('VACUUM INTO ?').run(path);
  } catch (error) {
    const known = farmFileErrorOf(error, path);
    throw known instanceof FarmFileError
      ? new FarmFileError(known.reason, path, `The backup ${path} could not be written. ${known.message}`, { cause: error })
      : known;
  }
  const same = listBackups(farmPath).filter((backup) => backup.why === why);
  for (const old of same.slice(KEEP[why])) rmSync(old.path);
  return path;
}

/** Gives the backups in a moved folder the farm's new name, so that they are found again. */
export function renameBackups(folder: string, oldFarm: string, newFarm: string): void {
  const [before, after] = [oldFarm, newFarm].map((path) => basename(path, extname(path)));
  if (before === undefined || before === after) return;
  for (const name of readdirSync(folder)) {
    if (form.test(name) && name.startsWith(`${before} `))
      renameSync(join(folder, name), join(folder, `${after}${name.slice(before.length)}`));
  }
}
