import { requirePositive, requireRange } from '../errors.ts';

/** A feedstock as handled; nitrogen and carbon are shares of its dry matter. */
export type CompostPart = {
  readonly part_kg: number;
  readonly moistureShare: number;
  readonly nShareOfDry: number;
  readonly carbonToNitrogen: number;
};

export type CompostMix = { readonly mix_kg: number; readonly moistureShare: number; readonly carbonToNitrogen: number };

/**
 * Moisture and C:N of a heap.
 *
 *   G = sum Q M / sum Q      R = sum Q C (1 - M) / sum Q N (1 - M),  C = R N
 *
 *   Q   mass as handled    kg      more than 0 in all
 *   M   moisture           share   0 to 1
 *   N   nitrogen           share of dry matter
 *
 * Source: Cornell Waste Management Institute, Composting in Schools. Water is a part of moisture 1.
 */
export function compostMix(parts: readonly CompostPart[]): CompostMix {
  for (const [at, part] of parts.entries()) {
    requireRange(`parts.${at}.part_kg`, part.part_kg, 0, Infinity, 'kg');
    requireRange(`parts.${at}.moistureShare`, part.moistureShare, 0, 1, '');
    requireRange(`parts.${at}.nShareOfDry`, part.nShareOfDry, 0, 0.6, '');
    requireRange(`parts.${at}.carbonToNitrogen`, part.carbonToNitrogen, 0, 2000, '');
  }
  const mix_kg = sum(parts, (part) => part.part_kg);
  requirePositive('parts', mix_kg, 'kg');
  const nitrogen = sum(parts, (part) => part.part_kg * (1 - part.moistureShare) * part.nShareOfDry);
  const carbon = sum(parts, (part) => part.part_kg * (1 - part.moistureShare) * part.nShareOfDry * part.carbonToNitrogen);
  requirePositive('parts', nitrogen, 'kg N');
  return {
    mix_kg,
    moistureShare: sum(parts, (part) => part.part_kg * part.moistureShare) / mix_kg,
    carbonToNitrogen: carbon / nitrogen,
  };
}

/** Carbon and nitrogen of a heap whose analyses are shares of the mass as handled. Source: definition. */
export function heapCarbonToNitrogen(
  parts: readonly { readonly part_kg: number; readonly carbonShare: number; readonly nShare: number }[],
): { readonly carbon_kg: number; readonly nitrogen_kg: number; readonly carbonToNitrogen: number } {
  const carbon_kg = sum(parts, (part) => part.part_kg * part.carbonShare);
  const nitrogen_kg = sum(parts, (part) => part.part_kg * part.nShare);
  requirePositive('parts', nitrogen_kg, 'kg N');
  return { carbon_kg, nitrogen_kg, carbonToNitrogen: carbon_kg / nitrogen_kg };
}

/** Moisture of a sample by drying: (wet - dry)/wet, share. */
export function sampleMoistureShare(wet_kg: number, dry_kg: number): number {
  requirePositive('wet_kg', wet_kg, 'kg');
  requireRange('dry_kg', dry_kg, 0, wet_kg, 'kg');
  return (wet_kg - dry_kg) / wet_kg;
}

const sum = <T>(list: readonly T[], of: (each: T) => number): number => list.reduce((total, each) => total + of(each), 0);
