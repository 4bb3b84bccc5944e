import type { FarmDb } from '../../db/file/open-farm.ts';
import { rainRecord } from '../../db/repositories/water-lines.ts';
import { addDays, daysBetween, type IsoDate } from '../../planner/calendar.ts';
import { afterTheStop, dryRun, partingPlaces } from '../../planner/irrigation/after-the-stop.ts';
import { lineReport } from '../../planner/irrigation/line-report.ts';
import { programmeDays, type ZoneFlow } from '../../planner/irrigation/programme-water.ts';
import { type DrawDownInput, drawDown, refillDates } from '../../planner/irrigation/reservoir.ts';
import { reservoirYears } from '../../planner/irrigation/reservoir-years.ts';
import type { LoadedLine } from './load-line.ts';

/** Dry days after which a roof has to be washed again (common practice, no source). */
const DRY_DAYS = 3;
/** How far the coming refills are looked for. */
const AHEAD_DAYS = 60;

/** What each zone passes as the valves stand, reservoir full. */
export function zoneFlows(line: LoadedLine): readonly ZoneFlow[] {
  return lineReport(line.plan).zones.map((zone) => ({ zone: zone.zone, total_L_per_h: zone.now?.total_L_per_h ?? 0 }));
}

/** The reservoir of a line as it is drawn down; null where the line has none or its size is not known. */
export function reservoirInput(line: LoadedLine): Omit<DrawDownInput, 'days' | 'start_L' | 'refilledByHand'> | null {
  const row = line.record.line;
  if (row.supply === 'tap' || row.reservoir_L === null) return null;
  return {
    capacity_L: row.reservoir_L,
    usableShare: row.usableShare,
    floatTopUp_L_per_day: row.floatTopUp_L_per_day ?? 0,
    catchment:
      row.roofArea_m2 === null
        ? null
        : {
            area_m2: row.roofArea_m2,
            catchShare: row.roofShare ?? 0.9,
            firstFlush_mm: row.firstFlush_mm ?? 0,
            dryDays: DRY_DAYS,
          },
  };
}

/** Refills that are coming from the level last looked at, taken without rain: the earliest that may be needed. */
export function comingRefills(line: LoadedLine, today: IsoDate) {
  const reservoir = reservoirInput(line);
  if (reservoir === null) return [];
  const { level_L, levelDate } = line.record.line;
  const from = levelDate === null || levelDate > today ? today : (levelDate as IsoDate);
  const start_L = Math.min(reservoir.capacity_L, level_L ?? reservoir.capacity_L);
  const span = Math.min(400, AHEAD_DAYS + Math.max(0, daysBetween(from, today)));
  const dry = Array.from({ length: span }, (_, at) => ({ date: addDays(from, at), rain_mm: 0 }));
  const days = programmeDays(line.record.timers, zoneFlows(line), dry);
  return refillDates(drawDown({ ...reservoir, start_L, refilledByHand: true, days })).filter((refill) => refill.date >= today);
}

/** The line's reservoir through every year of record, what comes next, and what happens when the pump stops. */
export function reservoirOfLine(db: FarmDb, line: LoadedLine, today: IsoDate) {
  const reservoir = reservoirInput(line);
  const row = line.record.line;
  const record = rainRecord(db);
  const years = reservoir === null ? [] : reservoirYears(reservoir, programmeDays(line.record.timers, zoneFlows(line), record));
  const pump = line.plan.pump;
  return {
    years: years.map(({ days, ...year }) => ({
      ...year,
      days: days.map((day) => ({ date: day.date, level_L: day.level_L, refill_L: day.refill_L })),
    })),
    refills: comingRefills(line, today),
    aheadDays: AHEAD_DAYS,
    afterStop: afterTheStop({
      plan: line.plan,
      vented: row.vented,
      ventHole_m: row.ventHole_m,
      reservoirArea_m2: row.reservoirArea_m2,
    }),
    dryRun: pump === null || row.lowLevel_m === null ? null : dryRun(pump.inletHeight_m, row.lowLevel_m),
    parting: partingPlaces(line.plan),
    hasProgramme: line.record.timers.length > 0,
  };
}
