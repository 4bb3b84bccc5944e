import { outlineOfBed } from '../../planner/beds/bed-spec.ts';
import { isWithinFloorLimit } from '../../planner/beds/floor-load.ts';
import type { Outline } from '../../planner/beds/outline.ts';
import type { LoadedBed } from './load-beds.ts';

/** A bed as the table and the site drawing show it. */
export function bedRowOf(bed: LoadedBed, topUp_L: number, drop_m: number | null = null) {
  const { bed: row, design, block, spec, figures } = bed;
  const load = figures?.load_kg_per_m2 ?? null;
  return {
    bedId: row.id,
    code: row.code,
    name: row.name,
    blockId: row.blockId,
    block: block.code,
    designId: row.designId,
    design: design.name,
    kind: spec.kind,
    watering: spec.watering,
    outline: outlineOfBed(spec) satisfies Outline,
    x_m: row.x_m,
    y_m: row.y_m,
    turn_deg: row.turn_deg,
    position: row.position,
    place: row.place,
    sun: row.sun ?? block.sun,
    length_m: spec.length_m,
    width_m: spec.width_m,
    depth_m: spec.depth_m,
    fillDepth_m: spec.fillDepth_m,
    area_m2: figures?.area_m2 ?? null,
    fill_L: figures?.fill_L ?? null,
    water_L: figures?.water_L ?? null,
    topUp_L,
    drop_m,
    wet_kg: figures?.wet_kg ?? null,
    load_kg_per_m2: load,
    floorLimit_kg_per_m2: row.floorLimit_kg_per_m2,
    isOverLimit: load !== null && row.floorLimit_kg_per_m2 !== null && !isWithinFloorLimit(load, row.floorLimit_kg_per_m2),
    builtDate: row.builtDate,
    retiredDate: row.retiredDate,
    fault: bed.fault,
    revision: row.revision,
  };
}

export type BedTableRow = ReturnType<typeof bedRowOf>;
