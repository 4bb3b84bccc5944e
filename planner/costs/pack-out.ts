import { requirePositive, requireRange } from '../errors.ts';

/**
 * What of a harvest can be packed, and what of that is sold.
 *
 *   packed = harvested (1 - culls);   sold = packed (1 - unsold)
 *
 * Source: Rutgers Snyder Farm (17 % culls organic, 37 % integrated); University of Maryland calls the rest shrinkage.
 * @throws InputError naming the field
 */
export function packOut(input: { readonly harvested_kg: number; readonly cullShare: number; readonly unsoldShare: number }): {
  readonly packed_kg: number;
  readonly sold_kg: number;
  readonly soldShare: number;
} {
  requireRange('harvested_kg', input.harvested_kg, 0, Infinity, 'kg');
  requireRange('cullShare', input.cullShare, 0, 1, '');
  requireRange('unsoldShare', input.unsoldShare, 0, 1, '');
  const packed = input.harvested_kg * (1 - input.cullShare);
  return {
    packed_kg: packed,
    sold_kg: packed * (1 - input.unsoldShare),
    soldShare: (1 - input.cullShare) * (1 - input.unsoldShare),
  };
}

/**
 * What a person brings in an hour: amount over people times hours. Holds for the crew and crop it came from.
 *
 * Checked with a harvest morning told by Grubinger, Sustainable Vegetable Production from Start-Up to Market (143 lb).
 * @throws InputError naming the field
 */
export function perPersonHour(amount: number, people: number, hours_h: number): number {
  requirePositive('people', people, '');
  requirePositive('hours_h', hours_h, 'h');
  return amount / (people * hours_h);
}

/** Yield on a length of row: `yield by area x row spacing x length`. @throws InputError naming the field */
export function yieldOnRow_kg(yield_kg_per_m2: number, rowSpacing_m: number, length_m: number): number {
  requireRange('yield_kg_per_m2', yield_kg_per_m2, 0, Infinity, 'kg/m2');
  requirePositive('rowSpacing_m', rowSpacing_m, 'm');
  return yield_kg_per_m2 * rowSpacing_m * length_m;
}

/** Packages that an amount fills, parts of one included. @throws InputError naming the field */
export function packagesOf(amount: number, packageAmount: number): number {
  requirePositive('packageAmount', packageAmount, '');
  return amount / packageAmount;
}

/** Weight of filled packages: `packages x net weight of one`. @throws InputError naming the field */
export function packedWeight_kg(packages: number, net_kg: number): number {
  requireRange('packages', packages, 0, Infinity, '');
  requireRange('net_kg', net_kg, 0, Infinity, 'kg');
  return packages * net_kg;
}

/** Hours of all labour classes together. */
export function totalHours_h(hours_h: readonly number[]): number {
  return hours_h.reduce((sum, each) => sum + each, 0);
}

/**
 * A harvest known only as a share of another way of growing, and what of it can be packed:
 * `harvested = other x share`, `marketable = harvested (1 - culls)`.
 *
 * Source: Rutgers Snyder Farm tomatoes, organic against conventional (54 %, 17 % culls).
 * @throws InputError naming the field
 */
export function relativeHarvest_kg(
  other_kg: number,
  yieldShare: number,
  cullShare: number,
): { readonly harvested_kg: number; readonly marketable_kg: number } {
  requireRange('yieldShare', yieldShare, 0, 10, '');
  const harvested = other_kg * yieldShare;
  return { harvested_kg: harvested, marketable_kg: packOut({ harvested_kg: harvested, cullShare, unsoldShare: 0 }).packed_kg };
}
