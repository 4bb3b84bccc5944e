import { derived, derivedRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type BedRecord, bedsInUse, bedsRetired } from '../../db/repositories/beds.ts';
import { type FillFact, fillsUntil, movesUntil } from '../../db/repositories/cost-facts.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { areaOf } from '../harvest/areas-of-beds.ts';
import { type ValuedMove, valuedMoves } from './stock-charges.ts';

/** Every bed that the farm ever had, with its ground. */
export const bedsOfBooks = (db: FarmDb): readonly BedOfBooks[] =>
  derived(db, 'books: beds', (before: readonly BedOfBooks[] | undefined) => {
    const known = new Map(before?.map((bed) => [bed.record, bed]));
    return [...bedsInUse(db), ...bedsRetired(db)].map((record) => known.get(record) ?? { record, area_m2: areaOf(record) });
  });

type BedOfBooks = { readonly record: BedRecord; readonly area_m2: number };

/** The end of the farm's last season: the books are read up to it once, whichever season is asked for. */
const lastDay = (db: FarmDb): string =>
  derived(
    db,
    'books: last day',
    () =>
      seasonsOfFarm(db)
        .map((season) => season.endDate)
        .toSorted()
        .at(-1) ?? '',
  );

/** What went out of stock up to a day. A moving average never looks ahead: later movements change no earlier value. */
export function usedUntil(db: FarmDb, to: string): readonly ValuedMove[] {
  const last = lastDay(db);
  const used = derived(db, `books: used ${last}`, () => valuedMoves(movesUntil(db, last)));
  return to >= last ? used : used.filter((move) => move.date <= to);
}

/** How long the fill of each bed is to last. */
const livesOfFills = (db: FarmDb) =>
  derivedRows(db, 'books: lives of fills', () =>
    bedsOfBooks(db).map(({ record }) => ({ bedId: record.bed.id, life_years: record.design.fillLife_years })),
  );

/** What was filled into beds up to a day. */
export function filledUntil(db: FarmDb, to: string): readonly FillFact[] {
  const last = lastDay(db);
  const fills = derived(db, `books: fills ${last}`, () => {
    const lives = new Map(livesOfFills(db).map(({ bedId, life_years }) => [bedId, life_years]));
    const rows = derived(db, `books: filled ${last}`, () => fillsUntil(db, last));
    return rows.map((row): FillFact => ({ ...row, life_years: lives.get(row.bedId) ?? 0 }));
  });
  return to >= last ? fills : fills.filter((fill) => fill.date <= to);
}
