import type { BedRecord, BedRow, DesignRow, LayerRecord } from '../../db/repositories/beds.ts';
import type { BedSpec } from '../../planner/beds/bed-spec.ts';
import type { MaterialId } from '../../planner/ids.ts';
import type { FigureLayer } from '../../planner/soil/bed-figures.ts';
import type { LayerAmount } from '../../planner/soil/layers.ts';

/** A bed's measures: its design's, with the bed's own over them. */
export function specOfBed({ bed, design }: Pick<BedRecord, 'bed' | 'design'>): BedSpec {
  return { ...specOfDesign(design), ...overridesOf(bed, design) };
}

export function specOfDesign(design: DesignRow): BedSpec {
  const { kind, outline, length_m, width_m, bottomLength_m, bottomWidth_m, polygon_m, depth_m, fillDepth_m, topWidth_m } = design;
  const { watering, basinLength_m, basinWidth_m, basinDepth_m, basinFill_m, reservoirDepth_m, overflow_m, reservoirVoid_share } =
    design;
  return {
    kind,
    outline,
    length_m,
    width_m,
    bottomLength_m,
    bottomWidth_m,
    polygon_m,
    depth_m,
    fillDepth_m,
    topWidth_m,
    watering,
    basinLength_m,
    basinWidth_m,
    basinDepth_m,
    basinFill_m,
    reservoirDepth_m,
    overflow_m,
    reservoirVoid_share,
  };
}

function overridesOf(bed: BedRow, design: DesignRow): Partial<BedSpec> {
  const own: Partial<BedSpec> = {
    ...(bed.ownLength_m === null ? {} : { length_m: bed.ownLength_m }),
    ...(bed.ownWidth_m === null ? {} : { width_m: bed.ownWidth_m }),
    ...(bed.ownDepth_m === null ? {} : { depth_m: bed.ownDepth_m }),
    ...(bed.ownFillDepth_m === null ? {} : { fillDepth_m: bed.ownFillDepth_m }),
    ...(bed.ownPolygon_m === null ? {} : { polygon_m: bed.ownPolygon_m, outline: 'polygon' as const }),
    ...(bed.ownBasinFill_m === null ? {} : { basinFill_m: bed.ownBasinFill_m }),
  };
  // a round bed has one size: an own width alone changes its diameter
  return design.outline === 'round' && bed.ownLength_m === null && bed.ownWidth_m !== null
    ? { ...own, length_m: bed.ownWidth_m }
    : own;
}

/** Whether a bed differs from its design in any measure. */
export function hasOwnMeasures(bed: BedRow): boolean {
  const own = [bed.ownLength_m, bed.ownWidth_m, bed.ownDepth_m, bed.ownFillDepth_m, bed.ownPolygon_m, bed.ownBasinFill_m];
  return own.some((value) => value !== null);
}

export type Recipe = readonly (FigureLayer & Pick<LayerRecord, 'swellShare' | 'laterShare' | 'isOwn' | 'dusty' | 'kind'>)[];

/** Rows of a recipe as the planner takes them. */
export function recipeOf(rows: readonly LayerRecord[]): Recipe {
  return rows.map((row) => ({
    ...row,
    materialId: row.materialId as MaterialId,
    amount: amountOf(row),
    settlingShare: row.settlingShare ?? 0,
  }));
}

export function amountOf(row: Pick<LayerRecord, 'amountKind' | 'amount'>): LayerAmount {
  const amount = row.amount ?? 0;
  switch (row.amountKind) {
    case 'depth':
      return { kind: 'depth', depth_m: amount };
    case 'share':
      return { kind: 'share', share: amount };
    case 'volume':
      return { kind: 'volume', settled_L: amount };
    case 'rest':
      return { kind: 'rest' };
  }
}
