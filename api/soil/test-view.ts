import type { SoilTestRecord } from '../../db/repositories/soil-tests.ts';
import { mediaSaltClass } from '../../planner/fertility/media-salts.ts';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';
import { type ClassReading, type TestMethod, testClass, testMethods } from '../../planner/fertility/test-class.ts';
import { type TestUnit, unlikelyValue } from '../../planner/fertility/test-value.ts';

/** One figure of a sheet as a page shows it. */
export type ReadValue = {
  readonly nutrient: string;
  readonly value_mg_per_kg: number;
  readonly enteredValue: number;
  readonly enteredUnit: string;
  readonly reading: ClassReading | null;
  readonly warning: string | null;
};

export const methodOf = (method: string): TestMethod => testMethods.find((each) => each === method) ?? 'mehlich-3';

/** The class of a nutrient on a sheet, `null` where it was not tested or has no scale. */
export function classOn(record: SoilTestRecord, nutrient: string): ClassReading | null {
  const value = record.values.find((each) => each.nutrient === nutrient);
  return value === undefined ? null : testClass(methodOf(record.test.method), nutrient, value.value_mg_per_kg);
}

/** How the sheet's salts read, on the scale of its own method. */
function saltReading(record: SoilTestRecord, tables: SoilTables): string | null {
  const { ec_dS_per_m, kind } = record.test;
  if (ec_dS_per_m === null) return null;
  if (kind === 'media') return mediaSaltClass(tables.ec_classes_media_ds_m, 'SME', ec_dS_per_m);
  return ec_dS_per_m < 2 ? 'low' : ec_dS_per_m <= 4 ? 'medium' : 'high';
}

/** A sheet as the page shows it: its head, its figures by class, its beds. */
export function testView(record: SoilTestRecord, tables: SoilTables) {
  const { test } = record;
  const values: ReadValue[] = record.values.map((value) => ({
    nutrient: value.nutrient,
    value_mg_per_kg: value.value_mg_per_kg,
    enteredValue: value.enteredValue,
    enteredUnit: value.enteredUnit,
    reading: testClass(methodOf(test.method), value.nutrient, value.value_mg_per_kg),
    warning: unlikelyValue(value.nutrient, value.value_mg_per_kg, value.enteredUnit as TestUnit)?.message ?? null,
  }));
  return { ...test, testId: test.id, values, beds: record.beds, saltReading: saltReading(record, tables) };
}

export type TestView = ReturnType<typeof testView>;

/** For each bed the sheets that speak for it, the newest first. */
export function testsByBed(records: readonly SoilTestRecord[]): ReadonlyMap<string, readonly SoilTestRecord[]> {
  const byBed = new Map<string, SoilTestRecord[]>();
  for (const record of records) {
    for (const { bedId } of record.beds) {
      const list = byBed.get(bedId) ?? [];
      list.push(record);
      byBed.set(bedId, list);
    }
  }
  return byBed;
}
