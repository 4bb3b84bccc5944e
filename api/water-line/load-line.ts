import type { FarmDb } from '../../db/file/open-farm.ts';
import { bedsInUse } from '../../db/repositories/beds.ts';
import { type LineRecord, lineOfId, readingsOfOutlets } from '../../db/repositories/water-lines.ts';
import { basinWater_L } from '../../planner/beds/basin-water.ts';
import { type BedSpec, basinOfBed, formOfBed } from '../../planner/beds/bed-spec.ts';
import { bedWater_L } from '../../planner/beds/bed-water.ts';
import { fullVolume_L } from '../../planner/beds/volume.ts';
import { InputError } from '../../planner/errors.ts';
import type { LinePlan } from '../../planner/irrigation/line-plan.ts';
import { specOfBed } from '../beds/bed-spec-of.ts';
import { Refusal } from '../errors.ts';
import { planOfLine } from './plan-of-line.ts';

/** What a bed on the line takes: the fill wanted in one run, and what its basin holds before it runs over. */
export type OutletFact = {
  readonly outletId: string;
  readonly code: string;
  readonly wanted_L: number;
  readonly wantedFrom: 'entry' | 'basin' | 'unknown';
  readonly holds_L: number | null;
  readonly measured_L_per_h: number | null;
  readonly measuredDate: string | null;
  readonly calibrated: boolean;
  readonly readings: readonly {
    readonly id: string;
    readonly turns: number;
    readonly lossK: number;
    readonly flow_L_per_h: number;
  }[];
};

export type LoadedLine = { readonly record: LineRecord; readonly plan: LinePlan; readonly facts: readonly OutletFact[] };

/** Basin to its rim, or null where the bed stands in none or its measures do not fit. */
function holdsOf(spec: BedSpec): number | null {
  try {
    const basin = basinOfBed(spec);
    if (basin === undefined) return null;
    const bag = formOfBed(spec);
    return fullVolume_L(basin) <= 0 ? null : basinWater_L({ basin, bag, level_m: basin.depth_m });
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

function fillOf(spec: BedSpec): number {
  try {
    return bedWater_L(spec);
  } catch (error) {
    if (error instanceof InputError) return 0;
    throw error;
  }
}

/** One line whole, with what its beds take. @throws Refusal when it is gone */
export function loadLine(db: FarmDb, lineId: string): LoadedLine {
  const record = lineOfId(db, lineId);
  if (record === undefined) throw new Refusal({ code: 'not-found', what: 'water line' });
  const served = new Set(record.outlets.map((outlet) => outlet.bedId));
  const beds = bedsInUse(db).filter(({ bed }) => served.has(bed.id));
  const specs = new Map(beds.map((of) => [of.bed.id, specOfBed(of)]));
  const codes = new Map(beds.map(({ bed }) => [bed.id, bed.code]));
  const nodeNames = new Map(record.nodes.map((node) => [node.id, node.name]));
  const readings = Map.groupBy(
    readingsOfOutlets(
      db,
      record.outlets.map((outlet) => outlet.id),
    ),
    (reading) => reading.outletId,
  );
  const facts = record.outlets.map((outlet): OutletFact => {
    const spec = outlet.bedId === null ? undefined : specs.get(outlet.bedId);
    const basin_L = spec === undefined ? 0 : fillOf(spec);
    return {
      outletId: outlet.id,
      code: (outlet.bedId === null ? undefined : codes.get(outlet.bedId)) ?? nodeNames.get(outlet.nodeId) ?? '',
      wanted_L: outlet.fill_L ?? basin_L,
      wantedFrom: outlet.fill_L !== null ? 'entry' : basin_L > 0 ? 'basin' : 'unknown',
      holds_L: spec === undefined ? null : holdsOf(spec),
      measured_L_per_h: outlet.measured_L_per_h,
      measuredDate: outlet.measuredDate,
      calibrated: outlet.calibrated,
      readings: (readings.get(outlet.id) ?? []).map(({ id, turns, lossK, flow_L_per_h }) => ({ id, turns, lossK, flow_L_per_h })),
    };
  });
  return { record, plan: planOfLine(record), facts };
}
