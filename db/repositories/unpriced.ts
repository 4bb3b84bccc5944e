import { and, eq, gt, sql } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bedFill, bedPart } from '../schema/beds.ts';
import { stockMove } from '../schema/stock.ts';
import { linePart } from '../schema/water.ts';

/**
 * Gives a price of a base unit to all that has none of a material: what is in beds and lines, what was counted, and what was used
 * without ever having come in. `units_per_L` turns a volume into base units; where it is not known, fills stay as they are.
 */
export function setUnknownPrice(db: FarmDb, materialId: string, price_minor: number, units_per_L: number | null): number {
  const cost = (amount: unknown) => sql`cast(round(${amount} * ${price_minor}) as integer)`;
  const parts = [bedPart, linePart].map((part) =>
    db
      .update(part)
      .set({ price_minor: sql`${part.price_minor} + ${cost(part.unpricedAmount)}`, unpricedAmount: 0 })
      .where(and(eq(part.materialId, materialId), gt(part.unpricedAmount, 0)))
      .run(),
  );
  const fills =
    units_per_L === null
      ? []
      : [
          db
            .update(bedFill)
            .set({
              cost_minor: sql`${bedFill.cost_minor} + ${cost(sql`${bedFill.unpriced_L} * ${units_per_L}`)}`,
              unpriced_L: 0,
            })
            .where(and(eq(bedFill.materialId, materialId), gt(bedFill.unpriced_L, 0)))
            .run(),
        ];
  const moves = db
    .update(stockMove)
    .set({ value_minor: cost(stockMove.amount), unpriced: false })
    .where(and(eq(stockMove.materialId, materialId), eq(stockMove.unpriced, true)))
    .run();
  return [...parts, ...fills, moves].reduce((sum, each) => sum + each.changes, 0);
}
