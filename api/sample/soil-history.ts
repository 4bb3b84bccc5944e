import type { application, applicationBed, soilTest, soilTestBed, soilTestValue } from '../../db/schema/soil.ts';
import type { BedRow } from './designs.ts';
import type { Random } from './random.ts';

type Rows = {
  readonly tests: (typeof soilTest.$inferInsert)[];
  readonly values: (typeof soilTestValue.$inferInsert)[];
  readonly testBeds: (typeof soilTestBed.$inferInsert)[];
  readonly applications: (typeof application.$inferInsert)[];
  readonly applicationBeds: (typeof applicationBed.$inferInsert)[];
};

const ranges: Readonly<Record<string, readonly [number, number]>> = {
  P: [28, 140],
  K: [70, 210],
  Ca: [700, 1900],
  Mg: [60, 220],
  S: [8, 22],
};

/** Invented laboratory sheets, one a block and year, and the feather meal and lime of past springs. */
export function soilHistory(
  years: readonly number[],
  beds: readonly BedRow[],
  areas: ReadonlyMap<string, number>,
  seasonOf: (year: number) => string,
  random: Random,
): Rows {
  const rows: Rows = { tests: [], values: [], testBeds: [], applications: [], applicationBeds: [] };
  const blocks = [...new Set(beds.map((bed) => bed.blockId))];
  for (const year of years) {
    for (const blockId of blocks) {
      const here = beds.filter((bed) => bed.blockId === blockId);
      const media = blockId === 'block-b' || blockId === 'block-c';
      const id = `test-${year}-${blockId}`;
      rows.tests.push({
        id,
        date: `${year}-02-18`,
        laboratory: 'Invented laboratory',
        sample: `Block ${blockId.slice(-1).toUpperCase()}`,
        kind: media ? 'media' : 'soil',
        method: media ? 'saturated-paste' : 'mehlich-3',
        depth_m: media ? null : 0.15,
        texture: media ? null : blockId === 'block-d' ? 'sandy loam' : 'loam',
        ph: Number(random.between(media ? 5.4 : 5.6, 6.7).toFixed(1)),
        bufferPh: media ? null : Number(random.between(6.2, 6.8).toFixed(1)),
        bufferMethod: media ? null : 'smp',
        organicMatterShare: media ? null : Number(random.between(0.03, 0.075).toFixed(3)),
        cec_meq_per_100g: media ? null : Number(random.between(8, 16).toFixed(1)),
        ec_dS_per_m: Number(random.between(media ? 0.8 : 0.2, media ? 3.2 : 0.7).toFixed(2)),
        note: 'Invented figures.',
      });
      for (const [nutrient, [low, high]] of Object.entries(ranges)) {
        const value = Math.round(random.between(low, high) + (nutrient === 'P' ? (year - (years[0] ?? year)) * 9 : 0));
        rows.values.push({
          id: `${id}-${nutrient}`,
          testId: id,
          nutrient,
          value_mg_per_kg: value,
          enteredValue: value,
          enteredUnit: 'ppm',
        });
      }
      for (const bed of here) rows.testBeds.push({ id: `${id}-${bed.id}`, testId: id, bedId: bed.id });
      const dose = (materialId: string, kg_per_m2: number, date: string, reason: string) => {
        const applicationId = `application-${year}-${blockId}-${materialId}`;
        rows.applications.push({
          id: applicationId,
          seasonId: seasonOf(year),
          materialId,
          date,
          state: 'done',
          method: 'broadcast',
          incorporatedDate: date,
          reason,
          who: 'AN',
        });
        for (const bed of here)
          rows.applicationBeds.push({
            id: `${applicationId}-${bed.id}`,
            applicationId,
            bedId: bed.id,
            amount_kg: Number(((areas.get(bed.id) ?? 0) * kg_per_m2).toPrecision(3)),
          });
      };
      if (blockId !== 'block-e') dose('feather-meal', 0.09, `${year}-04-02`, 'nitrogen for the season');
      if (blockId === 'block-a' || blockId === 'block-d') dose('lime-pelleted', 0.2, `${year}-03-08`, 'soil test');
    }
  }
  return rows;
}
