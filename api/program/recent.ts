import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { makeFolder } from '../../db/file/make-folder.ts';

const KEPT = 12;
const shape = z.object({ recent: z.array(z.string()) });

/** The farms opened of late, newest first, in a small file of the program's own folder. */
export function recentFarms(folder: string, log: (line: string) => void) {
  const path = join(folder, 'recent.json');
  const list = (): string[] => {
    if (!existsSync(path)) return [];
    try {
      return shape.parse(JSON.parse(readFileSync(path, 'utf8'))).recent;
    } catch (error) {
      log(`${path} could not be read and is started anew: ${String(error)}`);
      return [];
    }
  };
  const write = (recent: readonly string[]): void => {
    try {
      makeFolder(dirname(path));
      writeFileSync(`${path}.new`, JSON.stringify({ recent }, null, 1));
      renameSync(`${path}.new`, path);
    } catch (error) {
      log(`${path} could not be written: ${String(error)}`);
    }
  };
  return {
    list,
    add: (farm: string) => write([farm, ...list().filter((other) => other !== farm)].slice(0, KEPT)),
    forget: (farm: string) => write(list().filter((other) => other !== farm)),
  };
}
