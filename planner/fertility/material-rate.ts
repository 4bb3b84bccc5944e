import { requirePositive, requireRange } from '../errors.ts';

/**
 * Mass of a material that brings an amount of a nutrient into reach of the crop.
 *
 *   m = need / (content x availability)      kg; shares 0 to 1, both above 0
 *
 * Source: definition.
 */
export function materialFor_kg(need_kg: number, contentShare: number, availableShare: number): number {
  requireRange('need_kg', need_kg, 0, Infinity, 'kg');
  requirePositive('contentShare', contentShare, '');
  requireRange('contentShare', contentShare, 0, 1, '');
  requirePositive('availableShare', availableShare, '');
  requireRange('availableShare', availableShare, 0, 1, '');
  return need_kg / (contentShare * availableShare);
}

export type RideAlong = {
  readonly byNitrogen_kg: number;
  readonly byPhosphate_kg: number;
  /** Phosphate that comes along when nitrogen sets the rate. */
  readonly phosphate_kg: number;
  /** How many times the need that is; `null` where none is needed. */
  readonly phosphateTimesNeed: number | null;
};

/**
 * The phosphate that rides along when nitrogen sets the rate of a compost or manure, and the rate that phosphate alone
 * would set. All P counts. The usual way soils fill up with phosphorus.
 * Source: arithmetic; New England Vegetable Management Guide warns of it.
 */
export function rideAlong(input: {
  readonly nShare: number;
  readonly p2o5Share: number;
  readonly firstYearNShare: number;
  readonly needN_kg: number;
  readonly needP2O5_kg: number;
}): RideAlong {
  const byNitrogen_kg = materialFor_kg(input.needN_kg, input.nShare, input.firstYearNShare);
  const phosphate_kg = byNitrogen_kg * input.p2o5Share;
  return {
    byNitrogen_kg,
    byPhosphate_kg: materialFor_kg(input.needP2O5_kg, input.p2o5Share, 1),
    phosphate_kg,
    phosphateTimesNeed: input.needP2O5_kg > 0 ? phosphate_kg / input.needP2O5_kg : null,
  };
}

/** Nitrogen a dressing brings within reach: mass as is, its dry share, N of dry matter and the share that comes free. */
export function dressingNitrogen(input: {
  readonly dressing_kg: number;
  readonly moistureShare: number;
  readonly nShareOfDry: number;
  readonly availableShare: number;
}): { readonly total_kg: number; readonly available_kg: number } {
  requireRange('dressing_kg', input.dressing_kg, 0, Infinity, 'kg');
  requireRange('moistureShare', input.moistureShare, 0, 1, '');
  requireRange('nShareOfDry', input.nShareOfDry, 0, 1, '');
  requireRange('availableShare', input.availableShare, 0, 1, '');
  const total_kg = input.dressing_kg * (1 - input.moistureShare) * input.nShareOfDry;
  return { total_kg, available_kg: total_kg * input.availableShare };
}
