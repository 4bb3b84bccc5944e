import type { FarmDb } from '../../db/file/open-farm.ts';
import { zonesOf } from '../../planner/irrigation/line-plan.ts';
import { lineReport } from '../../planner/irrigation/line-report.ts';
import { runTime } from '../../planner/irrigation/run-time.ts';
import { lineInterval } from '../../planner/water/watering-interval.ts';
import { Refusal } from '../errors.ts';
import { bedDryings } from '../water/bed-dryings.ts';
import { loadWater, type WaterFarm } from '../water/load-water.ts';
import type { LoadedLine } from './load-line.ts';

/** Longest interval worth a timer. */
const MOST_DAYS = 14;

export type LineNeed = {
  readonly month: number;
  /** Whole days between runs; null when no crop of the line stands in the month. */
  readonly every_days: number | null;
  readonly limitedBy: string;
  /** Water a run must bring to each outlet's bed. */
  readonly run_L: ReadonlyMap<string, number>;
  /** Outlets whose basin stands wet longer than the farm allows. */
  readonly standing: number;
};

/** What the beds of a line need in a month, by every spell of the weather record. @throws Refusal without a record */
export function needOfLine(db: FarmDb, farm: WaterFarm, line: LoadedLine, month: number): LineNeed {
  if (farm.record === null) throw new Refusal({ code: 'not-found', what: 'weather record' });
  const outletOf = new Map(
    line.record.outlets.flatMap((outlet) => (outlet.bedId === null ? [] : [[outlet.bedId, outlet.id] as const])),
  );
  const beds = farm.beds.filter((bed) => outletOf.has(bed.bedId));
  const { terms, of } = bedDryings(db, farm, farm.record, { month, most_days: MOST_DAYS });
  const found = lineInterval({ ...terms, beds }, of);
  return {
    month,
    every_days: found.days === null ? null : Math.max(1, Math.min(MOST_DAYS, found.days)),
    limitedBy: farm.beds.find((bed) => bed.bedId === found.limitedBy)?.code ?? '',
    run_L: new Map(
      found.beds.flatMap((bed) => {
        const outletId = outletOf.get(bed.bedId);
        return outletId === undefined ? [] : [[outletId, bed.run_L] as const];
      }),
    ),
    standing: found.beds.filter((bed) => bed.stands_days !== null && bed.stands_days > farm.choices.standing_days).length,
  };
}

export type ProposedTimer = {
  readonly month: number;
  readonly every_days: number;
  readonly start: string;
  readonly run_min: number;
  readonly zone: number;
};

const minuteOf = (start: string): number => Number(start.slice(0, 2)) * 60 + Number(start.slice(3, 5));

function timeOf(minute: number): string {
  const day = ((Math.round(minute) % 1440) + 1440) % 1440;
  return `${String(Math.floor(day / 60)).padStart(2, '0')}:${String(day % 60).padStart(2, '0')}`;
}

/**
 * A programme out of the beds' need: in each month with a crop the interval of the thirstiest bed, and for each zone minutes
 * enough for its slowest outlet as the valves stand; zones one after the other from `start`.
 */
export function proposedTimers(db: FarmDb, line: LoadedLine, start: string): readonly ProposedTimer[] {
  const farm = loadWater(db, null);
  const report = lineReport(line.plan);
  return Array.from({ length: 12 }, (_, at) => needOfLine(db, farm, line, at + 1)).flatMap((need) => {
    const { every_days } = need;
    if (every_days === null) return [];
    let minute = minuteOf(start);
    return zonesOf(line.plan).flatMap(({ zone }) => {
      const run = runTime(
        report.outlets
          .filter((outlet) => outlet.zone === zone)
          .map((outlet) => ({
            id: outlet.id,
            flow_L_per_h: outlet.low.flow_L_per_h,
            wanted_L: need.run_L.get(outlet.id) ?? 0,
            holds_L: null,
          })),
      );
      if (run.run_min <= 0) return [];
      const run_min = Math.ceil(run.run_min);
      const event = { month: need.month, every_days, start: timeOf(minute), run_min, zone };
      minute += run_min;
      return [event];
    });
  });
}
