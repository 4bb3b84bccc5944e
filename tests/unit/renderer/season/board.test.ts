import { describe, expect, test } from 'vitest';
import { addDays } from '../../../../planner/calendar.ts';
import { liftedByKey, nextPlace } from '../../../../renderer/places/season/board-keys.ts';
import { boardLines } from '../../../../renderer/places/season/board-lines.ts';
import { COPY_ID, findingsOfLifted, type Lifted, liftedPlanting, planWith } from '../../../../renderer/places/season/lifted.ts';
import { stripOf } from '../../../../renderer/places/season/strip.ts';
import { timeScale, weekMarks } from '../../../../renderer/places/season/time-scale.ts';
import { aCrop, aPlan, aPlanBed, aPlanting, aSpan, day } from '../../../builders/a-plan.ts';

const beds = [aPlanBed(), aPlanBed({ id: 'bed-2', code: 'A-2' })];
const kale = aPlanting({
  id: 'p2',
  crop: aCrop({ cropId: 'kale', cropName: 'Kale', family: 'Brassicaceae', hardiness: 'hardy' }),
  spans: [aSpan({ bedId: 'bed-2' })],
});
const plantings = [aPlanting(), kale];
const lift = (change: Partial<Lifted> = {}): Lifted => ({
  plantingId: 'p1',
  how: 'move',
  days: 0,
  bedId: 'bed-1',
  fromBedId: 'bed-1',
  asCopy: false,
  ...change,
});

describe('a planting lifted from the board', () => {
  test('moves with all its dates, and its piece of bed goes with it', () => {
    const moved = liftedPlanting(aPlanting(), lift({ days: 7, bedId: 'bed-2' }));
    expect(moved?.inBed).toBe(addDays(aPlanting().inBed, 7));
    expect(moved?.free).toBe(addDays(aPlanting().free, 7));
    expect(moved?.spans.map((span) => span.bedId)).toEqual(['bed-2']);
  });
  test('held over a taken bed it says so, and only for itself', () => {
    const held = lift({ bedId: 'bed-2' });
    const findings = findingsOfLifted({ ...aPlan({ beds }), plantings: planWith(plantings, held) }, held);
    expect(findings.map((finding) => finding.code)).toEqual(['overlap']);
    expect(findings[0]?.message).toMatch(/Kale/);
  });
  test('a copy leaves the first where it is', () => {
    const held = lift({ asCopy: true, days: 120 });
    const shown = planWith(plantings, held);
    expect(shown).toHaveLength(3);
    expect(shown.find((each) => each.id === 'p1')?.inBed).toBe(aPlanting().inBed);
    expect(shown.find((each) => each.id === COPY_ID)?.inBed).toBe(addDays(aPlanting().inBed, 120));
  });
  test('an end pulled before the harvest is no planting', () => {
    expect(liftedPlanting(aPlanting(), lift({ how: 'end', days: -40 }))).toBeNull();
    expect(liftedPlanting(aPlanting(), lift({ how: 'start', days: 90 }))).toBeNull();
    expect(liftedPlanting(aPlanting(), lift({ how: 'end', days: 7 }))?.inBed).toBe(aPlanting().inBed);
  });
});

describe('the board by keys', () => {
  const lines = boardLines({ beds, blocks: [{ blockId: 'block-a', code: 'A', name: 'North' }] }, plantings);
  test('lists block, then its beds in their order', () => {
    expect(lines.map((line) => line.id)).toEqual(['block-a', 'bed-1', 'bed-2']);
  });
  test('arrows go along a bed and to the next bed, and stop at the edge', () => {
    const first = nextPlace(lines, null, 'ArrowDown');
    expect(first).toEqual({ lineId: 'bed-1', plantingId: 'p1' });
    expect(nextPlace(lines, first, 'ArrowDown')).toEqual({ lineId: 'bed-2', plantingId: 'p2' });
    expect(nextPlace(lines, first, 'ArrowRight')).toEqual(first);
  });
  test('a lifted planting goes by days, by weeks with Shift, and from bed to bed', () => {
    expect(liftedByKey(lines, lift(), 'ArrowRight', false)?.days).toBe(1);
    expect(liftedByKey(lines, lift(), 'ArrowLeft', true)?.days).toBe(-7);
    expect(liftedByKey(lines, lift(), 'ArrowDown', false)?.bedId).toBe('bed-2');
    expect(liftedByKey(lines, lift({ how: 'end' }), 'ArrowDown', false)).toBeNull();
  });
});

describe('the drawing', () => {
  const scale = timeScale(day('2027-01-01'), day('2028-01-01'), 21);
  test('a week is as wide as asked, and a date comes back from its place', () => {
    expect(scale.x(day('2027-03-08')) - scale.x(day('2027-03-01'))).toBeCloseTo(21, 9);
    expect(scale.dayAt(scale.x(day('2027-03-08')) + 1)).toBe(scale.first + (scale.x(day('2027-03-08')) / 21) * 7);
    expect(weekMarks(scale, 'en-US').filter((mark) => mark.month !== null)).toHaveLength(12);
  });
  test('half a bed is drawn in half the line', () => {
    const whole = stripOf(aPlanting(), aSpan(), scale, 36);
    const half = stripOf(aPlanting(), aSpan({ fromShare: 0.5 }), scale, 36);
    expect(half.height_px).toBeCloseTo(whole.height_px / 2, 0);
    expect(half.top_px).toBeGreaterThan(whole.top_px);
  });
});
