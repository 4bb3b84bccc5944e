import { closeSync, existsSync, fstatSync, openSync, readSync, statSync } from 'node:fs';
import { FarmFileError, farmFileErrorOf } from './errors.ts';

/** "BedW" in the file's header: this SQLite file is a farm of ours. */
export const APPLICATION_ID = 0x42656457;

const HEADER_BYTES = 100;

/** Refuses, from the header alone and without touching the file, whatever is not a farm file or was made by a newer program. */
export function identifyFarmFile(path: string, newestVersion: number): void {
  if (!existsSync(path)) throw new FarmFileError('missing', path, `There is no file at ${path}.`);
  if (statSync(path).isDirectory()) throw new FarmFileError('folder', path, `${path} is a folder, not a farm file.`);
  const header = Buffer.alloc(HEADER_BYTES);
  let size = 0;
  try {
    const file = openSync(path, 'r');
    try {
      size = fstatSync(file).size;
      readSync(file, header, 0, HEADER_BYTES, 0);
    } finally {
      closeSync(file);
    }
  } catch (error) {
    throw farmFileErrorOf(error, path);
  }
  if (size === 0) throw new FarmFileError('not-a-farm', path, `${path} is empty, not a farm file.`);
  if (header.toString('latin1', 0, 15) !== 'SQLite format 3' || header.readUInt32BE(68) !== APPLICATION_ID) {
    throw new FarmFileError('not-a-farm', path, `${path} is not a farm file of this program. It was left as it is.`);
  }
  const version = header.readUInt32BE(60);
  if (version > newestVersion) {
    throw new FarmFileError(
      'newer',
      path,
      `${path} was made by a newer version of this program (file version ${version}, this program knows ${newestVersion}). Update the program to open it.`,
    );
  }
  const pageSize = header.readUInt16BE(16) === 1 ? 65_536 : header.readUInt16BE(16);
  const pages = header.readUInt32BE(28);
  if (size < pageSize || (pages > 0 && size < pages * pageSize && !existsSync(`${path}-wal`))) {
    throw new FarmFileError('damaged', path, `${path} is cut short and was left as it is. Open the newest backup instead.`);
  }
}
