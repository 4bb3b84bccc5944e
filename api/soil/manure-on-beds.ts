import type { FarmDb } from '../../db/file/open-farm.ts';
import { applicationsOfFarm } from '../../db/repositories/applications.ts';
import { teaBatches } from '../../db/repositories/compost.ts';
import { plantingsOnBeds } from '../../db/repositories/feeding.ts';
import { addDays, daysBetween, type IsoDate } from '../../planner/calendar.ts';
import { manureInterval, touchesSoil } from '../../planner/fertility/manure-interval.ts';

/** Something of raw animal origin on a bed, and the harvest it may clash with. */
export type BedInterval = {
  readonly bedId: string;
  readonly code: string;
  readonly what: string;
  readonly date: string;
  readonly incorporated: boolean;
  readonly crop: string;
  readonly plantingId: string;
  readonly touchesSoil: boolean;
  readonly interval_days: number;
  readonly firstHarvest: string;
  readonly plannedHarvest: string;
  /** Below zero: the planned harvest comes so many days too early. */
  readonly spare_days: number;
};

/** Raw manure, and tea brewed with food for microbes, against every harvest planned within half a year. */
export function manureOnBeds(db: FarmDb, from: IsoDate): readonly BedInterval[] {
  const stands = Map.groupBy(plantingsOnBeds(db, addDays(from, -400), addDays(from, 800)), (each) => each.bedId);
  const raw = applicationsOfFarm(db)
    .filter((row) => row.material.animalOrigin === 'raw' && row.application.state !== 'skipped')
    .map((row) => ({
      bedId: row.bedId,
      code: row.code,
      what: row.material.name,
      date: row.application.incorporatedDate ?? row.application.date,
      incorporated: row.application.incorporatedDate !== null || row.application.state === 'planned',
    }));
  const fedTea = teaBatches(db)
    .filter((each) => each.tea.additives !== '' && each.tea.appliedDate !== null)
    .flatMap((each) =>
      each.beds.map((bed) => ({
        bedId: bed.bedId,
        code: bed.code,
        what: `Tea ${each.tea.code} with additives`,
        date: each.tea.appliedDate ?? '',
        incorporated: true,
      })),
    );
  return [...raw, ...fedTea]
    .flatMap((given) =>
      (stands.get(given.bedId) ?? [])
        .filter(
          (each) => each.firstHarvestDate >= given.date && each.cropGroup !== 'cut-flower' && each.cropGroup !== 'cover-crop',
        )
        .map((each): BedInterval => {
          const touches = each.touchesSoil ?? touchesSoil(each.cropGroup, false);
          const { interval_days, firstHarvest } = manureInterval(given.date, touches);
          return {
            ...given,
            crop: each.crop,
            plantingId: each.plantingId,
            touchesSoil: touches,
            interval_days,
            firstHarvest,
            plannedHarvest: each.firstHarvestDate,
            spare_days: daysBetween(firstHarvest, each.firstHarvestDate as IsoDate),
          };
        })
        .filter((each) => each.spare_days < 180),
    )
    .sort((a, b) => a.spare_days - b.spare_days || (a.code < b.code ? -1 : 1));
}
