import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type BedRecord, bedsInUse, bedsRetired } from '../../db/repositories/beds.ts';
import { fillsUntil, movesUntil } from '../../db/repositories/cost-facts.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { areaOf } from '../harvest/areas-of-beds.ts';
import { type ValuedMove, valuedMoves } from './stock-charges.ts';

/** What seasons share: every bed with its ground, and the stock and fills from the farm's first day on. */
export type Books = {
  readonly beds: readonly { readonly record: BedRecord; readonly area_m2: number }[];
  /** What went out of stock up to a day. A moving average never looks ahead: later movements change no earlier value. */
  readonly usedUntil: (to: string) => readonly ValuedMove[];
  readonly fillsUntil: (to: string) => ReturnType<typeof fillsUntil>;
};

/** The books of a farm up to the end of its last season. */
export const booksOfFarm = (db: FarmDb): Books => derived(db, 'books', () => booksRead(db));

function booksRead(db: FarmDb): Books {
  const ends = seasonsOfFarm(db).map((season) => season.endDate);
  const last = ends.toSorted().at(-1) ?? '';
  const used = valuedMoves(movesUntil(db, last));
  const fills = fillsUntil(db, last);
  return {
    beds: [...bedsInUse(db), ...bedsRetired(db)].map((record) => ({ record, area_m2: areaOf(record) })),
    usedUntil: (to) => (to >= last ? used : used.filter((move) => move.date <= to)),
    fillsUntil: (to) => (to >= last ? fills : fills.filter((fill) => fill.date <= to)),
  };
}
