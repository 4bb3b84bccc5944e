import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  barbK,
  enlargementK,
  equivalentLengthK,
  fittingLoss_m,
  intrudingBarb,
} from '../../../../planner/irrigation/fitting-loss.ts';
import { colebrookFactor, frictionFactor, swameeJainFactor } from '../../../../planner/irrigation/friction-factor.ts';
import { hazenWilliamsLoss_m } from '../../../../planner/irrigation/hazen-williams.ts';
import { headOfPressure_m, pressureOfHead_Pa } from '../../../../planner/irrigation/head-and-pressure.ts';
import { multipleOutletFactor, multipleOutletFactorShort } from '../../../../planner/irrigation/multiple-outlets.ts';
import { explainPipeFriction, pipeFriction } from '../../../../planner/irrigation/pipe-friction.ts';
import { LAW_WIDTH, tubeLoss, writeTubeLaw } from '../../../../planner/irrigation/tube-law.ts';
import { valveK, valvePressureLoss } from '../../../../planner/irrigation/valve-loss.ts';
import { convert } from '../../../../planner/units/convert.ts';

const tube = { id: 't', from: 'a', to: 'b', length_m: 10, insideDiameter_m: 0.0127, roughness_m: 1.5e-6, fittingK: 2.5 };
const lawsOf = (viscosity: number): Float64Array => {
  const laws = new Float64Array(LAW_WIDTH);
  writeTubeLaw(laws, 0, tube, viscosity);
  return laws;
};
const aFlow = fc.double({ min: 1e-7, max: 6e-4, noNaN: true });

describe('friction', () => {
  test('the solver’s tube law is the published formula plus its fittings, both ways round', () => {
    const laws = lawsOf(1.004e-6);
    const out = new Float64Array(2);
    fc.assert(
      fc.property(aFlow, (flow_m3_per_s) => {
        const friction = pipeFriction({ ...tube, flow_m3_per_s, viscosity_m2_per_s: 1.004e-6 });
        tubeLoss(laws, 0, flow_m3_per_s, out);
        expect(out[0]).toBeCloseTo(friction.loss_m + fittingLoss_m(tube.fittingK, friction.velocity_m_per_s), 9);
        const forward = out[0] as number;
        tubeLoss(laws, 0, -flow_m3_per_s, out);
        expect(out[0]).toBe(-forward);
      }),
    );
  });

  test('its slope is the derivative, also in the range between smooth and turbulent', () => {
    const laws = lawsOf(1.004e-6);
    const [low, high, here] = [new Float64Array(2), new Float64Array(2), new Float64Array(2)];
    for (const flow of [1e-6, 1.2e-5, 2.5e-5, 3.5e-5, 5e-5, 2e-4]) {
      const step = flow * 1e-5;
      tubeLoss(laws, 0, flow - step, low);
      tubeLoss(laws, 0, flow + step, high);
      tubeLoss(laws, 0, flow, here);
      expect((here[1] as number) / (((high[0] as number) - (low[0] as number)) / (2 * step))).toBeCloseTo(1, 5);
    }
  });

  test('more flow, more length and less bore lose more head', () => {
    fc.assert(
      fc.property(aFlow, fc.double({ min: 1.01, max: 3, noNaN: true }), (flow_m3_per_s, more) => {
        const loss = (change: object): number =>
          pipeFriction({ ...tube, flow_m3_per_s, viscosity_m2_per_s: 1e-6, ...change }).loss_m;
        expect(loss({ flow_m3_per_s: flow_m3_per_s * more })).toBeGreaterThan(loss({}));
        expect(loss({ length_m: 10 * more })).toBeGreaterThan(loss({}));
        expect(loss({ insideDiameter_m: tube.insideDiameter_m / more })).toBeGreaterThan(loss({}));
      }),
    );
  });

  test('Swamee-Jain stands within 2 % of Colebrook above Re 4000 in smooth small tube (Hydraulic Institute)', () => {
    for (const reynolds of [4000, 10_000, 40_000, 100_000])
      expect(swameeJainFactor(reynolds, 0.00012) / colebrookFactor(reynolds, 0.00012)).toBeCloseTo(1, 1.4);
  });

  test('the law has no step at Re 2000 and 4000', () => {
    for (const edge of [2000, 4000])
      expect(frictionFactor(edge * 1.0001, 0.00012) / frictionFactor(edge * 0.9999, 0.00012)).toBeCloseTo(1, 2);
  });

  test('the working ends in the same head', () => {
    const input = { ...tube, flow_m3_per_s: 2e-4, viscosity_m2_per_s: 1e-6 };
    expect(explainPipeFriction(input).result.value).toBe(pipeFriction(input).loss_m);
  });

  test('Hazen-Williams reads up to a quarter low in half-inch tube at small flows', () => {
    const flow_m3_per_s = convert(60, 'us_gal_per_h', 'm3_per_s');
    const catalogue = hazenWilliamsLoss_m({ flow_m3_per_s, insideDiameter_m: 0.0127, length_m: 100, coefficient: 150 });
    const true_m = pipeFriction({
      flow_m3_per_s,
      insideDiameter_m: 0.0127,
      length_m: 100,
      roughness_m: 1.5e-6,
      viscosity_m2_per_s: 1.004e-6,
    }).loss_m;
    expect(catalogue / true_m).toBeLessThan(0.85);
    expect(catalogue / true_m).toBeGreaterThan(0.75);
  });

  test('each refusal names its field', () => {
    const good = { ...tube, flow_m3_per_s: 1e-4, viscosity_m2_per_s: 1e-6 };
    expect(() => pipeFriction({ ...good, insideDiameter_m: 0 })).toThrowError(/insideDiameter_m/);
    expect(() => pipeFriction({ ...good, length_m: -1 })).toThrowError(/length_m/);
    expect(() => pipeFriction({ ...good, viscosity_m2_per_s: 0 })).toThrowError(/viscosity/);
    expect(() => pipeFriction({ ...good, flow_m3_per_s: -1 })).toThrowError(/flow_m3_per_s/);
  });
});

