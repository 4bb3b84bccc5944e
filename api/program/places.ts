import { homedir } from 'node:os';
import { join } from 'node:path';

type Env = Readonly<Record<string, string | undefined>>;

/** The folder for farm files by each platform's convention; `BEDWRIGHT_HOME` stands over it. */
export function dataFolder(env: Env, platform: NodeJS.Platform): string {
  const own = env['BEDWRIGHT_HOME'];
  if (own !== undefined && own !== '') return own;
  if (platform === 'win32') return join(env['APPDATA'] ?? join(homedir(), 'AppData', 'Roaming'), 'Bedwright');
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Bedwright');
  return join(env['XDG_DATA_HOME'] ?? join(homedir(), '.local', 'share'), 'bedwright');
}

/** Local time as `YYYY-MM-DDTHH:MM:SS`: the one place where the program looks at the clock. */
export function localNow(date = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${day}T${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`;
}

/** The program's clock. `BEDWRIGHT_NOW` (as `2026-11-25T09:00:00`) stops it: for tests and pictures, which must not depend on the day they are made. */
export function clockOf(env: Env): () => string {
  const stopped = env['BEDWRIGHT_NOW'];
  return stopped !== undefined && /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}$/.test(stopped) ? () => stopped : () => localNow();
}
