/** Why a farm file cannot be opened or written. */
export type FarmFileReason =
  | 'missing'
  | 'exists'
  | 'not-a-farm'
  | 'damaged'
  | 'newer'
  | 'read-only'
  | 'locked'
  | 'disk-full'
  | 'folder'
  | 'migration';

/** A farm file that is refused, in a sentence for the reader. The file is left as it was. */
export class FarmFileError extends Error {
  override readonly name = 'FarmFileError';
  readonly reason: FarmFileReason;
  readonly path: string;

  constructor(reason: FarmFileReason, path: string, message: string, options?: ErrorOptions) {
    super(message, options);
    this.reason = reason;
    this.path = path;
  }
}

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

/** Turns what SQLite or the file system says into our sentence; any other error is handed back as it came. */
export function farmFileErrorOf(error: unknown, path: string): unknown {
  const code = codeOf(error);
  const as = (reason: FarmFileReason, message: string) => new FarmFileError(reason, path, message, { cause: error });
  if (code.startsWith('SQLITE_BUSY') || code === 'SQLITE_LOCKED') {
    return as('locked', `${path} is open in another copy of this program. Close it there first.`);
  }
  if (code === 'SQLITE_FULL' || code === 'ENOSPC' || code === 'SQLITE_IOERR_WRITE') {
    return as('disk-full', `The disk that holds ${path} is full. Nothing of this change was kept; make room and try again.`);
  }
  if (code.startsWith('SQLITE_READONLY') || code === 'EROFS' || code === 'EACCES' || code === 'EPERM') {
    return as('read-only', `${path} cannot be written: the file or its folder is read-only.`);
  }
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB') {
    return as('damaged', `${path} is damaged and was left as it is. Open the newest backup instead.`);
  }
  if (code === 'SQLITE_CANTOPEN' || code === 'ENOENT') {
    return as('missing', `${path} cannot be opened. Is the file still there, and its folder?`);
  }
  return error;
}
