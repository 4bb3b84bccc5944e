/** Reading of paths as text, for both kinds of separator; nothing here asks the disk. */
const ENDING = '.bedwright';

const lastSeparator = (path: string): number => Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));

/** The folder part of a path, with its separator only where it is the root; '' for a bare name. */
export function folderOf(path: string): string {
  const at = lastSeparator(path);
  if (at < 0) return '';
  const folder = path.slice(0, at);
  return folder === '' || folder.endsWith(':') ? path.slice(0, at + 1) : folder;
}

/** The name part of a path, without the ending of a farm file. */
export function nameOf(path: string): string {
  const name = path.slice(lastSeparator(path) + 1);
  return name.endsWith(ENDING) ? name.slice(0, -ENDING.length) : name;
}

export const withEnding = (name: string): string => (name.trim().endsWith(ENDING) ? name.trim() : `${name.trim()}${ENDING}`);

/** A name in a folder, with the separator that the folder's own path has. */
export function joined(folder: string, name: string): string {
  if (folder.endsWith('/') || folder.endsWith('\\')) return folder + name;
  return folder + (folder.includes('\\') ? '\\' : '/') + name;
}
