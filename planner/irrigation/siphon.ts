import { requirePositive, requireRange } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { convert } from '../units/convert.ts';
import { boreArea_m2, squareLaw_s2_per_m5 } from './pipe-flow.ts';
import { pipeFriction } from './pipe-friction.ts';

/** Height of a crest over the water beyond which a siphon breaks by itself, about 7 m (common practice, no source). */
export const SIPHON_CREST_LIMIT_M = 7;

export type SiphonTest = { readonly siphons: boolean; readonly drivingHead_m: number };

/**
 * Whether a line goes on running through the resting pump: the outlet lies below the water and no air is let in.
 * Judge it at the highest water level and the lowest outlet. Source: hydrostatics.
 * @throws InputError naming the field
 */
export function siphonTest(input: {
  readonly outletElevation_m: number;
  readonly reservoirLevel_m: number;
  readonly vented: boolean;
}): SiphonTest {
  requireRange('outletElevation_m', input.outletElevation_m, -1000, 9000, 'm');
  requireRange('reservoirLevel_m', input.reservoirLevel_m, -1000, 9000, 'm');
  const drivingHead_m = Math.max(0, input.reservoirLevel_m - input.outletElevation_m);
  return { siphons: drivingHead_m > 0 && !input.vented, drivingHead_m };
}

/**
 * Water that a siphon can take: the level falls until it meets the outlet or the inlet, whichever is higher.
 * Source: hydrostatics.
 * @throws InputError naming the field
 */
export function siphonLoss_L(input: {
  readonly reservoirArea_m2: number;
  readonly reservoirLevel_m: number;
  readonly outletElevation_m: number;
  readonly inletElevation_m: number;
}): number {
  requireRange('reservoirArea_m2', input.reservoirArea_m2, 0, 1e6, 'm2');
  const end_m = Math.max(input.outletElevation_m, input.inletElevation_m);
  return convert(input.reservoirArea_m2 * Math.max(0, input.reservoirLevel_m - end_m), 'm3', 'L');
}

export type SingleTube = {
  readonly drivingHead_m: number;
  readonly length_m: number;
  readonly insideDiameter_m: number;
  readonly lossK: number;
  readonly roughness_m: number;
  readonly viscosity_m2_per_s: number;
};

/**
 * Flow of one tube between two levels: H = (f L/D + K) v^2/(2 g), found by bisection, since the loss rises with the flow.
 * The resting pump's own loss is left out, so for a siphon it is an upper bound.
 * Source: energy balance with Darcy-Weisbach.
 * @throws InputError naming the field
 */
export function singleTubeFlow_m3_per_s(tube: SingleTube): number {
  requireRange('drivingHead_m', tube.drivingHead_m, 0, 1000, 'm');
  requirePositive('length_m', tube.length_m, 'm');
  if (tube.drivingHead_m === 0) return 0;
  const resistance = squareLaw_s2_per_m5(tube.lossK, tube.insideDiameter_m);
  const loss = (flow: number) => pipeFriction({ ...tube, flow_m3_per_s: flow }).loss_m + resistance * flow ** 2;
  let low = 0;
  let high = 1e-6;
  while (loss(high) < tube.drivingHead_m) high *= 2;
  for (let step = 0; step < 200 && high - low > 1e-15 * high; step += 1) {
    const middle = (low + high) / 2;
    if (loss(middle) < tube.drivingHead_m) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Discharge coefficient of a sharp hole, 0.6 (memory). */
export const HOLE_COEFFICIENT = 0.6;

/**
 * Leak of a vent hole while the pump runs, Q = Cd A sqrt(2 g H). It falls back into the reservoir; count it.
 *
 *   Cd   discharge coefficient   -   0.6 for a sharp hole
 *   H    pressure at the hole    m
 *
 * 1/8 to 3/16 in is the trade's pump relief hole. Source: orifice formula, from memory.
 * @throws InputError naming the field
 */
export function ventLeak_m3_per_s(hole_m: number, head_m: number, dischargeCoefficient = HOLE_COEFFICIENT): number {
  requireRange('head_m', head_m, 0, 1000, 'm');
  requireRange('dischargeCoefficient', dischargeCoefficient, 0, 1, '');
  return dischargeCoefficient * boreArea_m2(hole_m) * Math.sqrt(2 * STANDARD_GRAVITY_M_PER_S2 * head_m);
}
