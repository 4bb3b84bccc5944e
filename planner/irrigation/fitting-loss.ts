import { refuse, requirePositive, requireRange } from '../errors.ts';
import { frictionFactor } from './friction-factor.ts';
import { velocityHead_m } from './pipe-flow.ts';

/**
 * Loss coefficients on the velocity in the named tube. They scatter by 25 % for tees and 50 % for couplings
 * (Hydraulic Institute), so results carry two figures.
 * Source: EPANET 2.2 user manual, minor loss table; the open small in-line valve is common practice, no source (5 to 20).
 */
export const FITTING_K = {
  teeRun: 0.6,
  teeBranch: 1.8,
  squareEntrance: 0.5,
  exit: 1,
  shortElbow: 0.9,
  gateValveOpen: 0.2,
  globeValveOpen: 10,
  smallInlineValveOpen: 15,
} as const;

/** Head lost in a fitting, h = K v2/(2g). Source: EPANET 2.2 user manual. @throws InputError on a negative K */
export function fittingLoss_m(lossK: number, velocity: number): number {
  requireRange('lossK', lossK, 0, 1e12, '');
  return lossK * velocityHead_m(velocity);
}

export type EquivalentLengthInput = {
  readonly equivalentLength_m: number;
  readonly insideDiameter_m: number;
  readonly reynolds: number;
  readonly roughness_m: number;
};

/**
 * Loss coefficient of a fitting that a maker gives as a length of tube, K = f Le/D.
 * Source: definition; half-inch plastic tee, run 1.0 ft and branch 3.8 ft: a fittings maker's engineering sheet (withheld).
 * @throws InputError naming the field
 */
export function equivalentLengthK(input: EquivalentLengthInput): number {
  requireRange('equivalentLength_m', input.equivalentLength_m, 0, 1000, 'm');
  requirePositive('insideDiameter_m', input.insideDiameter_m, 'm');
  const factor = frictionFactor(input.reynolds, input.roughness_m / input.insideDiameter_m);
  return (factor * input.equivalentLength_m) / input.insideDiameter_m;
}

function boreRatio(bore_m: number, insideDiameter_m: number): number {
  requirePositive('bore_m', bore_m, 'm');
  requirePositive('insideDiameter_m', insideDiameter_m, 'm');
  if (bore_m > insideDiameter_m)
    refuse('bore_m', 'wider-than-tube', `bore_m: a bore of ${bore_m} m is wider than its tube of ${insideDiameter_m} m.`);
  return bore_m / insideDiameter_m;
}

/**
 * Sudden enlargement after a bore, K = (1 - b2)2 on the velocity in the bore; b is bore over tube diameter.
 * Source: Hydraulic Institute eq. 3.B.3c with coefficient 1.
 * @throws InputError when the bore is wider than the tube
 */
export function enlargementK(bore_m: number, insideDiameter_m: number): number {
  return (1 - boreRatio(bore_m, insideDiameter_m) ** 2) ** 2;
}

/**
 * A barbed fitting that narrows the tube, on the velocity in the tube.
 *
 *   K = [0.5 (1 - b^2) + (1 - b^2)^2] / b^4       b = bore / inside diameter, above 0 to 1
 *
 * b = 0.75 gives 1.3; a sharper contraction formula gives 1.6.
 * Source: enlargement Hydraulic Institute eq. 3.B.3c; contraction 0.5 (1 - b2) a textbook form, from memory.
 * @throws InputError when the bore is wider than the tube
 */
export function barbK(bore_m: number, insideDiameter_m: number): number {
  const b = boreRatio(bore_m, insideDiameter_m);
  return (0.5 * (1 - b ** 2) + (1 - b ** 2) ** 2) / b ** 4;
}

/**
 * A barb pushed through the wall of a drip tube, K = 1.23 IO^0.51 with the obstruction index IO = ((1-r)/r)2.
 *
 *   r   free area over tube area   -   above 0 to 1;   6000 < Re < 72000
 *
 * Source: BIOENG (UNESP Tupa), abstract; the index from memory.
 * @throws InputError naming the field
 */
export function intrudingBarb(freeAreaShare: number): { readonly obstructionIndex: number; readonly lossK: number } {
  requirePositive('freeAreaShare', freeAreaShare, '');
  requireRange('freeAreaShare', freeAreaShare, 0, 1, '');
  const obstructionIndex = ((1 - freeAreaShare) / freeAreaShare) ** 2;
  return { obstructionIndex, lossK: 1.23 * obstructionIndex ** 0.51 };
}
