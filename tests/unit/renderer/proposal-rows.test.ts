import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../planner/calendar.ts';
import { withEdits } from '../../../renderer/places/season/proposal/counted-columns.tsx';
import { goalSays, goalTitle } from '../../../renderer/places/season/proposal/goal-words.ts';
import { bedsThatChange, countKinds, moveRows } from '../../../renderer/places/season/proposal/move-rows.ts';
import type { Move } from '../../../renderer/places/season/proposal/proposal-types.ts';
import { goalVariants, sameQuestion, variantOf } from '../../../renderer/places/season/proposal/questions.ts';
import { remedyText } from '../../../renderer/places/season/proposal/short-words.ts';
import { monthTicks, strips } from '../../../renderer/places/season/proposal/strip-rows.ts';

const day = (text: string) => text as IsoDate;
const dates = {
  sow: null,
  potOn: null,
  inBed: day('2027-05-03'),
  firstHarvest: day('2027-06-07'),
  lastHarvest: day('2027-06-21'),
  free: day('2027-06-24'),
};
const present = {
  plantingId: 'p',
  cropId: 'kale',
  bedId: 'b1',
  fromShare: 0,
  toShare: 1,
  inBed: day('2027-05-03'),
  free: day('2027-06-24'),
};
const proposed = { key: 'k', cropId: 'kale', bedId: 'b2', fromShare: 0, toShare: 1, area_m2: 3, dates };
const moves: readonly Move[] = [
  { kind: 'stays', proposed: { ...proposed, bedId: 'b1' }, present, days: 0 },
  { kind: 'moves', proposed, present: { ...present, bedId: 'b3' }, days: 4 },
  { kind: 'new', proposed: { ...proposed, bedId: 'b4' } },
  { kind: 'goes', present: { ...present, bedId: 'b5' } },
];

describe('what a proposal does, line by line', () => {
  test('beds of which nothing changes are not offered, a move touches both its beds', () => {
    expect(bedsThatChange(moves, ['b1', 'b2', 'b3', 'b4', 'b5'])).toEqual(['b2', 'b3', 'b4', 'b5']);
    expect(countKinds(moves)).toEqual({ stays: 1, shifts: 0, moves: 1, new: 1, goes: 1 });
  });
  test('rows carry codes and names, and tell nothing that is not so', () => {
    const rows = moveRows(
      moves,
      (bed) => bed.toUpperCase(),
      (crop) => `a ${crop}`,
    );
    expect(rows.map(({ fromBed, toBed }) => [fromBed, toBed])).toEqual([
      ['B1', 'B1'],
      ['B3', 'B2'],
      ['', 'B4'],
      ['B5', ''],
    ]);
    expect(rows[3]?.toDate).toBeNull();
    expect(new Set(rows.map(({ key }) => key)).size).toBe(4);
  });
  test('strips place both lanes within the season', () => {
    const names = { crop: (id: string) => id, family: () => 'f', date: (iso: string) => iso };
    const made = strips(
      moves,
      [
        { bedId: 'b1', code: 'B1' },
        { bedId: 'b2', code: 'B2' },
      ],
      { first: day('2027-05-03'), weeks: 4 },
      names,
    );
    expect(made[0]).toMatchObject({ changes: false, present: [{ from: 0, to: 1 }], proposed: [{ from: 0, to: 1 }] });
    expect(made[1]).toMatchObject({ changes: true, present: [], proposed: [{ text: 'kale' }] });
    expect(monthTicks(['2026-12-28', '2027-01-04', '2027-01-11', '2027-02-01']).map(({ text }) => text)).toEqual(['Jan', 'Feb']);
  });
});

describe('words and questions', () => {
  test('every goal and weight has its own sentence', () => {
    const said = (['fewest-beds', 'fewest-hours', 'steady'] as const).flatMap((aim) =>
      (['a-little', 'clearly', 'above-all'] as const).map((weight) => goalSays(aim, weight)),
    );
    expect(new Set(said).size).toBe(9);
    expect(goalTitle('most-margin clearly')).toBe('Most margin');
    expect(goalTitle('steady above-all')).toBe('Steady weekly harvest, above all');
  });
  test('a question becomes one change, and the same question is not asked twice', () => {
    const question = { kind: 'dearer', cropId: 'kale', wage_minor_per_h: 1900 } as const;
    expect(variantOf(question, () => 'Kale', 'b1')).toMatchObject({
      name: 'Kale a quarter dearer',
      changes: [{ kind: 'price', cropId: 'kale', factor: 1.25 }],
    });
    expect(variantOf({ ...question, kind: 'wage' }, () => '', 'b1').changes).toEqual([{ kind: 'wage', wage_minor_per_h: 2375 }]);
    expect(sameQuestion(question, { kind: 'dearer', cropId: 'leek' })).toBe(false);
    expect(sameQuestion({ kind: 'pump', cropId: 'kale' }, { kind: 'pump', cropId: 'leek' })).toBe(true);
    expect(new Set(goalVariants.map(({ name }) => name)).size).toBe(goalVariants.length);
  });
  test('a remedy says by how much', () => {
    expect(remedyText({ kind: 'beds', unit: 0, count: 10 }, 0.163)).toBe(
      'With 10 more beds like the largest, the shortfall falls by 16 %.',
    );
  });
  test('an emptied cell goes back to what is known; others keep what they had', () => {
    const own = {
      caution: 0.5,
      labour_h_per_week: null,
      overtime_h_per_week: 8,
      overtimePremium_share: 0.5,
      pump_h_per_day: 2,
      mostCrops: null,
      crops: {},
    };
    const first = withEdits(own, [{ row: { cropId: 'kale' }, key: 'yield_per_m2', value: 2 }]);
    expect(first.crops['kale']).toMatchObject({ yield_per_m2: 2, shelf_weeks: null, leaveOut: false });
    const back = withEdits(first, [{ row: { cropId: 'kale' }, key: 'yield_per_m2', value: null }]);
    expect(back.crops['kale']?.yield_per_m2).toBeNull();
  });
});
