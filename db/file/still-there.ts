import { statSync } from 'node:fs';
import { FarmFileError } from './errors.ts';

type Identity = { readonly device: bigint; readonly file: bigint };

function identityOf(path: string): Identity | null {
  const found = statSync(path, { bigint: true, throwIfNoEntry: false });
  return found === undefined ? null : { device: found.dev, file: found.ino };
}

/**
 * Makes the check that what lies under a path is still the file that was opened. A file deleted or moved away while it is open can be
 * written on without any error, and all of it would be lost with the last close.
 * @returns throws a FarmFileError when the file is gone or another lies in its place
 */
export function stillThere(path: string): () => void {
  const opened = identityOf(path);
  return () => {
    const now = identityOf(path);
    if (now !== null && opened !== null && now.device === opened.device && now.file === opened.file) return;
    throw new FarmFileError(
      'missing',
      path,
      `${path} was ${now === null ? 'moved or deleted' : 'replaced by another file'} while this program had it open. Nothing of this change was kept. Put the file back, or save a copy of the farm in a new place now: all up to the last change is still here.`,
    );
  };
}
