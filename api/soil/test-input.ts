import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { NewSoilTest, NewSoilTestValue } from '../../db/repositories/soil-tests.ts';
import type { soilTestBed } from '../../db/schema/soil.ts';
import { isIsoDate } from '../../planner/calendar.ts';
import { type Fault, InputError } from '../../planner/errors.ts';
import { testMethods } from '../../planner/fertility/test-class.ts';
import { testUnits, testValue_mg_per_kg } from '../../planner/fertility/test-value.ts';

const number = (least: number, most: number, sentence: string) => z.number(sentence).min(least, sentence).max(most, sentence);
const ph = number(2.5, 10.5, 'A soil pH lies between 2.5 and 10.5.').nullable();

/** A laboratory sheet as it is entered. */
export const soilTestInput = z.object({
  date: z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-03-09.'),
  laboratory: z.string().max(120).default(''),
  sample: z.string().max(120).default(''),
  kind: z.enum(['soil', 'media']),
  method: z.enum(testMethods),
  depth_m: number(0.01, 2, 'A sample is 0.01 to 2 m deep.').nullable(),
  texture: z.string().max(40).nullable(),
  ph,
  bufferPh: number(3.5, 9, 'A buffer pH lies between 3.5 and 9.').nullable(),
  bufferMethod: z.enum(['sikora', 'smp', 'mehlich']).nullable(),
  organicMatterShare: number(0, 1, 'Organic matter is 0 to 100 %.').nullable(),
  cec_meq_per_100g: number(0, 200, 'An exchange capacity is 0 to 200 meq/100 g.').nullable(),
  ec_dS_per_m: number(0, 60, 'A conductivity is 0 to 60 dS/m.').nullable(),
  lead_mg_per_kg: number(0, 100_000, 'Lead is 0 or more mg/kg.').nullable(),
  note: z.string().max(2000).default(''),
  values: z.array(z.object({ nutrient: z.string().min(1).max(12), value: z.number(), unit: z.enum(testUnits) })).max(40),
  bedIds: z.array(z.string()).max(20_000),
});

export type SoilTestInput = z.output<typeof soilTestInput>;

/** A slice of 6.67 in at 1.324 g/cm3, where the sheet states no depth: 2,000,000 lb an acre. */
const SLICE = { depth_m: 0.1694, bulkDensity_kg_per_m3: 1323.8 } as const;
/** Bulk density for figures by area of a medium, where none is measured. Common practice, no source. */
const MEDIA_DENSITY_KG_PER_M3 = 450;

export type SoilTestRows = {
  readonly test: NewSoilTest;
  readonly values: readonly NewSoilTestValue[];
  readonly beds: readonly (typeof soilTestBed.$inferInsert)[];
};

/** A sheet as rows of the farm file, its figures in mg/kg beside what was entered. @throws InputError at each figure's field */
export function rowsOfTest(input: SoilTestInput, testId: string = newId()): SoilTestRows {
  const { values, bedIds, ...head } = input;
  const faults: Fault[] = [];
  const twice = new Set<string>();
  const rows = values.flatMap((given, at): NewSoilTestValue[] => {
    if (twice.has(given.nutrient)) {
      faults.push({ path: `values.${at}.nutrient`, code: 'twice', message: `${given.nutrient} stands on this sheet twice.` });
      return [];
    }
    twice.add(given.nutrient);
    try {
      const value_mg_per_kg = testValue_mg_per_kg({
        nutrient: given.nutrient,
        value: given.value,
        unit: given.unit,
        depth_m: head.depth_m ?? SLICE.depth_m,
        bulkDensity_kg_per_m3: head.kind === 'media' ? MEDIA_DENSITY_KG_PER_M3 : SLICE.bulkDensity_kg_per_m3,
      });
      return [
        { id: newId(), testId, nutrient: given.nutrient, value_mg_per_kg, enteredValue: given.value, enteredUnit: given.unit },
      ];
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      faults.push(...error.faults.map((fault) => ({ ...fault, path: `values.${at}.${fault.path}` })));
      return [];
    }
  });
  if (head.bufferPh !== null && head.bufferMethod === null)
    faults.push({
      path: 'bufferMethod',
      code: 'missing',
      message: 'Which buffer did the laboratory use? Lime by another buffer’s table would be wrong.',
    });
  if (bedIds.length === 0)
    faults.push({ path: 'bedIds', code: 'missing', message: 'Choose the beds that this sample speaks for.' });
  if (faults.length > 0) throw new InputError(faults);
  return {
    test: { id: testId, ...head },
    values: rows,
    beds: [...new Set(bedIds)].map((bedId) => ({ id: newId(), testId, bedId })),
  };
}
