import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastSquaresParabola, parabolaMeetsSystem } from '../../../../planner/irrigation/operating-point.ts';
import { inParallel, mostFlow_m3_per_s, pumpCurve, pumpHead, shutoffHead_m } from '../../../../planner/irrigation/pump-curve.ts';
import { current_A, pumpEfficiency, tradePumpPower, waterPower_W } from '../../../../planner/irrigation/pump-power.ts';
import { atSpeed } from '../../../../planner/irrigation/pump-speed.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { smallPumpPoints } from '../../../builders/a-line.ts';

const smallFlow = (flow: number): number => convert(flow, 'L_per_h', 'm3_per_s');
const faultsOf = (work: () => unknown): readonly string[] => {
  try {
    work();
  } catch (error) {
    return (error as { faults: readonly { path: string; code: string }[] }).faults.map((fault) => `${fault.path} ${fault.code}`);
  }
  return [];
};

describe('a pump’s curve', () => {
  test('goes through each of its points, whichever way it is known', () => {
    for (const kind of ['three-points', 'points'] as const) {
      const curve = pumpCurve(kind, smallPumpPoints);
      for (const point of smallPumpPoints)
        expect(pumpHead(curve, smallFlow(point.flow_L_per_h)).head_m).toBeCloseTo(point.head_m, 9);
      expect(convert(mostFlow_m3_per_s(curve), 'm3_per_s', 'L_per_h')).toBeCloseTo(1514, 6);
    }
  });

  test('falls everywhere, and its slope is the derivative', () => {
    for (const kind of ['three-points', 'points'] as const) {
      const curve = pumpCurve(kind, smallPumpPoints);
      fc.assert(
        fc.property(fc.double({ min: 20, max: 1500, noNaN: true }), (flow) => {
          const q = smallFlow(flow);
          const step = q * 1e-6;
          const measured = (pumpHead(curve, q + step).head_m - pumpHead(curve, q - step).head_m) / (2 * step);
          expect(measured).toBeLessThan(0);
          if (Math.abs(flow - 950) > 1) expect(pumpHead(curve, q).slope / measured).toBeCloseTo(1, 4);
        }),
      );
    }
  });

  test('known by the box alone it is a guess and a parabola', () => {
    const curve = pumpCurve('rated', [
      { flow_L_per_h: 1514, head_m: 0 },
      { flow_L_per_h: 0, head_m: 2.2 },
    ]);
    expect(curve.guess).toBe(true);
    expect(shutoffHead_m(curve)).toBeCloseTo(2.2, 12);
    expect(pumpHead(curve, smallFlow(757)).head_m).toBeCloseTo(2.2 * 0.75, 9);
  });

  test('two pumps side by side give twice the flow at one head', () => {
    for (const kind of ['three-points', 'points'] as const) {
      const one = pumpCurve(kind, smallPumpPoints);
      const two = inParallel(one, 2);
      expect(pumpHead(two, smallFlow(1900)).head_m).toBeCloseTo(pumpHead(one, smallFlow(950)).head_m, 9);
      expect(mostFlow_m3_per_s(two)).toBeCloseTo(2 * mostFlow_m3_per_s(one), 9);
    }
    expect(faultsOf(() => inParallel(pumpCurve('points', smallPumpPoints), 1.5))).toEqual(['count not-whole']);
  });

  test('what cannot be a curve is refused at its point', () => {
    expect(faultsOf(() => pumpCurve('points', [{ flow_L_per_h: 0, head_m: 2 }]))).toEqual(['points too-few']);
    expect(faultsOf(() => pumpCurve('one-point', smallPumpPoints))).toEqual(['points too-many']);
    expect(
      faultsOf(() =>
        pumpCurve('points', [
          { flow_L_per_h: 0, head_m: 2 },
          { flow_L_per_h: 500, head_m: 2 },
        ]),
      ),
    ).toEqual(['points.1.head_m does-not-fall']);
    expect(
      faultsOf(() =>
        pumpCurve('points', [
          { flow_L_per_h: -1, head_m: 2 },
          { flow_L_per_h: 500, head_m: 1 },
        ]),
      ),
    ).toContain('points.0.flow_L_per_h too-small');
    for (const head_m of [-1, Number.NaN])
      expect(
        faultsOf(() =>
          pumpCurve('points', [
            { flow_L_per_h: 0, head_m: 2 },
            { flow_L_per_h: 500, head_m },
          ]),
        ),
      ).toContain('points.1.head_m too-small');
    const late = smallPumpPoints.map((point) => ({ ...point, flow_L_per_h: point.flow_L_per_h + 100 }));
    expect(faultsOf(() => pumpCurve('three-points', late))).toEqual(['points.0.flow_L_per_h shut-off-needed']);
    expect(
      faultsOf(() =>
        pumpCurve('rated', [
          { flow_L_per_h: 0, head_m: 2 },
          { flow_L_per_h: 100, head_m: 1 },
        ]),
      ),
    ).toEqual(['points rating-needed']);
    expect(faultsOf(() => pumpCurve('one-point', [{ flow_L_per_h: 0, head_m: 1 }]))).toEqual([
      'points.0.flow_L_per_h not-positive',
    ]);
  });
});

describe('operating point, power and speed', () => {
  test('a least-squares parabola through points of a parabola is that parabola', () => {
    const fit = leastSquaresParabola([0, 1, 2, 3].map((flow) => ({ flow, head: 10 - 0.7 * flow ** 2 })));
    expect(fit.shutoff).toBeCloseTo(10, 12);
    expect(fit.curvature).toBeCloseTo(-0.7, 12);
    expect(faultsOf(() => leastSquaresParabola([{ flow: 1, head: 1 }]))).toEqual(['points too-few']);
  });
  test('a lift beyond the pump is refused with how far', () => {
    expect(() => parabolaMeetsSystem({ shutoff: 2, curvature: -1 }, { staticLift: 2.5, coefficient: 1 })).toThrowError(
      /0.500 above/,
    );
    expect(faultsOf(() => parabolaMeetsSystem({ shutoff: 2, curvature: 1 }, { staticLift: 1, coefficient: 0.5 }))).toEqual([
      'coefficient does-not-fall',
    ]);
  });
  test('the trade’s horsepower and the SI form agree within the rounding of 3960', () => {
    const flow = convert(500, 'us_gal_per_min', 'm3_per_s');
    const watts = waterPower_W(flow, convert(120, 'ft', 'm'), 999);
    expect(tradePumpPower(flow, convert(120, 'ft', 'm'), 1).water_hp * 745.7).toBeCloseTo(watts, -2);
    expect(pumpEfficiency(watts, watts * 2)).toBeCloseTo(0.5, 12);
    expect(() => tradePumpPower(flow, 1, 0)).toThrowError(/efficiency/);
    expect(() => current_A(10, 0)).toThrowError(/volts/);
  });
  test('speed there and back is where it began', () => {
    expect(atSpeed(0.8).headRatio * atSpeed(1.25).headRatio).toBeCloseTo(1, 12);
    expect(() => atSpeed(-1)).toThrowError(/speedRatio/);
  });
});
