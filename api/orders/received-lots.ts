import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { addMaterialLot, lotOfCode, type PurchaseLineRow } from '../../db/repositories/stock.ts';

type Came = { readonly lineId: string; readonly packages: number; readonly lot: string; readonly expiresDate: string | null };

/** Lots of what came, by purchase line: a lot known by its code is that lot, a new one is entered with its date. */
export function receivedLots(db: FarmDb, lines: readonly PurchaseLineRow[], came: readonly Came[]): ReadonlyMap<string, string> {
  const lots = new Map<string, string>();
  for (const { lineId, packages, lot: code, expiresDate } of came) {
    const line = lines.find((each) => each.lineId === lineId);
    if (line === undefined || packages <= 0 || code === '') continue;
    const { materialId, supplierId } = line;
    const known = lotOfCode(db, materialId, code);
    const lotId = known?.id ?? newId<string>();
    if (known === undefined) addMaterialLot(db, { id: lotId, materialId, code, supplierId, expiresDate });
    lots.set(lineId, lotId);
  }
  return lots;
}
