import { refuse, requireRange } from '../errors.ts';

/**
 * Mass of a second material that brings the first to a wanted moisture.
 *
 *   Q2 = Q1 (G - M1)/(M2 - G)      kg; shares 0 to 1
 *
 * Source: Cornell Waste Management Institute. @throws InputError when the goal does not lie between the two
 */
export function secondForMoisture_kg(input: {
  readonly first_kg: number;
  readonly firstMoistureShare: number;
  readonly secondMoistureShare: number;
  readonly goalShare: number;
}): number {
  requireRange('first_kg', input.first_kg, 0, Infinity, 'kg');
  requireRange('goalShare', input.goalShare, 0, 1, '');
  const second = (input.first_kg * (input.goalShare - input.firstMoistureShare)) / (input.secondMoistureShare - input.goalShare);
  return possible(second, 'goalShare', 'moisture');
}

/** A material of two in a C:N goal, shares of dry matter. */
export type CarbonNitrogenPart = {
  readonly moistureShare: number;
  readonly nShareOfDry: number;
  readonly carbonToNitrogen: number;
};

/**
 * Mass of a second material that brings the first to a wanted C:N.
 *
 *   Q2 = Q1 N1 (R - R1)(1 - M1) / (N2 (R2 - R)(1 - M2))
 *
 * Source: Cornell Waste Management Institute. @throws InputError when the goal does not lie between the two
 */
export function secondForCarbonNitrogen_kg(
  first_kg: number,
  first: CarbonNitrogenPart,
  second: CarbonNitrogenPart,
  goalCarbonToNitrogen: number,
): number {
  requireRange('first_kg', first_kg, 0, Infinity, 'kg');
  requireRange('goalCarbonToNitrogen', goalCarbonToNitrogen, 1, 500, '');
  const top = first_kg * first.nShareOfDry * (goalCarbonToNitrogen - first.carbonToNitrogen) * (1 - first.moistureShare);
  const under = second.nShareOfDry * (second.carbonToNitrogen - goalCarbonToNitrogen) * (1 - second.moistureShare);
  return possible(top / under, 'goalCarbonToNitrogen', 'C:N');
}

function possible(mass_kg: number, path: string, what: string): number {
  if (Number.isFinite(mass_kg) && mass_kg >= 0) return mass_kg;
  return refuse(path, 'out-of-reach', `${path}: the wanted ${what} does not lie between those of the two materials.`);
}

export type TwoGoals =
  | { readonly feasible: true; readonly second_kg: number; readonly third_kg: number }
  | {
      readonly feasible: false;
      /** What the equations give; a mass below zero cannot be. `null` where they have no single answer. */
      readonly second_kg: number | null;
      readonly third_kg: number | null;
      readonly because: 'negative-mass' | 'no-single-answer';
    };

/**
 * Masses of two materials that bring a first to a moisture and a C:N together.
 *
 *   sum Q (M - G) = 0      sum Q (1 - M) N (R_i - R) = 0
 *
 * two linear equations in Q2 and Q3. A negative mass means that the pair of goals cannot be met with these materials.
 * Source: as {@link secondForMoisture_kg}; solved by Cramer's rule.
 */
export function twoCompostGoals(
  first_kg: number,
  parts: readonly [CarbonNitrogenPart, CarbonNitrogenPart, CarbonNitrogenPart],
  goalMoistureShare: number,
  goalCarbonToNitrogen: number,
): TwoGoals {
  requireRange('first_kg', first_kg, 0, Infinity, 'kg');
  requireRange('goalMoistureShare', goalMoistureShare, 0, 1, '');
  requireRange('goalCarbonToNitrogen', goalCarbonToNitrogen, 1, 500, '');
  const wet = parts.map((part) => part.moistureShare - goalMoistureShare);
  const rich = parts.map((part) => (1 - part.moistureShare) * part.nShareOfDry * (part.carbonToNitrogen - goalCarbonToNitrogen));
  const [w1 = 0, w2 = 0, w3 = 0] = wet;
  const [r1 = 0, r2 = 0, r3 = 0] = rich;
  const determinant = w2 * r3 - w3 * r2;
  const scale = Math.abs(w2 * r3) + Math.abs(w3 * r2);
  if (Math.abs(determinant) <= 1e-9 * scale || scale === 0)
    return { feasible: false, second_kg: null, third_kg: null, because: 'no-single-answer' };
  const second_kg = (first_kg * (w3 * r1 - w1 * r3)) / determinant;
  const third_kg = (first_kg * (w1 * r2 - w2 * r1)) / determinant;
  if (second_kg < 0 || third_kg < 0) return { feasible: false, second_kg, third_kg, because: 'negative-mass' };
  return { feasible: true, second_kg, third_kg };
}
