import { expect, test } from 'vitest';
import { printQuantity } from '../../../../planner/units/print.ts';
import { tradeUnit } from '../../../../planner/units/trade-unit.ts';

// NIST Handbook 44, appendix C: 1 yd³ = 764.554 858 L, 1 ft³ = 28.316 847 L, 1 US gal = 3.785 412 L
test.each([
  [2 * 764.554858, '2 yd³'],
  [10 * 28.316847, '10 ft³'],
  [5 * 3.785412, '5 gal'],
])('loose material, %d L, is told to a US reader as the trade sells it', (volume_L, said) => {
  expect(printQuantity(volume_L, tradeUnit('L'), 'us')).toBe(said);
});

test('loose material is told to a metric reader in litres and cubic metres; what is weighed or counted stays', () => {
  expect(printQuantity(320, tradeUnit('L'), 'metric')).toBe('320 L');
  expect(printQuantity(1500, tradeUnit('L'), 'metric')).toBe('1.5 m³');
  expect(['kg', 'count', 'm', 'm2'].map(tradeUnit)).toEqual(['kg', 'count', 'm', 'm2']);
});
