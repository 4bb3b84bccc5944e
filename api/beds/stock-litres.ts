import type { FarmDb } from '../../db/file/open-farm.ts';
import { stockBalances } from '../../db/repositories/bed-history.ts';
import { materialFacts } from '../../db/repositories/stock.ts';
import { litresPerBaseUnit } from '../../planner/soil/base-unit.ts';

/** Litres, loose, in a base unit of each material for which that is known. */
export function litresInUnit(db: FarmDb): ReadonlyMap<string, number> {
  return new Map(
    [...materialFacts(db)].flatMap(([materialId, facts]) => {
      const per = litresPerBaseUnit(facts);
      return per === null ? [] : [[materialId, per] as const];
    }),
  );
}

/** What lies in stock by volume. What is kept by weight or piece and has no density known cannot serve a fill, and is left out. */
export function stockLitres(db: FarmDb): ReadonlyMap<string, number> {
  const litres = litresInUnit(db);
  return new Map(
    [...stockBalances(db)].flatMap(([materialId, amount]) => {
      const per = litres.get(materialId);
      return per === undefined ? [] : [[materialId, amount * per] as const];
    }),
  );
}
