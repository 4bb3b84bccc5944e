import { sql } from 'drizzle-orm';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { afterAll, expect, test } from 'vitest';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { applicationsDone, applicationsOfFarm } from '../../db/repositories/applications.ts';
import { bedsInUse } from '../../db/repositories/beds.ts';
import { fillsUntil, incomeOfPlantings, labourBetween, movesUntil, staysOfSeason } from '../../db/repositories/cost-facts.ts';
import { designLayers } from '../../db/repositories/designs.ts';
import { plantingsOnBeds } from '../../db/repositories/feeding.ts';
import { familiesBefore, plantingsOfSeason, spansOfSeason } from '../../db/repositories/plantings.ts';
import { linesWithBeds } from '../../db/repositories/proposal-facts.ts';
import { soilTests } from '../../db/repositories/soil-tests.ts';
import { aProgram } from '../builders/a-farm.ts';

const t = aProgram({ beds: 24 });
afterAll(() => t.end());

const season = 'season-2026';
/** Flat rows, nested rows, joins that may miss, flags, lists kept as JSON, sums. */
const queries: Readonly<Record<string, (db: FarmDb) => unknown>> = {
  applicationsDone,
  applicationsOfFarm,
  bedsInUse,
  designLayers,
  fills: (db) => fillsUntil(db, '2026-12-31'),
  incomes: (db) =>
    incomeOfPlantings(
      db,
      plantingsOfSeason(db, season).map(({ id }) => id),
    ),
  labour: (db) => labourBetween(db, '2026-01-01', '2026-12-31'),
  moves: (db) => movesUntil(db, '2026-12-31'),
  stays: (db) => staysOfSeason(db, season),
  plantingsOnBeds: (db) => plantingsOnBeds(db, '2026-01-01', '2026-12-31'),
  families: (db) => familiesBefore(db, '2027-01-01'),
  plantings: (db) => plantingsOfSeason(db, season),
  spans: (db) => spansOfSeason(db, season),
  lines: linesWithBeds,
  soilTests,
};

test.each(Object.keys(queries))('rows of %s are those that the library itself makes', (name) => {
  const own = queries[name]?.(t.farm.db);
  expect(JSON.stringify(own).length).toBeGreaterThan(10);
  expect(own).toStrictEqual(queries[name]?.(drizzle(t.farm.sqlite)));
});

test('a query of the same text may be asked for again in any form', () => {
  const text = sql`SELECT code FROM bed ORDER BY code LIMIT 2`;
  const db = t.farm.db;
  const objects = db.all(text);
  expect(objects).toEqual([{ code: expect.any(String) }, { code: expect.any(String) }]);
  expect(db.values(text)).toEqual(objects.map((row) => Object.values(row as object)));
  expect(db.all(text)).toEqual(objects);
  expect(db.get(text)).toEqual(objects[0]);
});
