import { bedUse_L_per_day } from '../../planner/water/bed-demand.ts';
import { type RunTotals, runBed, type Watering } from '../../planner/water/bed-run.ts';
import { type LineSupply, wateringOf } from './line-supply.ts';
import type { WaterBed, WaterFarm } from './load-water.ts';
import { runOfYear, type WeatherRecord } from './weather-record.ts';

/** A bed through one year of the record. */
export type BedRun = {
  readonly madeOf: string;
  readonly watering: Watering;
  /** What keeping it full takes on each day. */
  readonly need_L: Float64Array;
  readonly full: RunTotals;
  /** As it is watered by its timer, or by hand. */
  readonly planned: RunTotals;
  readonly peak_L_per_day: number;
  readonly peakAt: number;
};

export type YearRuns = {
  readonly record: WeatherRecord;
  readonly ofBed: ReadonlyMap<string, BedRun>;
  /** The bed's run; it is run the first time it is asked for, unless it is made and watered as before. */
  readonly of: (bed: WaterBed) => BedRun;
};

/** The beds of a farm through one year of the record. A bed that is made and watered as before is not run again. */
export function runsOfYear(
  farm: WaterFarm,
  supplies: readonly LineSupply[],
  record: WeatherRecord,
  year: number,
  before: YearRuns | undefined,
): YearRuns {
  const weather = runOfYear(record, year);
  const known = before?.record === record ? before.ofBed : new Map<string, BedRun>();
  const run = (bed: WaterBed): BedRun => {
    const watering = wateringOf(farm, supplies, bed.bedId, bed.lineId);
    const same = known.get(bed.bedId);
    if (same?.madeOf === bed.madeOf && JSON.stringify(same.watering) === JSON.stringify(watering)) return same;
    const need_L = new Float64Array(weather.eto_mm.length);
    const full = runBed(bed.store, bed.year, weather, { kind: 'kept-full' }, (at, _, __, given_L) => {
      need_L[at] = given_L;
    });
    let [peak_L_per_day, peakAt] = [0, 0];
    weather.eto_mm.forEach((eto_mm_per_day, at) => {
      const yearDay = weather.yearDay[at] ?? 0;
      const use = bedUse_L_per_day({ store: bed.store, year: bed.year, yearDay, eto_mm_per_day });
      if (use <= peak_L_per_day) return;
      peak_L_per_day = use;
      peakAt = at;
    });
    const planned = runBed(bed.store, bed.year, weather, watering);
    return { madeOf: bed.madeOf, watering, need_L, full, planned, peak_L_per_day, peakAt };
  };
  const ofBed = new Map<string, BedRun>();
  return {
    record,
    ofBed,
    of(bed) {
      const found = ofBed.get(bed.bedId) ?? run(bed);
      ofBed.set(bed.bedId, found);
      return found;
    },
  };
}
