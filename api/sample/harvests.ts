import type { harvest, harvestLot, sale, saleLine } from '../../db/schema/harvests.ts';
import type { labourEntry } from '../../db/schema/work.ts';
import { addDays, dayOfYear, daysBetween, type IsoDate, yearOf } from '../../planner/calendar.ts';
import type { MadePlanting } from './plantings.ts';
import type { Random } from './random.ts';

type HarvestRow = typeof harvest.$inferInsert;
type LotRow = typeof harvestLot.$inferInsert;
type SaleRow = typeof sale.$inferInsert;
type SaleLineRow = typeof saleLine.$inferInsert;
type LabourRow = typeof labourEntry.$inferInsert;

export type PastSeason = {
  readonly harvests: HarvestRow[];
  readonly lots: LotRow[];
  readonly sales: SaleRow[];
  readonly saleLines: SaleLineRow[];
  readonly labour: LabourRow[];
};

const DAYS_BETWEEN_PICKS = 7;
const WAGE_MINOR_PER_H = 1900;
const HARVEST_MIN_PER_MINOR = 0.012;

const shortCode = (cropId: string): string =>
  cropId
    .replaceAll(/[^a-z]/g, '')
    .toUpperCase()
    .replaceAll(/[IO]/g, '')
    .slice(0, 5);

/** What a past season brought: weekly picks with their lots and sales, and the hours they and the beds took. All invented. */
export function pastSeason(plantings: readonly MadePlanting[], outletIds: readonly string[], random: Random): PastSeason {
  const result: PastSeason = { harvests: [], lots: [], sales: [], saleLines: [], labour: [] };
  const salesByDay = new Map<string, string>();
  const saleFor = (date: IsoDate, outletId: string): string => {
    const key = `${date}:${outletId}`;
    const known = salesByDay.get(key);
    if (known !== undefined) return known;
    const id = `sale-${date}-${outletId}`;
    salesByDay.set(key, id);
    result.sales.push({ id, date, outletId, documentNumber: `S-${date.replaceAll('-', '')}-${salesByDay.size}` });
    return id;
  };
  const work = (planting: MadePlanting, date: string, task: string, minutes: number) => {
    result.labour.push({
      id: `labour-${result.labour.length}-${planting.row.id}`,
      date,
      task,
      minutes: Math.max(3, Math.round(minutes)),
      wage_minor_per_h: WAGE_MINOR_PER_H,
      plantingId: planting.row.id,
      bedId: planting.bed.bedId,
    });
  };

  for (const planting of plantings) {
    const { row, choice, area_m2, bed } = planting;
    work(planting, row.inBedActual ?? row.inBedDate, choice.method === 'direct' ? 'sow' : 'set out', 6 + 5 * area_m2);
    work(
      planting,
      addDays((row.inBedActual ?? row.inBedDate) as IsoDate, 20),
      'weed',
      4 + 3 * area_m2 * random.between(0.5, 1.5),
    );
    const first = (row.firstHarvestActual ?? row.firstHarvestDate) as IsoDate;
    const last = row.lastHarvestDate as IsoDate;
    const picks = Math.max(1, Math.floor(daysBetween(first, last) / DAYS_BETWEEN_PICKS) + 1);
    const total = (row.yieldTypical ?? 0) * Math.exp(random.between(-0.55, 0.4));
    const weights = Array.from({ length: picks }, (_, at) => 1 + Math.min(at, picks - 1 - at) + random.next());
    const sum = weights.reduce((all, each) => all + each, 0);
    weights.forEach((weight, at) => {
      const date = addDays(first, at * DAYS_BETWEEN_PICKS);
      const share = (total * weight) / sum;
      const amount = choice.unit === 'kg' ? Number(share.toFixed(2)) : Math.round(share);
      if (amount <= 0) return;
      const id = `harvest-${row.id.slice(9)}-${at + 1}`;
      const code = `${shortCode(choice.cropId)}-${yearOf(date)}${String(dayOfYear(date)).padStart(3, '0')}-${bed.bedId.slice(4).toUpperCase().replaceAll('-', '')}-${row.number ?? 1}`;
      const outletId = random.pick(outletIds);
      const labour_min = Math.max(4, Math.round(amount * choice.price_minor * HARVEST_MIN_PER_MINOR * random.between(0.7, 1.4)));
      const weight_kg =
        choice.unit === 'kg' ? amount : choice.weight_kg === null ? null : Number((amount * choice.weight_kg).toFixed(2));
      result.lots.push({ id: `lot-${id}`, code, date });
      result.harvests.push({
        id,
        date,
        plantingId: row.id,
        bedId: bed.bedId,
        amount,
        unit: choice.unit,
        weight_kg,
        culls_kg: weight_kg === null ? 0 : Number((weight_kg * random.between(0, 0.12)).toFixed(2)),
        outletId,
        price_minor: choice.price_minor,
        labour_min,
        lotId: `lot-${id}`,
        picker: random.pick(['AN', 'JM', 'KT']),
        createdAt: `${date}T17:00:00`,
      });
      result.labour.push({
        id: `labour-${id}`,
        date,
        task: 'harvest',
        minutes: labour_min,
        wage_minor_per_h: WAGE_MINOR_PER_H,
        plantingId: row.id,
        bedId: bed.bedId,
        harvestId: id,
      });
      const sold =
        choice.unit === 'kg'
          ? Number((amount * random.between(0.86, 1)).toFixed(2))
          : Math.round(amount * random.between(0.86, 1));
      if (sold <= 0) return;
      const saleId = saleFor(addDays(date, 1), outletId);
      result.saleLines.push({
        id: `sold-${id}`,
        saleId,
        lotId: `lot-${id}`,
        harvestId: id,
        plantingId: row.id,
        amount: sold,
        unit: choice.unit,
        price_minor: choice.price_minor,
        paid_minor: Math.round(sold * choice.price_minor),
        outcome: 'sold',
      });
    });
    work(planting, row.clearDate, 'clear', 3 + 3 * area_m2);
  }
  return result;
}
