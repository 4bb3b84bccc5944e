import { requirePositive, requireRange } from '../errors.ts';

/**
 * Yield for each square metre from what a length of row gives.
 *
 *   Y = y / r
 *
 *   y   yield for each metre of row   kg/m   0 or more
 *   r   distance between rows         m      more than 0
 *
 * Field rows: the row distance holds the path between rows; beds planted closer give more.
 * Source: definition; checked with the University of Maine Planting Chart.
 * @throws InputError naming the field
 */
export function yieldOfRows_kg_per_m2(yield_kg_per_m: number, rowSpacing_m: number): number {
  requireRange('yield_kg_per_m', yield_kg_per_m, 0, 1000, 'kg/m');
  requirePositive('rowSpacing_m', rowSpacing_m, 'm');
  return yield_kg_per_m / rowSpacing_m;
}

/** Yield for each metre of row from the yield of a row of a given length. @throws InputError naming the field */
export function yieldAlongRow_kg_per_m(yield_kg: number, row_m: number): number {
  requireRange('yield_kg', yield_kg, 0, 1e7, 'kg');
  requirePositive('row_m', row_m, 'm');
  return yield_kg / row_m;
}

/** Stems, heads or fruit that a stand gives: plants times what one plant gives. @throws InputError naming the field */
export function yieldOfPlants(plants: number, perPlant: number): number {
  requireRange('plants', plants, 0, 1e8, '');
  requireRange('perPlant', perPlant, 0, 1e5, '');
  return plants * perPlant;
}
