import fc from 'fast-check';
import { expect, test } from 'vitest';
import { explainOrderLine, fewestPackages, leftForLine, type OrderLineInput } from '../../../../planner/orders/line-working.ts';

const line = (change: Partial<OrderLineInput>): OrderLineInput => ({
  material: 'Yard compost',
  package: 'bag',
  unit: 'L',
  needs: [
    { reason: 'top-up of A-01', amount: 100 },
    { reason: 'top-up of A-02', amount: 60 },
  ],
  onHand: 30,
  onTheWay: 0,
  otherPackages: 0,
  packageAmount: 28.317,
  packages: 5,
  price_minor: 620,
  ...change,
});

test('needs less stock, in whole packages (130 L in bags of 1 cu ft is five)', () => {
  expect(leftForLine(line({}))).toBe(130);
  expect(fewestPackages(line({}))).toBe(5);
  expect(explainOrderLine(line({})).result.value).toBe(5);
  expect(explainOrderLine(line({})).notes).toEqual([]);
});

test('more or fewer packages than needed are said', () => {
  expect(explainOrderLine(line({ packages: 6 })).notes[0]).toMatch(/More than the fewest/);
  expect(explainOrderLine(line({ packages: 4 })).notes[0]).toMatch(/Fewer than the needs/);
});

test('the fewest packages cover what is left, and one less does not', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0.1, max: 500, noNaN: true }), { minLength: 1 }),
      fc.double({ min: 0, max: 800, noNaN: true }),
      fc.double({ min: 1, max: 200, noNaN: true }),
      (amounts, onHand, packageAmount) => {
        const input = line({ needs: amounts.map((amount) => ({ reason: 'x', amount })), onHand, packageAmount });
        const n = fewestPackages(input);
        expect(n * packageAmount).toBeGreaterThanOrEqual(leftForLine(input) - 1e-6);
        if (n > 0) expect((n - 1) * packageAmount).toBeLessThan(leftForLine(input));
      },
    ),
  );
});
