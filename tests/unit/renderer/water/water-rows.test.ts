import { describe, expect, test } from 'vitest';
import { parseIsoDate } from '../../../../planner/calendar.ts';
import { capacityOn, weekMeans } from '../../../../renderer/places/water/demand-rows.ts';
import { stressRows, worstFirst } from '../../../../renderer/places/water/stress-rows.ts';

const day = (date: string, line: number, hand: number) => ({
  date: parseIsoDate(date),
  eto_mm: 5,
  rain_mm: 0,
  need_L: { line, hand },
});

describe('the need of a week', () => {
  const byDay = Array.from({ length: 10 }, (_, at) => day(`2015-07-${String(at + 1).padStart(2, '0')}`, at < 7 ? 7 : 0, 100));
  test('is the mean of the seven days that end on the day, for the supplies asked for', () => {
    const line = weekMeans({ byDay }, ['line']);
    expect(line[6]?.need_L_per_day).toBe(7);
    expect(line[9]?.need_L_per_day).toBe(4);
    expect(weekMeans({ byDay }, ['line', 'hand'])[6]?.need_L_per_day).toBe(107);
    expect(weekMeans({ byDay }, ['other'])[6]?.need_L_per_day).toBe(0);
  });
  test('the timer gives what its month says, and nothing where it is off', () => {
    const months = Array.from({ length: 12 }, (_, at) => ({ need_L_per_day: 1, timer_L_per_day: at === 6 ? 40 : null }));
    expect(capacityOn({ months }, '2015-07-31')).toBe(40);
    expect(capacityOn({ months }, '2015-08-01')).toBe(0);
  });
});

describe('stress of the beds', () => {
  const bed = (code: string, days: number, chance: number) => ({
    bedId: code,
    code,
    chance: [null, chance, ...Array.from({ length: 10 }, () => null)],
    days_per_year: days,
    worstYear: 2015,
    worstYear_days: Math.round(days * 2),
    lost_L_per_year: 1,
    given_L_per_year: 2,
    metShare: 0.9,
  });
  test('the worst come first, beds that never go short are left out of the map', () => {
    const beds = [bed('A-10', 4, 0.5), bed('A-2', 4, 0.5), bed('B-1', 9, 1), bed('C-1', 0, 0)];
    expect(worstFirst({ beds }).map((each) => each.code)).toEqual(['B-1', 'A-2', 'A-10']);
    expect(stressRows({ beds })).toHaveLength(4);
    expect(stressRows({ beds })[3]).toMatchObject({ worst: '', worstMonth_share: 0 });
    expect(stressRows({ beds })[2]).toMatchObject({ worst: '2015: 18 days', days: 9 });
  });
});
