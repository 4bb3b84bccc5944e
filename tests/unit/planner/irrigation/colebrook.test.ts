import { expect, test } from 'vitest';
import { colebrookFactor } from '../../../../planner/irrigation/friction-factor.ts';

test('Colebrook’s factor at Re 100000 and relative roughness 0.0001 (Hydraulic Institute eq. 3.A.2; value from the open library fluids 1.3.1)', () => {
  expect(Math.abs(colebrookFactor(100_000, 0.0001) / 0.0185138661 - 1)).toBeLessThan(1e-6);
});
