import { requirePositive, requireRange } from '../errors.ts';

/** A plant exactly on the limit counts: slack for rounding, as a share of a spacing. */
export const ON_THE_LIMIT = 1e-9;

/** Whole steps that fit into a length, the last one counted when it ends exactly at the limit. */
export const wholeSteps = (length: number, step: number): number => Math.floor(length / step + ON_THE_LIMIT);

export type RowInput = {
  readonly length_m: number;
  readonly spacing_m: number;
  /** Distance from each end to the first plant; half a spacing unless told, so that each plant owns its spacing. */
  readonly endMargin_m?: number;
};

/**
 * Plants in one row.
 *
 *   n = floor((L - 2 e)/s) + 1, or 0 when L < 2 e
 *
 *   L   length of the row                 m   0 or more
 *   s   spacing in the row                m   more than 0
 *   e   margin at each end                m   0 or more; s/2 gives floor(L/s), 0 gives floor(L/s) + 1
 *
 * Source: both margins are in print (extension charts of Maine, 10 ft at 18 in, and Georgia, 100 ft at 12 in).
 * @throws InputError naming the field
 */
export function plantsInRow({ length_m, spacing_m, endMargin_m = spacing_m / 2 }: RowInput): number {
  requireRange('length_m', length_m, 0, 10_000, 'm');
  requirePositive('spacing_m', spacing_m, 'm');
  requireRange('endMargin_m', endMargin_m, 0, 10_000, 'm');
  return pointsOnLength(length_m - 2 * endMargin_m, spacing_m);
}

/** Points a spacing apart on a length, one at its start; none on a length below zero. */
export function pointsOnLength(length_m: number, spacing_m: number): number {
  return length_m < -ON_THE_LIMIT * spacing_m ? 0 : wholeSteps(Math.max(0, length_m), spacing_m) + 1;
}

export type BedRowsInput = {
  readonly length_m: number;
  readonly width_m: number;
  readonly rowSpacing_m: number;
  readonly inRow_m: number;
  /** Half a row distance and half a plant distance unless told. */
  readonly sideMargin_m?: number;
  readonly endMargin_m?: number;
};

export type BedRows = {
  readonly rows: number;
  readonly plantsPerRow: number;
  readonly plants: number;
  /** What is left between the outer row and the edge when the rows lie in the middle. */
  readonly sideLeft_m: number;
};

/**
 * Rows along a bed and plants in them: rows = floor((W - 2 m)/r) + 1, each with {@link plantsInRow}.
 * A spacing is never stretched: what is over stays as margin and is told.
 * @throws InputError naming the field
 */
export function bedRows(input: BedRowsInput): BedRows {
  requireRange('width_m', input.width_m, 0, 10_000, 'm');
  requirePositive('rowSpacing_m', input.rowSpacing_m, 'm');
  const rows = plantsInRow({
    length_m: input.width_m,
    spacing_m: input.rowSpacing_m,
    endMargin_m: input.sideMargin_m ?? input.rowSpacing_m / 2,
  });
  const plantsPerRow = plantsInRow({
    length_m: input.length_m,
    spacing_m: input.inRow_m,
    endMargin_m: input.endMargin_m ?? input.inRow_m / 2,
  });
  const sideLeft_m = rows === 0 ? input.width_m / 2 : (input.width_m - (rows - 1) * input.rowSpacing_m) / 2;
  return { rows, plantsPerRow, plants: rows * plantsPerRow, sideLeft_m };
}
