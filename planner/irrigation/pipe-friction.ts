import { requirePositive, requireRange } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { computed, entry, source, type Working } from '../working.ts';
import { frictionFactor, type Regime, regimeOf } from './friction-factor.ts';
import { reynoldsNumber, velocity_m_per_s, velocityHead_m } from './pipe-flow.ts';

/** Roughness of drawn plastic tube, 0.0015 mm. Source: Hydraulic Institute Table 3.A.1; EPANET 2.2 user manual. */
export const PLASTIC_ROUGHNESS_M = 1.5e-6;

export type PipeFrictionInput = {
  readonly flow_m3_per_s: number;
  readonly insideDiameter_m: number;
  readonly length_m: number;
  readonly roughness_m: number;
  readonly viscosity_m2_per_s: number;
};

export type PipeFriction = {
  readonly loss_m: number;
  readonly velocity_m_per_s: number;
  readonly reynolds: number;
  readonly factor: number;
  readonly regime: Regime;
};

/**
 * Head lost to friction in a straight tube (Darcy-Weisbach).
 *
 *   h = f (L/D) v^2 / (2 g)
 *
 *   h    head lost              m
 *   f    friction factor        -     64/Re, Dunlop's cubic or Swamee-Jain, by the Reynolds number
 *   L    length                 m     0 or more
 *   D    inside diameter        m     above 0; never the name the tube is sold by
 *   v    mean velocity          m/s
 *   g    9.80665                m/s2
 *
 * Between Re 2000 and 4000 nature itself is undecided: take the loss as uncertain by 30 % (common practice, no source).
 * Source: Hydraulic Institute eq. 3.A.1 and its friction table; EPANET 2.2 user manual.
 * @throws InputError naming the field
 */
export function pipeFriction(input: PipeFrictionInput): PipeFriction {
  requireRange('flow_m3_per_s', input.flow_m3_per_s, 0, 100, 'm3/s');
  requireRange('length_m', input.length_m, 0, 1e5, 'm');
  requireRange('roughness_m', input.roughness_m, 0, 0.01, 'm');
  requirePositive('insideDiameter_m', input.insideDiameter_m, 'm');
  const reynolds = reynoldsNumber(input.flow_m3_per_s, input.insideDiameter_m, input.viscosity_m2_per_s);
  const velocity = velocity_m_per_s(input.flow_m3_per_s, input.insideDiameter_m);
  if (reynolds === 0) return { loss_m: 0, velocity_m_per_s: 0, reynolds: 0, factor: 0, regime: 'laminar' };
  const factor = frictionFactor(reynolds, input.roughness_m / input.insideDiameter_m);
  const loss_m = factor * (input.length_m / input.insideDiameter_m) * velocityHead_m(velocity);
  return { loss_m, velocity_m_per_s: velocity, reynolds, factor, regime: regimeOf(reynolds) };
}

const lawOf = (regime: Regime): string => {
  switch (regime) {
    case 'laminar':
      return 'f = 64/Re (smooth flow)';
    case 'transition':
      return "Dunlop's cubic (between smooth and turbulent)";
    case 'turbulent':
      return 'f = 0.25 / [log10(e/3.7 + 5.74/Re^0.9)]^2';
  }
};

/** How {@link pipeFriction} came to its loss. */
export function explainPipeFriction(input: PipeFrictionInput): Working {
  const done = pipeFriction(input);
  return {
    title: 'Head lost to friction in the tube',
    formula: 'h = f (L/D) v^2 / (2 g)',
    symbols: [
      { symbol: 'Q', name: 'flow', figure: { value: input.flow_m3_per_s, unit: 'm3_per_s' }, origin: computed() },
      { symbol: 'D', name: 'inside diameter', figure: { value: input.insideDiameter_m, unit: 'm' }, origin: entry() },
      { symbol: 'L', name: 'length', figure: { value: input.length_m, unit: 'm' }, origin: entry() },
      {
        symbol: 'nu',
        name: 'kinematic viscosity',
        figure: { value: input.viscosity_m2_per_s, unit: 'm2_per_s' },
        origin: computed('from the water temperature'),
      },
      {
        symbol: 'eps',
        name: 'roughness',
        figure: { value: input.roughness_m, unit: 'm' },
        origin: source('Hydraulic Institute Table 3.A.1'),
      },
      {
        symbol: 'g',
        name: 'gravity, in m/s2',
        figure: { value: STANDARD_GRAVITY_M_PER_S2, unit: '' },
        origin: source('standard gravity'),
      },
    ],
    steps: [
      { text: 'velocity, v = Q/A', figures: `Q / (pi/4 D^2)`, result: { value: done.velocity_m_per_s, unit: 'm_per_s' } },
      { text: 'Reynolds number, Re = v D/nu', figures: 'v D / nu', result: { value: done.reynolds, unit: '' } },
      { text: `friction factor, ${lawOf(done.regime)}`, figures: 'e = eps/D', result: { value: done.factor, unit: '' } },
    ],
    result: { value: done.loss_m, unit: 'm' },
    sources: ['Hydraulic Institute, Engineering Data Book, section III', 'EPANET 2.2 user manual, analysis algorithms'],
    notes:
      done.regime === 'transition' ? ['Near the change from smooth to turbulent flow: take the loss as uncertain by 30 %.'] : [],
  };
}
