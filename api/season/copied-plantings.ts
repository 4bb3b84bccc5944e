import { newId } from '../../db/file/new-id.ts';
import type { NewPlanting, NewSpan, PlantingRecord, SpanRecord } from '../../db/repositories/plantings.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { LearnedOfCrop } from '../../planner/season/learned.ts';
import { carriedOver } from '../../planner/season/next-season.ts';

export type CopyInput = {
  readonly seasonId: string;
  readonly records: readonly PlantingRecord[];
  /** None to leave the plantings without beds. */
  readonly spans: readonly SpanRecord[];
  readonly years: number;
  readonly learned: readonly LearnedOfCrop[];
  /** Area that each planting stands on, for yields learned by the square metre. */
  readonly area_m2: ReadonlyMap<string, number>;
};

const happened = (record: PlantingRecord): string =>
  [record.cropId, record.varietyId ?? '', record.method, record.yieldUnit].join('/');

/** Rows of a season copied from another: planned dates a whole number of years on, what happened left behind. */
export function copiedPlantings({ seasonId, records, spans, years, learned, area_m2 }: CopyInput): {
  readonly rows: readonly NewPlanting[];
  readonly spans: readonly NewSpan[];
  readonly corrected: number;
} {
  const known = new Map(learned.map((each) => [[each.cropId, each.varietyId ?? '', each.method, each.unit].join('/'), each]));
  const newIds = new Map(records.map((record) => [record.id, newId<string>()]));
  let corrected = 0;
  const rows = records.map((record): NewPlanting => {
    const own = known.get(happened(record));
    const toHarvest_days = own?.toHarvest_days?.mean ?? null;
    const window_days = own?.window_days?.mean ?? null;
    const yields = own?.yield_per_m2 ?? null;
    const area = area_m2.get(record.id) ?? 0;
    if (toHarvest_days !== null || window_days !== null || yields !== null) corrected += 1;
    const dates = carriedOver(
      {
        sow: record.sowDate as IsoDate | null,
        potOn: record.potOnDate as IsoDate | null,
        inBed: record.inBedDate as IsoDate,
        firstHarvest: record.firstHarvestDate as IsoDate,
        lastHarvest: record.lastHarvestDate as IsoDate,
        free: record.clearDate as IsoDate,
      },
      years,
      { toHarvest_days, window_days },
    );
    const { sownActual, inBedActual, firstHarvestActual, lastHarvestActual, clearedActual, plantsActual, ...plan } = record;
    return {
      ...plan,
      id: newIds.get(record.id) ?? newId<string>(),
      seasonId,
      successionId: null,
      sowDate: dates.sow,
      potOnDate: dates.potOn,
      inBedDate: dates.inBed,
      firstHarvestDate: dates.firstHarvest,
      lastHarvestDate: dates.lastHarvest,
      clearDate: dates.free,
      ...(yields === null || area === 0
        ? {}
        : { yieldLow: yields.least * area, yieldTypical: yields.mean * area, yieldHigh: yields.most * area }),
      state: 'planned',
      seedLotId: null,
      revision: 1,
    };
  });
  return {
    rows,
    corrected,
    spans: spans.flatMap((span): NewSpan[] => {
      const plantingId = newIds.get(span.plantingId);
      return plantingId === undefined ? [] : [{ ...span, id: newId<string>(), plantingId }];
    }),
  };
}
