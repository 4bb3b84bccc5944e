import type { FarmDb } from '../../db/file/open-farm.ts';
import { fillDates, type partsInUse } from '../../db/repositories/bed-history.ts';
import { partDue } from '../../planner/beds/part-life.ts';
import { remainingValue_minor } from '../../planner/beds/remaining-value.ts';
import { type IsoDate, yearOf } from '../../planner/calendar.ts';
import type { BedNeed } from './fill-needs-of-farm.ts';
import type { LoadedBed } from './load-beds.ts';

type WholeFarmInput = {
  readonly beds: readonly LoadedBed[];
  readonly parts: ReturnType<typeof partsInUse>;
  readonly needs: readonly BedNeed[];
  readonly today: IsoDate;
  readonly db: FarmDb;
};

/** Sums over all beds in use: by block, by year of parts due, and what it all is still worth. */
export function wholeFarm({ beds, parts, needs, today, db }: WholeFarmInput) {
  const topUp = new Map<string, number>();
  for (const need of needs) topUp.set(need.bedId, (topUp.get(need.bedId) ?? 0) + need.loose_L);
  const value = valueByBed(beds, parts, today, db);
  const sum = (rows: readonly LoadedBed[], read: (bed: LoadedBed) => number): number =>
    rows.reduce((all, bed) => all + read(bed), 0);
  const totals = (rows: readonly LoadedBed[]) => ({
    beds: rows.length,
    area_m2: sum(rows, (bed) => bed.figures?.area_m2 ?? 0),
    fill_L: sum(rows, (bed) => bed.figures?.fill_L ?? 0),
    water_L: sum(rows, (bed) => bed.figures?.water_L ?? 0),
    topUp_L: sum(rows, (bed) => topUp.get(bed.bed.id) ?? 0),
    wet_kg: sum(rows, (bed) => bed.figures?.wet_kg ?? 0),
    value_minor: sum(rows, (bed) => value.get(bed.bed.id) ?? 0),
  });
  const byBlock = Map.groupBy(beds, (bed) => bed.block.id);
  return {
    all: totals(beds),
    blocks: [...byBlock].map(([blockId, rows]) => ({
      blockId,
      block: rows[0]?.block.code ?? '',
      name: rows[0]?.block.name ?? '',
      ...totals(rows),
    })),
    topUps: byMaterial(needs),
    due: partsDue(parts),
  };
}

function byMaterial(needs: readonly BedNeed[]) {
  return [...Map.groupBy(needs, (need) => need.materialId)].map(([materialId, rows]) => ({
    materialId: materialId as string,
    material: rows[0]?.material ?? '',
    beds: new Set(rows.map((row) => row.bedId)).size,
    loose_L: rows.reduce((all, row) => all + row.loose_L, 0),
  }));
}

function partsDue(parts: WholeFarmInput['parts']) {
  const dated = parts.map((part) => ({ ...part, year: yearOf(partDue(part.installedDate as IsoDate, part.life_years)) }));
  return [...Map.groupBy(dated, (part) => `${part.year} ${part.materialId}`)]
    .map(([key, rows]) => ({
      key,
      year: rows[0]?.year ?? 0,
      part: rows[0]?.name ?? '',
      beds: new Set(rows.map((row) => row.bedId)).size,
      amount: rows.reduce((all, row) => all + row.amount, 0),
      cost_minor: rows.reduce((all, row) => all + row.price_minor, 0),
    }))
    .toSorted((a, b) => a.year - b.year || a.part.localeCompare(b.part));
}

function valueByBed(
  beds: readonly LoadedBed[],
  parts: WholeFarmInput['parts'],
  today: IsoDate,
  db: FarmDb,
): ReadonlyMap<string, number> {
  const value = new Map<string, number>();
  const add = (bedId: string, amount_minor: number): void => {
    value.set(bedId, (value.get(bedId) ?? 0) + amount_minor);
  };
  for (const part of parts)
    add(part.bedId, remainingValue_minor(part.price_minor, part.life_years, part.installedDate as IsoDate, today));
  const life = new Map(beds.map((bed) => [bed.bed.id, bed.design.fillLife_years]));
  for (const fill of fillDates(db)) {
    const life_years = life.get(fill.bedId);
    if (life_years !== undefined && fill.firstDate !== null)
      add(fill.bedId, remainingValue_minor(fill.cost_minor, life_years, fill.firstDate as IsoDate, today));
  }
  return value;
}
