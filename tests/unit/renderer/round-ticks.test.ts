import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundTicks } from '../../../renderer/charts/round-ticks.ts';

describe('round numbers along an axis', () => {
  it.each([
    [0, 0.22, [0, 0.05, 0.1, 0.15, 0.2, 0.25]],
    [0, 3.6, [0, 1, 2, 3, 4]],
    [0, 180, [0, 50, 100, 150, 200]],
    [-3530, 11_400, [-5000, 0, 5000, 10_000, 15_000]],
    [0, 0, [0, 1]],
    [40, 40, [0, 10, 20, 30, 40]],
  ])('from %d to %d', (low, high, ticks) => {
    expect(roundTicks(low, high, 5)).toEqual(ticks);
  });

  it('reaches round both ends in equal steps, with no more than two steps over the wish', () => {
    const end = fc.double({ min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(end, fc.double({ min: 1e-3, max: 1e6, noNaN: true }), fc.integer({ min: 2, max: 9 }), (low, span, count) => {
        const high = low + span;
        const ticks = roundTicks(low, high, count);
        const steps = ticks.slice(1).map((each, at) => each - (ticks[at] ?? 0));
        const step = Math.max(...steps);
        expect(ticks[0]).toBeLessThanOrEqual(low + step * 1e-6);
        expect(ticks.at(-1)).toBeGreaterThanOrEqual(high - step * 1e-6);
        expect(ticks.length).toBeLessThanOrEqual(count + 3);
        for (const each of steps) expect(each).toBeCloseTo(step, Math.max(0, 3 - Math.floor(Math.log10(step))));
      }),
    );
  });
});
