import { requirePositive, requireRange } from '../errors.ts';

/**
 * Money on an area as money on one square metre. @throws InputError naming the field
 */
export function cost_minor_per_m2(cost_minor: number, area_m2: number): number {
  requirePositive('area_m2', area_m2, 'm2');
  return cost_minor / area_m2;
}

/**
 * Length of bed, or of row, that an area holds at a distance from centre to centre: `area / distance`.
 * An acre in beds 6 ft apart has 7,260 bed-feet; in rows 36 in apart 14,520 row-feet.
 *
 * Source: geometry; in use in extension budgets by the bed-foot.
 * @throws InputError naming the field
 */
export function lengthOnArea_m(area_m2: number, distance_m: number): number {
  requireRange('area_m2', area_m2, 0, Infinity, 'm2');
  requirePositive('distance_m', distance_m, 'm');
  return area_m2 / distance_m;
}

/** Cost of one metre of bed, from cost by area: `cost per m2 x distance`. @throws InputError naming the field */
export function cost_minor_per_m(cost_minor_per_area_m2: number, distance_m: number): number {
  requirePositive('distance_m', distance_m, 'm');
  return cost_minor_per_area_m2 * distance_m;
}

/**
 * Ground under beds and paths: cultivated, all, and the cultivated share.
 *
 * Checked with the plot of a Nevada extension study (50 beds of 2 x 50 ft with 3,712 ft2 of access).
 * @throws InputError naming the field
 */
export function plotAreas(plot: {
  readonly beds: number;
  readonly bedWidth_m: number;
  readonly bedLength_m: number;
  readonly access_m2: number;
}): { readonly cultivated_m2: number; readonly total_m2: number; readonly cultivatedShare: number } {
  requireRange('beds', plot.beds, 0, Infinity, '');
  requirePositive('bedWidth_m', plot.bedWidth_m, 'm');
  requirePositive('bedLength_m', plot.bedLength_m, 'm');
  requireRange('access_m2', plot.access_m2, 0, Infinity, 'm2');
  const cultivated = plot.beds * plot.bedWidth_m * plot.bedLength_m;
  const total = cultivated + plot.access_m2;
  return { cultivated_m2: cultivated, total_m2: total, cultivatedShare: total === 0 ? 0 : cultivated / total };
}
