import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { InputError } from '../../planner/errors.ts';
import { lineReport } from '../../planner/irrigation/line-report.ts';
import type { Watering } from '../../planner/water/bed-run.ts';
import { loadLine } from '../water-line/load-line.ts';
import type { WaterFarm } from './load-water.ts';

export type LineSupply = {
  readonly lineId: string;
  readonly name: string;
  /** What runs while the line runs, valves as they stand; of zones that run in turn the mean. Null when the line cannot be solved. */
  readonly flow_L_per_h: number | null;
  readonly because: string | null;
  readonly bedFlow_L_per_h: ReadonlyMap<string, number>;
  readonly zoneFlow_L_per_h: ReadonlyMap<number, number>;
  readonly zoneOfBed: ReadonlyMap<string, number>;
  /** Water above the stop level when full; null for a tap. */
  readonly usable_L: number | null;
  /** What the timer gives in a day, mean of its interval, by month; null where it has no entry. */
  readonly timer_L_per_day: readonly (number | null)[];
  /** What the line gives in the hours a day that the farm allows. */
  readonly most_L_per_day: number | null;
};

type Flows = Pick<LineSupply, 'flow_L_per_h' | 'because' | 'bedFlow_L_per_h' | 'zoneFlow_L_per_h' | 'zoneOfBed'>;

const unsolved = (because: string): Flows => ({
  flow_L_per_h: null,
  because,
  bedFlow_L_per_h: new Map(),
  zoneFlow_L_per_h: new Map(),
  zoneOfBed: new Map(),
});

/** What a line gives with its valves as they stand, solved; null flows where it cannot be. */
export const flowsOf = (db: FarmDb, lineId: string): Flows => derived(db, `flows ${lineId}`, () => flowsSolved(db, lineId));

function flowsSolved(db: FarmDb, lineId: string): Flows {
  try {
    const { plan, record } = loadLine(db, lineId);
    const report = lineReport(plan);
    if (report.problem !== null) return unsolved(report.problem);
    const beds = new Map(record.outlets.map((outlet) => [outlet.id, outlet.bedId]));
    const flows = new Map<string, number>();
    const zones = new Map<number, number>();
    const zoneOfBed = new Map<string, number>();
    for (const outlet of report.outlets) {
      const bedId = beds.get(outlet.id);
      if (bedId == null) continue;
      const flow = Math.max(0, outlet.full.flow_L_per_h);
      flows.set(bedId, (flows.get(bedId) ?? 0) + flow);
      zones.set(outlet.zone, (zones.get(outlet.zone) ?? 0) + flow);
      zoneOfBed.set(bedId, outlet.zone);
    }
    const all = [...zones.values()].reduce((sum, flow) => sum + flow, 0);
    return {
      flow_L_per_h: all / Math.max(1, zones.size),
      because: null,
      bedFlow_L_per_h: flows,
      zoneFlow_L_per_h: zones,
      zoneOfBed,
    };
  } catch (error) {
    // a line that is not drawn to its end has no flows yet: its page shows each fault at its field
    if (error instanceof InputError) return unsolved(error.message);
    throw error;
  }
}

/** What each line of the farm can bring. */
export function lineSupplies(db: FarmDb, farm: WaterFarm): readonly LineSupply[] {
  return farm.supplies.map((supply) => {
    const flows = flowsOf(db, supply.lineId);
    const timers = farm.timers.filter((timer) => timer.lineId === supply.lineId);
    const flow = flows.flow_L_per_h;
    return {
      lineId: supply.lineId,
      name: supply.name,
      ...flows,
      usable_L: supply.supply === 'tap' ? null : (supply.reservoir_L ?? 0) * supply.usableShare,
      timer_L_per_day: Array.from({ length: 12 }, (_, month) => {
        const own = timers.filter((timer) => timer.month === month + 1);
        if (flow === null || own.length === 0) return null;
        return own.reduce(
          (sum, timer) => sum + ((flows.zoneFlow_L_per_h.get(timer.zone) ?? 0) * timer.run_min) / 60 / timer.every_days,
          0,
        );
      }),
      most_L_per_day: flow === null ? null : flow * farm.choices.run_h_per_day,
    };
  });
}

/** How a bed is watered as things stand: by its line's timer, or filled up whenever it is due. */
export function wateringOf(farm: WaterFarm, supplies: readonly LineSupply[], bedId: string, lineId: string | null): Watering {
  const supply = supplies.find((each) => each.lineId === lineId);
  const flow = supply?.bedFlow_L_per_h.get(bedId);
  const zone = supply?.zoneOfBed.get(bedId);
  const timers = farm.timers.filter((timer) => timer.lineId === lineId && timer.zone === zone);
  if (flow === undefined || timers.length === 0) return { kind: 'when-due' };
  return {
    kind: 'timer',
    months: Array.from({ length: 12 }, (_, month) => {
      const own = timers.filter((timer) => timer.month === month + 1);
      const [first] = own;
      if (first === undefined) return null;
      return { every_days: first.every_days, amount_L: own.reduce((sum, timer) => sum + (flow * timer.run_min) / 60, 0) };
    }),
  };
}
