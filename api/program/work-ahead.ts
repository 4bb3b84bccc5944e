import type { FarmFile } from '../../db/file/open-farm.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { explainError } from '../explain-error.ts';
import { soilTablesIn } from '../soil/soil-tables.ts';
import { partsAhead } from './parts-ahead.ts';
import type { Program } from './program.ts';

/** Nobody has asked for anything for so long: the page at hand has what it wants. */
const QUIET_MS = 400;
/** Between two parts, for who asks meanwhile. */
const BETWEEN_MS = 10;

export type WorkAhead = {
  /** Somebody asks for something of a farm: work ahead waits until it is quiet again. */
  readonly asked: (farmKey: string | null) => void;
  readonly end: () => void;
};

/**
 * Works out what the pages of a farm just opened will ask for, part by part while nobody asks, so that the first look at a page takes
 * no longer than the next. Each farm once; what is changed later is worked out when it is asked for.
 */
export function workAhead(program: Program, partsOf: (farm: FarmFile) => Iterator<unknown> = partsOfFarm(program)): WorkAhead {
  const parts = new WeakMap<FarmFile, Iterator<unknown>>();
  let timer: NodeJS.Timeout | undefined;

  function next(farmKey: string): void {
    // closed meanwhile
    if (!program.farms().some(({ key }) => key === farmKey)) return;
    const farm = program.farm(farmKey);
    const own = parts.get(farm) ?? partsOf(farm);
    parts.set(farm, own);
    try {
      if (own.next().done === true) return;
    } catch (error) {
      // whoever asks for this part is told of it; an own fault is logged here already
      explainError(error, program.log);
      return;
    }
    wait(farmKey, BETWEEN_MS);
  }

  function wait(farmKey: string, ms: number): void {
    timer = setTimeout(next, ms, farmKey);
    timer.unref();
  }

  return {
    asked(farmKey) {
      clearTimeout(timer);
      const key = farmKey ?? program.farms()[0]?.key;
      if (key !== undefined) wait(key, QUIET_MS);
    },
    end: () => clearTimeout(timer),
  };
}

const partsOfFarm =
  (program: Program) =>
  (farm: FarmFile): Iterator<unknown> =>
    partsAhead({ db: farm.db, today: program.now().slice(0, 10) as IsoDate }, soilTablesIn(program.places.resources));
