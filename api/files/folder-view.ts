import { type Dirent, existsSync, readdirSync, type Stats, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, dirname, extname, isAbsolute, join, parse, resolve } from 'node:path';
import { refuse } from '../../planner/errors.ts';
import { localNow } from '../program/places.ts';
import { FARM_EXTENSION, fromHome } from './farm-path.ts';

type Named = { readonly name: string; readonly path: string };

/** A folder as a chooser shows it: the folders and the farm files in it, and the way up. */
export type FolderView = {
  readonly folder: string;
  /** The folders above it, outermost first, itself last. */
  readonly trail: readonly Named[];
  readonly folders: readonly Named[];
  readonly farms: readonly (Named & { readonly size_B: number; readonly changedAt: string })[];
  /** Where farms usually lie. */
  readonly shortcuts: readonly Named[];
};

const byName = (a: Named, b: Named): number => a.name.localeCompare(b.name, undefined, { numeric: true });

/** What a link points to; null where it points to nothing, or where we may not look. */
function lookAt(path: string): Stats | null {
  try {
    return statSync(path);
  } catch (error) {
    if (error instanceof Error && 'code' in error) return null;
    throw error;
  }
}

function entriesOf(folder: string): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    if (code === 'ENOENT') return refuse('folder', 'missing', `There is no folder at ${folder}.`);
    if (code === 'ENOTDIR') return refuse('folder', 'not-a-folder', `${folder} is a file, not a folder.`);
    if (code === 'EACCES' || code === 'EPERM') return refuse('folder', 'no-leave', `This program may not look into ${folder}.`);
    throw error;
  }
}

function trailOf(folder: string): readonly Named[] {
  const trail: Named[] = [];
  for (let at = folder; ; at = dirname(at)) {
    trail.unshift({ name: basename(at) || parse(at).root, path: at });
    if (dirname(at) === at) return trail;
  }
}

/**
 * Lists one folder for the chooser of the loopback host's pages: its folders and farm files, nothing else and nothing of
 * what is in them. The reader is the owner of this computer's account, so every folder that the account may read can be
 * shown; the field page's door has no way here.
 */
export function folderView(wanted: string, ownFolder: string): FolderView {
  const text = fromHome(wanted.trim());
  if (text.includes('\0')) refuse('folder', 'wrong', 'A folder’s name cannot hold this character.');
  const folder = text === '' ? ownFolder : isAbsolute(text) ? resolve(text) : resolve(ownFolder, text);
  const entries = entriesOf(folder).filter((entry) => !entry.name.startsWith('.'));
  const looked = entries.flatMap(({ name }) => {
    const path = join(folder, name);
    const stats = lookAt(path);
    return stats === null ? [] : [{ name, path, stats }];
  });
  return {
    folder,
    trail: trailOf(folder),
    folders: looked
      .filter(({ stats }) => stats.isDirectory())
      .map(({ name, path }) => ({ name, path }))
      .sort(byName),
    farms: looked
      .filter(({ name, stats }) => stats.isFile() && extname(name) === FARM_EXTENSION)
      .map(({ name, path, stats }) => ({ name, path, size_B: stats.size, changedAt: localNow(stats.mtime) }))
      .sort(byName),
    shortcuts: [
      { name: 'Farms of this program', path: ownFolder },
      { name: 'Your own folder', path: homedir() },
      { name: 'Documents', path: join(homedir(), 'Documents') },
    ].filter(({ path }) => existsSync(path)),
  };
}
