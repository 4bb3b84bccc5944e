import type { BedChange, BedRecord } from '../../db/repositories/beds.ts';

type Values = {
  readonly [key in 'length_m' | 'width_m' | 'depth_m' | 'fillDepth_m']?: number | undefined;
} & { readonly polygon_m?: readonly (readonly [number, number])[] | null | undefined } & Readonly<Record<string, unknown>>;

/** Entered values as columns of the bed: a measure equal to its design's is no measure of its own. */
export function ownMeasures({ design }: Pick<BedRecord, 'design'>, values: Values): BedChange {
  const { length_m, width_m, depth_m, fillDepth_m, polygon_m, ...rest } = values;
  const own = (value: number | undefined, designed: number) =>
    value === undefined ? undefined : Math.abs(value - designed) < 1e-6 ? null : value;
  const columns = {
    ownLength_m: own(length_m, design.length_m),
    ownWidth_m: own(width_m, design.width_m),
    ownDepth_m: own(depth_m, design.depth_m),
    ownFillDepth_m: own(fillDepth_m, design.fillDepth_m),
    ownPolygon_m: polygon_m,
    ...rest,
  };
  return Object.fromEntries(Object.entries(columns).filter(([, value]) => value !== undefined)) as BedChange;
}
