import type { PlantingRecord } from '../../db/repositories/plantings.ts';
import { dayNumber, daysBetween, type IsoDate } from '../../planner/calendar.ts';
import type { KnownFacts } from '../../planner/crops/crop-facts.ts';
import { type GrowthClock, madeBetween } from '../../planner/season/growth-clock.ts';
import { type Course, replan } from '../../planner/season/replan.ts';
import { heatRuleOf, type SeasonClocks } from './season-clocks.ts';

/** A planting's course for the replan: what it needs on its clock is what its plan gives it there. */
export function courseOf(record: PlantingRecord, clocks: SeasonClocks, heat: GrowthClock | null): Course {
  const inBed = record.inBedDate as IsoDate;
  const first = record.firstHarvestDate as IsoDate;
  const [clockKey, clock] =
    heat !== null
      ? (['heat', heat] as const)
      : record.datesBy === 'hand'
        ? (['plain', clocks.plain] as const)
        : (['light', clocks.byLight] as const);
  const made = madeBetween(clock, dayNumber(inBed), dayNumber(first));
  return {
    id: record.id,
    // a crop that its plan ripens where its clock stands still is counted by plain days
    clockKey: made > 0 ? clockKey : 'plain',
    need: made > 0 ? made : daysBetween(inBed, first),
    indoors_days: record.sowDate === null ? 0 : Math.max(0, daysBetween(record.sowDate as IsoDate, inBed)),
    window_days: daysBetween(first, record.lastHarvestDate as IsoDate),
    turnover_days: daysBetween(record.lastHarvestDate as IsoDate, record.clearDate as IsoDate),
    sow: record.sowDate as IsoDate | null,
    inBed,
    sown: record.sownActual as IsoDate | null,
    wentIn: record.inBedActual as IsoDate | null,
    firstPicked: record.firstHarvestActual as IsoDate | null,
    lastPicked: record.lastHarvestActual as IsoDate | null,
    cleared: record.clearedActual as IsoDate | null,
    pinned: record.pinned,
  };
}

const hasHappened = (record: PlantingRecord): boolean =>
  record.sownActual !== null ||
  record.inBedActual !== null ||
  record.firstHarvestActual !== null ||
  record.lastHarvestActual !== null ||
  record.clearedActual !== null;

export type EffectiveDates = {
  readonly sow: IsoDate | null;
  readonly inBed: IsoDate;
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  readonly free: IsoDate;
};

/** The dates that hold now: as planned, or moved by what has really happened. */
export function effectiveDates(record: PlantingRecord, clocks: SeasonClocks, facts: KnownFacts): EffectiveDates {
  if (!hasHappened(record))
    return {
      sow: record.sowDate as IsoDate | null,
      inBed: record.inBedDate as IsoDate,
      firstHarvest: record.firstHarvestDate as IsoDate,
      lastHarvest: record.lastHarvestDate as IsoDate,
      free: record.clearDate as IsoDate,
    };
  const rule = record.datesBy === 'heat' ? heatRuleOf(facts) : null;
  const heat = rule === null ? null : clocks.normals(rule);
  const keyed = new Map([
    ...(heat === null ? [] : [['heat', heat] as const]),
    ['light', clocks.byLight],
    ['plain', clocks.plain],
  ]);
  const [now] = replan([courseOf(record, clocks, heat)], keyed);
  if (now === undefined) throw new Error('A replan answers once for each planting.');
  const { sow, inBed, firstHarvest, lastHarvest, free } = now;
  return { sow, inBed, firstHarvest, lastHarvest, free };
}
