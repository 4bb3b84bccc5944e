import { earningView } from '../../api/costs/earning-view.ts';
import { seasonLedger } from '../../api/costs/season-ledger.ts';
import { boardOf } from '../../api/season/board-rows.ts';
import { loadSeason } from '../../api/season/load-season.ts';
import { seasonBalance } from '../../api/season/season-balance.ts';
import { loadWater } from '../../api/water/load-water.ts';
import { forgetDerived } from '../../db/file/derived.ts';
import { addDays, dayNumber, type IsoDate } from '../../planner/calendar.ts';
import { checkPlan } from '../../planner/season/check-plan.ts';
import { clockOf } from '../../planner/season/growth-clock.ts';
import type { Plan } from '../../planner/season/plan.ts';
import { type Course, replan } from '../../planner/season/replan.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { aCrop, aPlanBed, aPlanting, aSpan, someRules } from '../builders/a-plan.ts';
import { PLANNED } from '../builders/reading-inputs.ts';
import { type Bench, SIZES } from './bench.ts';

const PER_BED = 4;
const start = '2027-01-01' as IsoDate;

/** A season of beds with four plantings each, one of them late. */
function courses(beds: number): readonly Course[] {
  return Array.from({ length: beds * PER_BED }, (_, at): Course => {
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

function plan(count: number): Plan {
  const families = ['Apiaceae', 'Brassicaceae', 'Fabaceae', 'Solanaceae'];
  const beds = Array.from({ length: count }, (_, at) => aPlanBed({ id: `b${at}`, code: `B-${at}` }));
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

/** What follows from the whole season after a change, with nothing kept: its plan, checks, balance, fill, water and money. */
function recompute({ farm: { db } }: TestProgram): unknown {
  forgetDerived(db);
  const loaded = loadSeason(db, PLANNED);
  return [
    boardOf(loaded, '2026-11-25' as IsoDate),
    checkPlan(loaded),
    seasonBalance(db, loaded),
    loaded.loadedBeds.map((bed) => bed.figures?.fill_L),
    loadWater(db, PLANNED).beds.length,
    earningView(seasonLedger(db, PLANNED), 'bed', new Map()),
  ];
}

/** The floor: the same tables read bare. */
function scan({ farm: { sqlite } }: TestProgram): unknown {
  return [
    'bed',
    'planting',
    'planting_bed',
    'crop_value',
    'weather_day',
    'labour_entry',
    'stock_move',
    'bed_part',
    'bed_fill',
  ].map((table) => sqlite.prepare(`SELECT * FROM ${table}`).all());
}

export const benches: readonly Bench[] = [
  {
    name: 'a whole season recomputed: plan, checks, balance, fill, water, costs',
    prepare: (beds) => aProgram({ beds, years: 2, seed: 7 }),
    run: recompute,
    floor: scan,
    end: (program: TestProgram) => program.end(),
    sizes: SIZES,
    target_ms: 250,
    rounds: 9,
  },
  {
    name: 'replan 1,000 beds x 4 plantings',
    sizes: SIZES,
    prepare: (beds) => ({
      courses: courses(beds),
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
    sizes: SIZES,
    prepare: plan,
    run: (made: Plan) => checkPlan(made),
    floor: (made: Plan) => made.plantings.map((planting) => dayNumber(planting.inBed)),
    target_ms: 50,
  } as Bench,
];
