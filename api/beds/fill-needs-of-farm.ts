import type { FarmDb } from '../../db/file/open-farm.ts';
import { fillDates, latestDrops } from '../../db/repositories/bed-history.ts';
import { formOfBed } from '../../planner/beds/bed-spec.ts';
import { type IsoDate, yearOf } from '../../planner/calendar.ts';
import type { BedId, MaterialId } from '../../planner/ids.ts';
import { type CoveredNeed, coverFromStock, type FillNeed } from '../../planner/soil/fill-needs.ts';
import { meanSettling } from '../../planner/soil/settling.ts';
import { expectedDrop_m, LEAST_DROP_M, topUp } from '../../planner/soil/top-up.ts';
import { type LoadedBed, loadBeds } from './load-beds.ts';

/** A need for material in one bed and why, before stock is looked at. */
export type BedNeed = FillNeed & {
  readonly code: string;
  readonly material: string;
  readonly kind: 'first-fill' | 'top-up';
  /** Measured drop, or expected from settling. */
  readonly basis: 'recipe' | 'measured' | 'expected';
  readonly drop_m: number | null;
  readonly isOwn: boolean;
  readonly swellShare: number | null;
  readonly reason: string;
};

export type CoveredBedNeed = BedNeed & Pick<CoveredNeed, 'fromStock_L' | 'wanted_L'>;

/**
 * What every bed in use wants this year: the recipe where it was never filled, else a top-up of its upper layer for the
 * newest drop measured since it was last filled, or for the settling to be expected where none was measured.
 */
export function fillNeedsOfFarm(db: FarmDb, today: IsoDate, beds: readonly LoadedBed[] = loadBeds(db)): readonly BedNeed[] {
  const filled = new Map(fillDates(db).map((row) => [row.bedId, row]));
  const drops = new Map(latestDrops(db).map((row) => [row.bedId, row]));
  return beds.flatMap((bed): readonly BedNeed[] => {
    if (bed.figures === null) return [];
    const history = filled.get(bed.bed.id);
    if (history?.firstDate === null || history === undefined) return firstFill(bed);
    const drop = drops.get(bed.bed.id);
    const measured = drop !== undefined && drop.date > history.lastDate ? drop : undefined;
    return topUpOf(bed, measured, Math.max(0, yearOf(today) - yearOf(history.lastDate as IsoDate)));
  });
}

/** Own soil and stock first, what lies there in litres; the rest is wanted. */
export function coveredNeeds(needs: readonly BedNeed[], stock_L: ReadonlyMap<string, number>): readonly CoveredBedNeed[] {
  const covered = coverFromStock(needs, stock_L as ReadonlyMap<MaterialId, number>);
  return needs.map((need, at) => ({
    ...need,
    fromStock_L: covered[at]?.fromStock_L ?? 0,
    wanted_L: covered[at]?.wanted_L ?? need.loose_L,
  }));
}

function firstFill(bed: LoadedBed): readonly BedNeed[] {
  return (bed.figures?.layers ?? []).flatMap((layer, at): readonly BedNeed[] => {
    const part = bed.recipe[at];
    // the own soil of a bed in the ground lies there already
    if (part === undefined || layer.loose_L === 0 || (part.isOwn && bed.spec.kind === 'in-ground')) return [];
    return [
      {
        ...common(bed, part),
        loose_L: layer.loose_L,
        kind: 'first-fill',
        basis: 'recipe',
        drop_m: null,
        reason: `First fill of ${bed.bed.code}`,
      },
    ];
  });
}

function topUpOf(bed: LoadedBed, measured: { readonly drop_m: number } | undefined, seasons: number): readonly BedNeed[] {
  const upper = bed.recipe.at(-1);
  // ground that has settled is ploughland, not a container: it is topped up only for a drop that was measured
  if (upper === undefined || (measured === undefined && bed.spec.kind === 'in-ground')) return [];
  const surface_m = bed.spec.fillDepth_m;
  const drop_m = Math.min(surface_m, measured?.drop_m ?? expectedDrop_m(surface_m, meanLaterShare(bed), seasons));
  if (drop_m < LEAST_DROP_M) return [];
  const { loose_L } = topUp({ form: formOfBed(bed.spec), surface_m, drop_m, settlingShare: upper.settlingShare });
  const basis = measured === undefined ? 'expected' : 'measured';
  return [{ ...common(bed, upper), loose_L, kind: 'top-up', basis, drop_m, reason: `Top-up of ${bed.bed.code}, ${basis} drop` }];
}

function meanLaterShare(bed: LoadedBed): number {
  const layers = bed.figures?.layers ?? [];
  return meanSettling(layers.map(({ settled_L }, at) => ({ settled_L, share: bed.recipe[at]?.laterShare ?? 0 })));
}

function common(bed: LoadedBed, part: LoadedBed['recipe'][number]) {
  return {
    bedId: bed.bed.id as BedId,
    code: bed.bed.code,
    materialId: part.materialId,
    material: part.name,
    isOwn: part.isOwn,
    swellShare: part.swellShare,
  };
}
