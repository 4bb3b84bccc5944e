import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { harvestsOfSeason, plantingGround, type Span, spansByPlanting, yieldHistory } from '../../db/repositories/yields.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { harvestWeeks, yieldPer_m2, yieldStanding } from '../../planner/costs/yield-against.ts';
import { areasOfBeds } from './areas-of-beds.ts';

/** What each planting of a season gave against what was expected of it and what the crop gave here before. */
export const yieldsOfSeason = (db: FarmDb, seasonId: string) => derived(db, `yields ${seasonId}`, () => yieldsRead(db, seasonId));

function yieldsRead(db: FarmDb, seasonId: string) {
  const areas = areasOfBeds(db);
  const spans = spansByPlanting(db);
  const days = Map.groupBy(harvestsOfSeason(db, seasonId), (row) => row.plantingId);
  const history = ownHistory(db, seasonId, areas, spans);
  return plantingGround(db, seasonId, spans).map((planting) => {
    const inUnit = (days.get(planting.plantingId) ?? []).filter((row) => row.unit === planting.yieldUnit);
    const harvested = inUnit.reduce((sum, row) => sum + row.amount, 0);
    const weeks = harvestWeeks(inUnit.map((row) => ({ date: row.date as IsoDate, amount: row.amount })));
    const area_m2 = planting.spans.reduce((sum, span) => sum + (areas.get(span.bedId) ?? 0) * (span.toShare - span.fromShare), 0);
    const plants = planting.plantsActual ?? planting.plants;
    const own = history.get(`${planting.cropId} ${planting.yieldUnit}`) ?? null;
    return {
      plantingId: planting.plantingId,
      cropId: planting.cropId,
      crop: planting.crop,
      number: planting.number,
      beds: planting.spans.map((span) => span.code).join(', '),
      state: planting.state,
      unit: planting.yieldUnit,
      harvested,
      expectedLow: planting.yieldLow,
      expected: planting.yieldTypical,
      expectedHigh: planting.yieldHigh,
      standing: yieldStanding(harvested, planting.yieldLow, planting.yieldHigh),
      reachedShare: planting.yieldTypical === null || planting.yieldTypical === 0 ? null : harvested / planting.yieldTypical,
      area_m2,
      perM2: yieldPer_m2(harvested, area_m2),
      perPlant: plants > 0 ? harvested / plants : null,
      ownPerM2: own,
      culls_kg: inUnit.reduce((sum, row) => sum + row.culls_kg, 0),
      weeks,
      missingWeeks: weeks.filter((week) => week.missing).length,
    };
  });
}

/** What each crop gave for each m2 in the seasons before, on the mean. */
function ownHistory(
  db: FarmDb,
  seasonId: string,
  areas: ReadonlyMap<string, number>,
  spans: ReadonlyMap<string, readonly Span[]>,
): ReadonlyMap<string, number> {
  const sums = new Map<string, { amount: number; area: number }>();
  for (const row of yieldHistory(db, seasonId, spans)) {
    const key = `${row.cropId} ${row.unit}`;
    const area = row.spans.reduce((sum, span) => sum + (areas.get(span.bedId) ?? 0) * (span.toShare - span.fromShare), 0);
    const known = sums.get(key) ?? { amount: 0, area: 0 };
    sums.set(key, { amount: known.amount + row.amount, area: known.area + area });
  }
  return new Map([...sums].flatMap(([key, { amount, area }]) => (area > 0 ? [[key, amount / area] as const] : [])));
}
