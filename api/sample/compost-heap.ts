import type { compostBatch, compostIngredient, compostReading, teaBatch, teaBatchBed } from '../../db/schema/soil.ts';
import type { BedRow } from './designs.ts';

type Rows = {
  readonly heaps: (typeof compostBatch.$inferInsert)[];
  readonly ingredients: (typeof compostIngredient.$inferInsert)[];
  readonly readings: (typeof compostReading.$inferInsert)[];
  readonly teas: (typeof teaBatch.$inferInsert)[];
  readonly teaBeds: (typeof teaBatchBed.$inferInsert)[];
};

/** Temperatures of an invented heap from its second day on; every third day it was turned. */
const heat_C = [38, 51, 58, 61, 63, 60, 62, 64, 61, 59, 62, 60, 58, 57, 59, 58, 56, 55, 53, 49, 44, 39] as const;
const IN_HEAP: readonly (readonly [string, number])[] = [
  ['grass-clippings-loose', 180],
  ['leaves-loose', 150],
  ['straw', 60],
  ['manure-horse', 120],
];

/** One finished heap a year with its log, and a tea brewed from the last. Invented. */
export function sampleCompost(years: readonly number[], beds: readonly BedRow[], areas: ReadonlyMap<string, number>): Rows {
  const rows: Rows = { heaps: [], ingredients: [], readings: [], teas: [], teaBeds: [] };
  for (const year of years) {
    const id = `compost-${year}`;
    rows.heaps.push({
      id,
      code: `C-${year}-1`,
      startedDate: `${year}-04-10`,
      curedDate: `${year}-08-20`,
      method: 'turned-windrow',
      place: 'bay 1',
      made_L: 900,
      note: 'Invented log.',
    });
    for (const [materialId, amount_kg] of IN_HEAP)
      rows.ingredients.push({ id: `${id}-${materialId}`, batchId: id, materialId, amount_kg });
    for (const [at, temperature_C] of heat_C.entries()) {
      const date = `${year}-04-${String(11 + at).padStart(2, '0')}`;
      if (at + 11 > 30) continue;
      rows.readings.push({ id: `${id}-${at}`, batchId: id, date, temperature_C, turned: at % 3 === 2, who: 'AN' });
    }
  }
  const last = years.at(-1);
  const drenched = beds.slice(0, 8);
  if (last === undefined || drenched.length === 0) return rows;
  const teaId = `tea-${last}`;
  rows.teas.push({
    id: teaId,
    code: `T-${last}-1`,
    compostBatchId: `compost-${last}`,
    startedAt: `${last}-09-02T18:00`,
    useByAt: `${last}-09-04T04:00`,
    tank_L: 20,
    compost_kg: 0.9,
    dilution: 4,
    waterSource: 'public supply, stood a day',
    appliedDate: `${last}-09-04`,
    note: 'Invented.',
  });
  for (const bed of drenched)
    rows.teaBeds.push({ id: `${teaId}-${bed.id}`, batchId: teaId, bedId: bed.id, volume_L: 0.5 * (areas.get(bed.id) ?? 0) });
  return rows;
}
