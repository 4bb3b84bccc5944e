import { expect, test } from 'vitest';
import { addDays, type IsoDate } from '../../../../planner/calendar.ts';
import { isStalePrice } from '../../../../planner/orders/stale-price.ts';

const today = '2026-11-25' as IsoDate;

test('a price is asked for again after half a year, not before', () => {
  expect(isStalePrice(today, today)).toBe(false);
  expect(isStalePrice(addDays(today, -183), today)).toBe(false);
  expect(isStalePrice(addDays(today, -184), today)).toBe(true);
  expect(isStalePrice(addDays(today, 10), today)).toBe(false);
});
