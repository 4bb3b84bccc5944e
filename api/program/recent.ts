import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { makeFolder } from '../../db/file/make-folder.ts';

const KEPT = 12;
const shape = z.object({ recent: z.array(z.string()) });

/** The farms opened of late, newest first, in a small file of the program's own folder. `changed` is told what came to its head, or null once it was emptied. */
export function recentFarms(folder: string, log: (line: string) => void, changed: (added: string | null) => void) {
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
  /** The system's own list has no way to lose one entry, so it is emptied and filled again, oldest first. */
  function replace(farms: readonly string[]): void {
    write(farms);
    changed(null);
    for (const farm of farms.toReversed()) changed(farm);
  }
  return {
    list,
    add(farm: string): void {
      write([farm, ...list().filter((other) => other !== farm)].slice(0, KEPT));
      changed(farm);
    },
    forget: (farm: string): void => replace(list().filter((other) => other !== farm)),
    clear: (): void => replace([]),
  };
}
