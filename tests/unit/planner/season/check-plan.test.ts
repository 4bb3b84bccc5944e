import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, dayNumber } from '../../../../planner/calendar.ts';
import { checkPlan, isAccepted } from '../../../../planner/season/check-plan.ts';
import type { FindingCode } from '../../../../planner/season/plan.ts';
import { aCrop, aPlan, aPlanBed, aPlanting, aSpan, day, someRules } from '../../../builders/a-plan.ts';

const codes = (...parts: Parameters<typeof aPlan>): readonly FindingCode[] => checkPlan(aPlan(...parts)).map(({ code }) => code);

describe('the checker of a plan', () => {
  test('finds nothing against a carrot in May', () => {
    expect(checkPlan(aPlan())).toEqual([]);
  });

  test('two plantings may meet on the day the first leaves, and not a day earlier', () => {
    const next = (inBed: string) =>
      aPlanting({ id: 'p2', crop: aCrop({ cropId: 'kale', family: 'Brassicaceae' }), inBed: day(inBed) });
    const free = aPlanting().free;
    expect(codes({ plantings: [aPlanting(), next(free)] })).toEqual([]);
    expect(codes({ plantings: [aPlanting(), next(addDays(free, -1))] })).toEqual(['overlap']);
  });

  test('two plantings may share a bed on different pieces of it', () => {
    const kale = aCrop({ cropId: 'kale', family: 'Brassicaceae' });
    const left = aPlanting({ spans: [aSpan({ toShare: 0.5 })] });
    const right = (fromShare: number) => aPlanting({ id: 'p2', crop: kale, spans: [aSpan({ fromShare })] });
    expect(codes({ plantings: [left, right(0.5)] })).toEqual([]);
    expect(codes({ plantings: [left, right(0.4)] })).toEqual(['overlap']);
  });

  test.each<[string, FindingCode, Parameters<typeof aPlan>[0]]>([
    ['a bed too shallow for the crop', 'shallow-soil', { beds: [aPlanBed({ soilDepth_m: 0.15 })] }],
    ['a bed in shade', 'too-little-sun', { beds: [aPlanBed({ sun: 'shade' })] }],
    ['a climber without support', 'no-trellis', { plantings: [aPlanting({ crop: aCrop({ needsTrellis: true }) })] }],
    ['a family after one year', 'rotation-years', { beds: [aPlanBed({ lastYearOf: { Apiaceae: 2026 } })] }],
    ['more plants than fit', 'too-many-plants', { plantings: [aPlanting({ spans: [aSpan({ plants: 121 })] })] }],
    ['a date before the season', 'outside-season', { plantings: [aPlanting({ inBed: day('2026-12-20') })] }],
    ['a bed that is gone', 'no-such-bed', { plantings: [aPlanting({ spans: [aSpan({ bedId: 'bed-9' })] })] }],
    ['a piece of bed without length', 'bad-share', { plantings: [aPlanting({ spans: [aSpan({ fromShare: 1 })] })] }],
    [
      'tender plants before the last frost',
      'frost-spring',
      { plantings: [aPlanting({ crop: aCrop({ hardiness: 'tender' }), inBed: day('2027-04-01') })] },
    ],
    [
      'tender plants still to be picked after the first frost',
      'frost-autumn',
      { plantings: [aPlanting({ crop: aCrop({ hardiness: 'tender' }), inBed: day('2027-08-10') })] },
    ],
    ['harvest before sowing', 'dates-out-of-order', { plantings: [aPlanting({ firstHarvest: day('2027-05-01') })] }],
  ])('names %s', (_, code, change) => {
    expect(codes(change)).toContain(code);
  });

  test('the same family twice in a season is barred, cuts of one crop where the grower allows them are not', () => {
    const again = aPlanting({ id: 'p2', inBed: aPlanting().free });
    expect(codes({ plantings: [aPlanting(), again] })).toEqual(['rotation-season']);
    expect(codes({ plantings: [aPlanting(), again], rules: someRules({ mayRepeatCrop: true }) })).toEqual([]);
  });

  test('no accepted plan takes a piece of a bed twice on one day', () => {
    const anyPlanting = fc.record({
      start: fc.integer({ min: 0, max: 300 }),
      length: fc.integer({ min: 20, max: 120 }),
      from: fc.integer({ min: 0, max: 6 }),
      size: fc.integer({ min: 1, max: 4 }),
      bed: fc.integer({ min: 1, max: 2 }),
      family: fc.constantFrom('Apiaceae', 'Brassicaceae', 'Fabaceae', 'Poaceae'),
    });
    fc.assert(
      fc.property(fc.array(anyPlanting, { maxLength: 6 }), (made) => {
        const plantings = made.map((each, at) => {
          const inBed = addDays(day('2027-01-01'), each.start);
          return aPlanting({
            id: `p${at}`,
            crop: aCrop({ family: each.family, cropId: `crop-${at}`, hardiness: null }),
            inBed,
            firstHarvest: addDays(inBed, each.length - 10),
            lastHarvest: addDays(inBed, each.length - 3),
            free: addDays(inBed, each.length),
            spans: [aSpan({ bedId: `bed-${each.bed}`, fromShare: each.from / 10, toShare: (each.from + each.size) / 10 })],
          });
        });
        const beds = [aPlanBed(), aPlanBed({ id: 'bed-2', code: 'A-2' })];
        if (!isAccepted(checkPlan(aPlan({ beds, plantings })))) return;
        const taken = new Set<string>();
        for (const planting of plantings)
          for (const span of planting.spans)
            for (let at = dayNumber(planting.inBed); at < dayNumber(planting.free); at += 1)
              for (let tenth = Math.round(span.fromShare * 10); tenth < Math.round(span.toShare * 10); tenth += 1) {
                const piece = `${span.bedId} ${tenth} ${at}`;
                expect(taken.has(piece)).toBe(false);
                taken.add(piece);
              }
      }),
    );
  });
});
