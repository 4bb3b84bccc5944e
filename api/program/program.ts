import { resolve } from 'node:path';
import {
  createFarm,
  type FarmFile,
  moveFarmFile,
  type OpenOptions,
  openFarm,
  removeFarmFile,
  replaceFarmFile,
} from '../../db/file/open-farm.ts';
import { Refusal } from '../errors.ts';
import type { Log } from '../explain-error.ts';
import { createJobs, type Jobs } from '../jobs/jobs.ts';
import type { Desktop } from './desktop.ts';
import { type FaultReports, faultReports } from './fault-reports.ts';
import { recentFarms } from './recent.ts';

export type ProgramPlaces = {
  /** The program's own version, `1.2.3`. */
  readonly version: string;
  readonly migrations: string;
  readonly resources: string;
  /** The built pages. */
  readonly pages: string;
  readonly worker: URL;
  /** The fonts that documents for print are set in. */
  readonly fonts: string;
  /** Where farms live by default, and the program's own small files. */
  readonly data: string;
};

export type OpenFarmView = { readonly key: string; readonly path: string };

/** The running program: its open farms, its jobs, its clock. */
export type Program = {
  readonly places: ProgramPlaces;
  readonly jobs: Jobs;
  readonly now: () => string;
  readonly log: Log;
  readonly recent: ReturnType<typeof recentFarms>;
  readonly reports: FaultReports;
  /** Takes away the mark that the program runs; what ends without it is reported at the next start. */
  readonly markEnded: () => void;
  /** What the desktop window offers; null at the loopback host. */
  readonly desktop: Desktop | null;
  /** An open farm by its key; without a key the one opened first. @throws Refusal */
  readonly farm: (key: string | null) => FarmFile;
  readonly farms: () => OpenFarmView[];
  readonly open: (path: string) => OpenFarmView;
  readonly create: (path: string, fill: (farm: FarmFile) => void) => OpenFarmView;
  /** Takes a farm back to one of its backups; the farm as it stood is backed up first. */
  readonly restore: (key: string | null, backup: string) => OpenFarmView;
  /** Moves a farm's file, with its backups, to a place where nothing is yet; it stays open under the same key. */
  readonly move: (key: string | null, to: string) => OpenFarmView;
  /** Brings what was written into the farm files themselves, as before the computer sleeps. */
  readonly settle: () => void;
  readonly close: (key: string) => void;
  readonly closeAll: () => Promise<void>;
};

export function createProgram(
  places: ProgramPlaces,
  now: () => string,
  log: Log,
  desktop: Desktop | null = null,
  markEnded: () => void = () => undefined,
): Program {
  const open = new Map<string, FarmFile>();
  const jobs = createJobs(places.worker, log);
  const recent = recentFarms(places.data, log, (added) => desktop?.recentChanged(added));
  const options: OpenOptions = { migrations: places.migrations, now };
  const reports = faultReports(places.data, places.version, now, log);
  let count = 0;

  function keep(farm: FarmFile): OpenFarmView {
    count += 1;
    const key = String(count);
    open.set(key, farm);
    recent.add(farm.path);
    return { key, path: farm.path };
  }

  return {
    places,
    jobs,
    now,
    log,
    recent,
    reports,
    markEnded,
    desktop,
    farm(key) {
      const farm = key === null ? open.values().next().value : open.get(key);
      if (farm === undefined) throw new Refusal({ code: 'no-farm' });
      return farm;
    },
    farms: () => [...open].map(([key, farm]) => ({ key, path: farm.path })),
    open(path) {
      const full = resolve(path);
      for (const [key, farm] of open) if (farm.path === full) return { key, path: full };
      return keep(openFarm(full, options));
    },
    create(path, fill) {
      const farm = createFarm(resolve(path), options);
      try {
        farm.unrecorded(() => fill(farm));
      } catch (error) {
        farm.close();
        removeFarmFile(farm.path);
        throw error;
      }
      return keep(farm);
    },
    restore(key, backup) {
      const entry = [...open].find(([each]) => key === null || each === key);
      if (entry === undefined) throw new Refusal({ code: 'no-farm' });
      const [farmKey, farm] = entry;
      farm.backup('restore');
      farm.close();
      try {
        replaceFarmFile(farm.path, backup, options);
      } finally {
        open.set(farmKey, openFarm(farm.path, options));
      }
      return { key: farmKey, path: farm.path };
    },
    move(key, to) {
      const entry = [...open].find(([each]) => key === null || each === key);
      if (entry === undefined) throw new Refusal({ code: 'no-farm' });
      const [farmKey, farm] = entry;
      const target = resolve(to);
      farm.close();
      let place = farm.path;
      try {
        moveFarmFile(farm.path, target, options);
        place = target;
        recent.forget(farm.path);
        recent.add(target);
      } finally {
        open.set(farmKey, openFarm(place, options));
      }
      return { key: farmKey, path: place };
    },
    settle() {
      for (const farm of open.values()) farm.settle();
    },
    close(key) {
      open.get(key)?.close();
      open.delete(key);
    },
    async closeAll() {
      await jobs.close();
      for (const farm of open.values()) farm.close();
      open.clear();
      markEnded();
    },
  };
}