describe('fittings and valves', () => {
  test('a barb as wide as its tube loses nothing, a narrower one more and more', () => {
    expect(barbK(0.0127, 0.0127)).toBe(0);
    expect(barbK(0.009, 0.0127)).toBeGreaterThan(barbK(0.01, 0.0127));
    expect(() => barbK(0.02, 0.0127)).toThrowError(/wider/);
    expect(enlargementK(0.0127, 0.0127)).toBe(0);
    expect(intrudingBarb(1).lossK).toBe(0);
    expect(() => intrudingBarb(0)).toThrowError(/freeAreaShare/);
  });
  test('an equivalent length is as much tube', () => {
    expect(equivalentLengthK({ equivalentLength_m: 1, insideDiameter_m: 0.0127, reynolds: 1000, roughness_m: 0 })).toBeCloseTo(
      0.064 / 0.0127,
      9,
    );
  });
  test('K from a flow coefficient loses what the coefficient says', () => {
    const flow = convert(2, 'us_gal_per_min', 'm3_per_s');
    const area = (Math.PI / 4) * 0.015 ** 2;
    const byK = fittingLoss_m(valveK(2.712, 0.015), flow / area);
    expect(byK / valvePressureLoss(2.712, flow).loss_m).toBeCloseTo(1, 2);
  });
  test('head and pressure there and back', () => {
    expect(pressureOfHead_Pa(headOfPressure_m(12_345))).toBeCloseTo(12_345, 6);
  });
  test('the short multiple-outlet form keeps within half a percent of the sum from two outlets up', () => {
    for (const outlets of [2, 3, 7, 40])
      for (const m of [1.75, 1.852, 2])
        expect(Math.abs(multipleOutletFactorShort(outlets, m) / multipleOutletFactor(outlets, m) - 1)).toBeLessThan(0.005);
    expect(() => multipleOutletFactor(0, 1.8)).toThrowError(/outlets/);
  });
});
