import { addDays, dayNumber, type IsoDate } from '../../planner/calendar.ts';
import { checkPlan } from '../../planner/season/check-plan.ts';
import { clockOf } from '../../planner/season/growth-clock.ts';
import type { Plan } from '../../planner/season/plan.ts';
import { type Course, replan } from '../../planner/season/replan.ts';
import { aCrop, aPlanBed, aPlanting, aSpan, someRules } from '../builders/a-plan.ts';
import type { Bench } from './bench.ts';

const BEDS = 1000;
const PER_BED = 4;
const start = '2027-01-01' as IsoDate;

/** A season of 1,000 beds with four plantings each, one of them late. */
function courses(): readonly Course[] {
  return Array.from({ length: BEDS * PER_BED }, (_, at): Course => {
    const inBed = addDays(start, 60 + (at % PER_BED) * 60);
    return {
      id: `p${at}`,
      clockKey: at % 2 === 0 ? 'light' : 'plain',
      need: 45 + (at % 30),
      indoors_days: at % 3 === 0 ? 35 : 0,
      window_days: 10,
      turnover_days: 3,
      sow: addDays(inBed, at % 3 === 0 ? -35 : 0),
      inBed,
      sown: null,
      wentIn: at % PER_BED === 0 ? addDays(inBed, 6) : null,
      firstPicked: null,
      lastPicked: null,
      cleared: null,
      pinned: false,
    };
  });
}

const clock = (perDay: number) =>
  clockOf(
    dayNumber(start) - 400,
    Array.from({ length: 1200 }, () => perDay),
  );

function plan(): Plan {
  const families = ['Apiaceae', 'Brassicaceae', 'Fabaceae', 'Solanaceae'];
  const beds = Array.from({ length: BEDS }, (_, at) => aPlanBed({ id: `b${at}`, code: `B-${at}` }));
  const plantings = beds.flatMap((bed) =>
    families.map((family, at) => {
      const inBed = addDays(start, 60 + at * 60);
      return aPlanting({
        id: `${bed.id}-${at}`,
        crop: aCrop({ family, cropId: family, hardiness: 'hardy' }),
        inBed,
        firstHarvest: addDays(inBed, 40),
        lastHarvest: addDays(inBed, 55),
        free: addDays(inBed, 58),
        spans: [aSpan({ bedId: bed.id })],
      });
    }),
  );
  return { beds, plantings, rules: someRules() };
}

export const benches: readonly Bench[] = [
  {
    name: 'replan 1,000 beds x 4 plantings',
    prepare: () => ({
      courses: courses(),
      clocks: new Map([
        ['light', clock(0.8)],
        ['plain', clock(1)],
      ]),
    }),
    run: ({ courses: list, clocks }: { courses: readonly Course[]; clocks: Parameters<typeof replan>[1] }) =>
      replan(list, clocks),
    floor: ({ courses: list }: { courses: readonly Course[] }) => list.map((course) => addDays(course.inBed, 70)),
    target_ms: 50,
  } as Bench,
  {
    name: 'check a plan of 1,000 beds x 4 plantings',
    prepare: plan,
    run: (made: Plan) => checkPlan(made),
    floor: (made: Plan) => made.plantings.map((planting) => dayNumber(planting.inBed)),
    target_ms: 50,
  } as Bench,
];
