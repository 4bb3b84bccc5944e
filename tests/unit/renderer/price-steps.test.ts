import { expect, test } from 'vitest';
import { priceSteps } from '../../../renderer/places/library/price-steps.ts';

test('prices stand oldest first, one a day, the present one last', () => {
  const earlier = [
    { date: '2026-05-01', price_minor: 4600 },
    { date: '2025-11-02', price_minor: 4400 },
    { date: '2024-10-12', price_minor: 4100 },
  ];
  expect(priceSteps(earlier, { date: '2026-11-25', price_minor: 4900 }).map((each) => each.price_minor)).toEqual([
    4100, 4400, 4600, 4900,
  ]);
  expect(priceSteps(earlier, { date: '2026-05-01', price_minor: 4700 }).map((each) => each.price_minor)).toEqual([
    4100, 4400, 4700,
  ]);
  expect(priceSteps([], { date: '2026-11-25', price_minor: 4900 })).toEqual([{ date: '2026-11-25', price_minor: 4900 }]);
});
