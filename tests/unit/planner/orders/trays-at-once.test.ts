import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, type IsoDate } from '../../../../planner/calendar.ts';
import { mostTraysAtOnce, type StandingTrays } from '../../../../planner/orders/trays-at-once.ts';

const start = '2027-02-01' as IsoDate;
const standing = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 9 }))
  .map(([from, stay, trays]): StandingTrays => ({ from: addDays(start, from), to: addDays(start, from + stay), trays }));

test('the most trays at once are those of the busiest day, looked at day by day', () => {
  fc.assert(
    fc.property(fc.array(standing, { maxLength: 25 }), (all) => {
      const days = Array.from({ length: 120 }, (_, at) => addDays(start, at));
      const on = (day: IsoDate): number =>
        all.reduce((sum, each) => sum + (each.from <= day && day < each.to ? each.trays : 0), 0);
      const most = Math.max(...days.map(on));
      const found = mostTraysAtOnce(all);
      expect(found?.trays ?? 0).toBe(most);
      if (most > 0) expect(found?.day).toBe(days.find((day) => on(day) === most));
    }),
  );
});

test('a tray emptied on a day is free for a sowing of that day', () => {
  const to = addDays(start, 20);
  expect(
    mostTraysAtOnce([
      { from: start, to, trays: 3 },
      { from: to, to: addDays(to, 20), trays: 4 },
    ]),
  ).toEqual({ trays: 4, day: to });
  expect(mostTraysAtOnce([])).toBeNull();
});
