import { existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { farmFileErrorOf } from '../../db/file/errors.ts';
import { makeFolder } from '../../db/file/make-folder.ts';
import { checkFarmFile } from '../../db/file/open-farm.ts';
import { refuse } from '../../planner/errors.ts';
import type { OpenFarmView, Program } from '../program/program.ts';
import { FARM_EXTENSION } from './farm-path.ts';

export type DroppedFarm = OpenFarmView & {
  /** A copy was made, since the page is told only what is in a dropped file and not where it lies. */
  readonly copied: boolean;
};

/** The farm files this program knows of that may be the one that was dropped. */
function knownPlaces(program: Program, name: string): readonly string[] {
  const known = [...program.farms().map(({ path }) => path), ...program.recent.list(), join(program.places.data, name)];
  return [...new Set(known)].filter((path) => basename(path) === name && existsSync(path));
}

const holds = (path: string, bytes: Buffer): boolean => statSync(path).size === bytes.length && readFileSync(path).equals(bytes);

function freePlace(folder: string, name: string): string {
  const stem = basename(name, FARM_EXTENSION);
  let path = join(folder, name);
  for (let n = 2; existsSync(path); n += 1) path = join(folder, `${stem} ${n}${FARM_EXTENSION}`);
  return path;
}

/**
 * Opens a farm file that was dropped on the window. Where the very file is known (opened of late, or in the program's own
 * folder, with the same content) it is opened where it lies; else its content becomes a file of its own in the program's
 * folder, checked before it gets its name.
 */
export function openDropped(program: Program, name: string, content: ArrayBuffer): DroppedFarm {
  if (basename(name) !== name || extname(name) !== FARM_EXTENSION || name.includes('\\'))
    return refuse('name', 'not-a-farm', `${name} is not a farm file: its name ends in ${FARM_EXTENSION}.`);
  const bytes = Buffer.from(content);
  const known = knownPlaces(program, name).find((path) => holds(path, bytes));
  if (known !== undefined) return { ...program.open(known), copied: false };
  const folder = program.places.data;
  const arriving = join(folder, `arriving-${process.pid}${FARM_EXTENSION}.part`);
  const place = freePlace(folder, name);
  try {
    makeFolder(folder);
    writeFileSync(arriving, bytes);
    checkFarmFile(arriving, program.places.migrations, name);
    renameSync(arriving, place);
  } catch (error) {
    throw farmFileErrorOf(error, place);
  } finally {
    rmSync(arriving, { force: true });
  }
  return { ...program.open(place), copied: true };
}
