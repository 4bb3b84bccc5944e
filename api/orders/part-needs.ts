import type { FarmDb } from '../../db/file/open-farm.ts';
import { partsInUse } from '../../db/repositories/bed-history.ts';
import { linePartsInUse } from '../../db/repositories/line-parts.ts';
import { partDue } from '../../planner/beds/part-life.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { FarmNeed } from '../../planner/orders/needs.ts';

/** Parts of beds and of water lines that have served their life by the end of the season. */
export function partNeeds(db: FarmDb, end: IsoDate): readonly FarmNeed[] {
  return [
    ...partsInUse(db).flatMap((part) => {
      const due = partDue(part.installedDate as IsoDate, part.life_years);
      return wornBy(end, {
        key: `part:${part.bedId}:${part.materialId}:${part.installedDate}`,
        source: 'worn-part',
        materialId: part.materialId,
        amount: part.amount,
        reason: `Worn part of ${part.code}, due ${due}`,
        wanted: due,
      });
    }),
    ...linePartsInUse(db).flatMap((part) => {
      const due = partDue(part.installedDate as IsoDate, part.life_years);
      return wornBy(end, {
        key: `line-part:${part.linePartId}`,
        source: 'line-part',
        materialId: part.materialId,
        amount: part.amount,
        reason: `Worn part of ${part.line}: ${part.name}, due ${due}`,
        wanted: due,
      });
    }),
  ];
}

const wornBy = (end: IsoDate, need: FarmNeed): readonly FarmNeed[] => (need.wanted > end ? [] : [need]);
