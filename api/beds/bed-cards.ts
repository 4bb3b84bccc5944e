import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { measuresOf } from '../../planner/soil/blend.ts';
import { bankFromLoose } from '../../planner/soil/swell.ts';
import { Refusal } from '../errors.ts';
import { fillNeedsOfFarm } from './fill-needs-of-farm.ts';
import { type LoadedBed, loadBeds } from './load-beds.ts';

type Line = { readonly material: string; readonly loose_L: number; readonly isOwn: boolean; readonly swellShare: number | null };

/** Cards for the beds asked for, in the table's order; a bed that wants nothing has no lines. */
export function bedCards(db: FarmDb, today: IsoDate, bedIds: readonly string[], what: 'first-fill' | 'wanted') {
  const farm = farmOfFile(db);
  if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
  const wanted = new Set(bedIds);
  const beds = loadBeds(db).filter((bed) => wanted.has(bed.bed.id));
  const needs = Map.groupBy(what === 'wanted' ? fillNeedsOfFarm(db, today, beds) : [], (need) => need.bedId as string);
  return {
    bucket_L: farm.bucket_L,
    barrow_L: farm.barrow_L,
    cards: beds.map((bed) => ({
      bedId: bed.bed.id,
      code: bed.bed.code,
      block: bed.block.name,
      design: bed.design.name,
      area_m2: bed.figures?.area_m2 ?? null,
      fillDepth_m: bed.spec.fillDepth_m,
      lines: (what === 'wanted' ? (needs.get(bed.bed.id) ?? []) : recipeLines(bed)).map((line) => ({
        material: line.material,
        loose_L: line.loose_L,
        buckets: measuresOf(line.loose_L, farm.bucket_L).quarters,
        barrows: measuresOf(line.loose_L, farm.barrow_L).quarters,
        dig_L: line.isOwn && line.swellShare !== null ? bankFromLoose(line.loose_L, line.swellShare) : null,
      })),
    })),
  };
}

function recipeLines(bed: LoadedBed): readonly Line[] {
  return (bed.figures?.layers ?? []).flatMap((layer, at) => {
    const part = bed.recipe[at];
    return part === undefined
      ? []
      : [{ material: part.name, loose_L: layer.loose_L, isOwn: part.isOwn, swellShare: part.swellShare }];
  });
}
