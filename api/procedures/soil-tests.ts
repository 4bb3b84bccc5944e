import { z } from 'zod';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { blocksOfFarm } from '../../db/repositories/beds.ts';
import {
  addSoilTests,
  removeSoilTests,
  replaceSoilTest,
  soilTestOfId,
  soilTests as testsOfFarm,
} from '../../db/repositories/soil-tests.ts';
import { InputError } from '../../planner/errors.ts';
import { type TestUnit, unlikelyValue } from '../../planner/fertility/test-value.ts';
import { loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';
import { readTestSheets } from '../soil/import-tests.ts';
import { soilTablesIn } from '../soil/soil-tables.ts';
import { rowsOfTest, soilTestInput } from '../soil/test-input.ts';
import { testsByBed, testView } from '../soil/test-view.ts';

const csv = z.string().max(4_000_000, 'This file is too large to be laboratory sheets.');

/** Bed codes, and block codes for all beds of a block, to bed ids. */
function idsByCode(db: FarmDb): ReadonlyMap<string, readonly string[]> {
  const beds = loadBeds(db);
  const codes = new Map<string, readonly string[]>();
  for (const block of blocksOfFarm(db))
    codes.set(
      block.code.toUpperCase(),
      beds.filter((each) => each.block.id === block.id).map((each) => each.bed.id),
    );
  for (const each of beds) codes.set(each.bed.code.toUpperCase(), [each.bed.id]);
  return codes;
}

export const soilTests = {
  /** The program's own date: pages have no other clock. */
  today: read({ input: nothing, run: ({ today, now }) => ({ today, now }) }),
  list: read({
    input: nothing,
    run: ({ db, program }) => testsOfFarm(db).map((each) => testView(each, soilTablesIn(program.places.resources))),
  }),
  one: read({
    input: z.object({ testId: z.string() }),
    run({ db, program }, { testId }) {
      const record = soilTestOfId(db, testId);
      if (record === undefined) throw new Refusal({ code: 'not-found', what: 'soil test' });
      return testView(record, soilTablesIn(program.places.resources));
    },
  }),
  /** A bed's sheets over the years, the oldest first. */
  trend: read({
    input: z.object({ bedId: z.string() }),
    run: ({ db, program }, { bedId }) =>
      (testsByBed(testsOfFarm(db)).get(bedId) ?? [])
        .map((each) => testView(each, soilTablesIn(program.places.resources)))
        .reverse(),
  }),
  add: change({
    note: ({ sample, date }) => `Enter the soil test ${sample === '' ? date : sample}`,
    input: soilTestInput,
    run({ db }, input) {
      const { test, values, beds } = rowsOfTest(input);
      addSoilTests(db, [test], values, beds);
      return { testId: test.id };
    },
  }),
  save: change({
    note: ({ test }) => `Change the soil test ${test.sample === '' ? test.date : test.sample}`,
    input: z.object({ testId: z.string(), revision: z.int(), test: soilTestInput }),
    run({ db }, { testId, revision, test: input }) {
      const { test, values, beds } = rowsOfTest(input, testId);
      if (!replaceSoilTest(db, test, revision, values, beds)) throw new Refusal({ code: 'changed-meanwhile', what: 'soil test' });
      return { testId };
    },
  }),
  remove: change({
    note: ({ testIds }) => (testIds.length === 1 ? 'Take a soil test away' : `Take ${testIds.length} soil tests away`),
    input: z.object({ testIds: z.array(z.string()).max(5000) }),
    run: ({ db }, { testIds }) => ({ removed: removeSoilTests(db, testIds) }),
  }),
  /** What a file would bring; nothing is written. */
  lookIntoFile: read({
    input: z.object({ csv }),
    run({ db }, input) {
      const sheets = readTestSheets(input.csv, idsByCode(db));
      return {
        tests: sheets.tests.map((each) => ({
          date: each.test.date,
          sample: each.test.sample ?? '',
          ph: each.test.ph ?? null,
          figures: each.values.length,
          beds: each.beds.length,
        })),
        faults: sheets.faults,
        warnings: sheets.tests.flatMap((each) =>
          each.values.flatMap((value) => {
            const found = unlikelyValue(value.nutrient, value.value_mg_per_kg, value.enteredUnit as TestUnit);
            return found === null ? [] : [`${each.test.sample === '' ? each.test.date : each.test.sample}: ${found.message}`];
          }),
        ),
        columns: sheets.columns,
        unread: sheets.unread,
      };
    },
  }),
  importFile: change({
    note: 'Import a file of soil tests',
    input: z.object({ csv }),
    run({ db }, input) {
      const sheets = readTestSheets(input.csv, idsByCode(db));
      if (sheets.faults.length > 0) throw new InputError(sheets.faults);
      addSoilTests(
        db,
        sheets.tests.map((each) => each.test),
        sheets.tests.flatMap((each) => each.values),
        sheets.tests.flatMap((each) => each.beds),
      );
      return { added: sheets.tests.length };
    },
  }),
} as const;
