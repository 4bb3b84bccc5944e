import { requirePositive, requireRange } from '../errors.ts';

/** Smooth (laminar), in between, and fully turbulent flow. */
export type Regime = 'laminar' | 'transition' | 'turbulent';

export const LAMINAR_BELOW_RE = 2000;
export const TURBULENT_ABOVE_RE = 4000;

/**
 * Which law of friction holds. Between Re 2000 and 4000 the flow is not well determined in nature; show such a run as
 * uncertain by 30 % (common practice, no source).
 * Source: EPANET 2.2 user manual, analysis algorithms; Hydraulic Institute eq. 3.A.5.
 */
export function regimeOf(reynolds: number): Regime {
  if (reynolds < LAMINAR_BELOW_RE) return 'laminar';
  return reynolds > TURBULENT_ABOVE_RE ? 'turbulent' : 'transition';
}

/** Friction factor of smooth flow, f = 64/Re. Source: Hydraulic Institute eq. 3.A.5. */
export function laminarFactor(reynolds: number): number {
  requirePositive('reynolds', reynolds, '');
  return 64 / reynolds;
}

/**
 * Turbulent friction factor, explicit.
 *
 *   f = 0.25 / [log10(e/3.7 + 5.74/Re^0.9)]^2
 *
 *   e    roughness over diameter   -   0 to 0.05
 *   Re   Reynolds number           -   above 4000
 *
 * 1.7 % above Colebrook at Re 4000, within 0.4 % from Re 10000 up.
 * Source: Swamee and Jain; EPANET 2.2 user manual; Hydraulic Institute eq. 3.A.3.
 * @throws InputError naming the value out of range
 */
export function swameeJainFactor(reynolds: number, relativeRoughness: number): number {
  requirePositive('reynolds', reynolds, '');
  requireRange('relativeRoughness', relativeRoughness, 0, 0.5, '');
  return 0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/**
 * Dunlop's cubic between Re 2000 and 4000, continuous with both laws.
 * Source: EPANET 2.2 user manual, analysis algorithms chapter.
 * @throws InputError naming the value out of range
 */
export function transitionFactor(reynolds: number, relativeRoughness: number): number {
  requirePositive('reynolds', reynolds, '');
  requireRange('relativeRoughness', relativeRoughness, 0, 0.5, '');
  const [x1, x2, x3, x4] = transitionCubic(relativeRoughness);
  const r = reynolds / LAMINAR_BELOW_RE;
  return x1 + r * (x2 + r * (x3 + r * x4));
}

/** The four coefficients of {@link transitionFactor} in R = Re/2000. */
export function transitionCubic(relativeRoughness: number): readonly [number, number, number, number] {
  const e = relativeRoughness / 3.7 + 5.74 / TURBULENT_ABOVE_RE ** 0.9;
  const y = -0.86859 * Math.log(e);
  const fa = y ** -2;
  const fb = fa * (2 - 0.00514215 / (e * y));
  return [7 * fa - fb, 0.128 - 17 * fa + 2.5 * fb, -0.128 + 13 * fa - 2 * fb, 0.032 - 3 * fa + 0.5 * fb];
}

/** Friction factor at any Reynolds number: 64/Re, Dunlop's cubic or Swamee-Jain. */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  switch (regimeOf(reynolds)) {
    case 'laminar':
      return laminarFactor(reynolds);
    case 'transition':
      return transitionFactor(reynolds, relativeRoughness);
    case 'turbulent':
      return swameeJainFactor(reynolds, relativeRoughness);
  }
}

/**
 * Colebrook's implicit turbulent factor, the reference that {@link swameeJainFactor} approximates.
 *
 *   1/sqrt f = -2 log10(e/3.7 + 2.51/(Re sqrt f))
 *
 * Solved by Newton on x = 1/sqrt f from the explicit value; at most 30 steps.
 * Source: Hydraulic Institute eq. 3.A.2.
 * @throws InputError naming the value out of range
 */
export function colebrookFactor(reynolds: number, relativeRoughness: number): number {
  let x = 1 / Math.sqrt(swameeJainFactor(reynolds, relativeRoughness));
  for (let step = 0; step < 30; step += 1) {
    const inner = relativeRoughness / 3.7 + (2.51 * x) / reynolds;
    const off = x + 2 * Math.log10(inner);
    const slope = 1 + (2 * 2.51) / (reynolds * inner * Math.LN10);
    x -= off / slope;
    if (Math.abs(off) < 1e-14 * x) break;
  }
  return x ** -2;
}

/** Smooth-wall factor f = 0.316 Re^-0.25 (Blasius, from memory); about 5 % high for small polyethylene tube. */
export function blasiusFactor(reynolds: number): number {
  requirePositive('reynolds', reynolds, '');
  return 0.316 * reynolds ** -0.25;
}

/**
 * Measured small polyethylene tube, f = 0.300 Re^-0.25; bores 10 to 19.7 mm, Re 6000 to 72000.
 * Source: BIOENG (UNESP Tupa), head loss in small polyethylene pipes with barb connectors, abstract.
 */
export function smallTubeFactor(reynolds: number): number {
  requirePositive('reynolds', reynolds, '');
  return 0.3 * reynolds ** -0.25;
}
