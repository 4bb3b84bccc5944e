import type { FarmDb } from '../../db/file/open-farm.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';
import { loadBeds } from '../beds/load-beds.ts';
import { bedsOfBooks, filledUntil, usedUntil } from '../costs/books.ts';
import { seasonLedger } from '../costs/season-ledger.ts';
import { groundOfSeason, salesOf, seasonOfBooks, spendingOf, spentByWork, spentOnGround, workOf } from '../costs/season-parts.ts';
import type { Ctx } from '../procedure.ts';
import { frameOfSeason, loadFarmSeason, partsOfProposal } from '../proposal/load-farm-season.ts';
import { cropShelf } from '../season/crop-shelf.ts';
import { loadSeason, recordsOfSeason, seasonBasis, spansOfPlan } from '../season/load-season.ts';
import { seasonOf } from '../soil/feeding-plan.ts';
import { partsOfBudgets } from '../soil/load-budgets.ts';
import { bedDryings, MOST_INTERVAL_DAYS } from '../water/bed-dryings.ts';
import { demandOfFarm, runsOfFarm, yearShown } from '../water/demand-of-year.ts';
import { flowsOf } from '../water/line-supply.ts';
import { loadWater, partsOfWater, type WaterBed } from '../water/load-water.ts';
import { weatherOfFarm } from '../water/weather-record.ts';

/**
 * What the farm's pages will ask for and takes longest to work out of a file just opened, one part at a time, each short enough that a
 * page that asks meanwhile does not wait for it. All of it is kept as if a page had asked. Nothing for a farm without a season.
 */
export function* partsAhead(ctx: Pick<Ctx, 'db' | 'today'>, tables: SoilTables): Generator<string> {
  const { db, today } = ctx;
  const seasons = seasonsOfFarm(db);
  const newest = seasons.at(-1);
  if (newest === undefined) return;
  const part = <T>(name: string, make: () => T): string => {
    make();
    return name;
  };
  yield part('beds', () => loadBeds(db));
  yield part('crops', () => cropShelf(db));
  yield part('season', () => seasonBasis(db, newest.id));
  yield part('plantings', () => recordsOfSeason(db, newest.id));
  yield part('where they stand', () => spansOfPlan(db, newest.id));
  yield part('plan', () => loadSeason(db, newest.id));
  yield part('weather', () => weatherOfFarm(db));
  for (const each of partsOfWater(db, newest)) yield part('water', each);
  yield part('water', () => loadWater(db, newest.id));
  yield* waterAhead(db, newest.id, today);
  const worked = seasons.findLast((season) => season.state !== 'planning');
  if (worked !== undefined) yield* booksAhead(db, worked.id);
  const fed = seasonOf(db, undefined, today);
  for (const each of partsOfBudgets(db, fed, tables)) yield part('budgets', each);
  for (const each of partsOfProposal(ctx, newest.id)) yield part('proposal', each);
  yield part('proposal', () => loadFarmSeason(ctx, newest.id));
  yield part('proposal', () => frameOfSeason(ctx, newest.id));
}

/** Beds at a time that are run through the weather. */
const BEDS = 100;

/** The need of the year that is shown first, and the beds run dry in this month. */
function* waterAhead(db: FarmDb, seasonId: string, today: IsoDate): Generator<string> {
  const farm = loadWater(db, seasonId);
  const { record } = farm;
  if (record === null) return;
  const eachOf = function* (name: string, make: (bed: WaterBed) => unknown): Generator<string> {
    for (let at = 0; at < farm.beds.length; at += BEDS) {
      for (const bed of farm.beds.slice(at, at + BEDS)) make(bed);
      yield name;
    }
  };
  for (const { lineId } of farm.supplies) {
    flowsOf(db, lineId);
    yield 'flows';
  }
  const year = yearShown(record, null);
  if (year !== null) {
    yield* eachOf('need', runsOfFarm(db, farm, record, year).of);
    demandOfFarm(db, farm, record, year);
    yield 'need';
  }
  const terms = { month: Number(today.slice(5, 7)), most_days: MOST_INTERVAL_DAYS };
  yield* eachOf('intervals', bedDryings(db, farm, record, terms).of);
}

/** A season's books, part by part. */
function* booksAhead(db: FarmDb, seasonId: string): Generator<string> {
  const parts = [
    () => bedsOfBooks(db),
    () => seasonOfBooks(db, seasonId),
    () => groundOfSeason(db, seasonId),
    () => workOf(db, seasonId),
    () => salesOf(db, seasonId),
    () => usedUntil(db, ''),
    () => filledUntil(db, ''),
    () => spendingOf(db, seasonId),
    () => spentOnGround(db, seasonId),
    () => spentByWork(db, seasonId),
    () => seasonLedger(db, seasonId),
  ];
  for (const make of parts) {
    make();
    yield 'books';
  }
}
