import { derived, derivedRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import { linesWithBeds, weatherOfStation } from '../../db/repositories/proposal-facts.ts';
import { dateOfDay, dayOfYear, type IsoDate } from '../../planner/calendar.ts';
import { COAST_KRS, INLAND_KRS } from '../../planner/climate/radiation.ts';
import type { WeatherDay } from '../../planner/climate/weather-day.ts';
import { numberOf } from '../../planner/crops/crop-facts.ts';
import type { WaterUse } from '../../planner/season/proposal/option-of-dates.ts';
import { weekSupply_L } from '../../planner/season/proposal/week-supply.ts';
import { weeklyEto_mm_per_day } from '../../planner/season/proposal/weekly-eto.ts';
import { type CropCurve, scaledStages } from '../../planner/water/crop-curve.ts';
import { spanUse_L_per_m2 } from '../../planner/water/span-use.ts';
import type { CropShelf } from '../season/crop-shelf.ts';
import { flowsOf } from '../water/line-supply.ts';
import type { OwnFigures } from './own-figures.ts';

export type FarmWater = {
  readonly zoneNames: readonly string[];
  readonly zoneOfBed: ReadonlyMap<string, number>;
  readonly limit_L_per_week: readonly number[];
  readonly use: WaterUse;
  readonly notes: readonly string[];
};

/** Crop coefficients where the library has none: those of small vegetables. Source: FAO-56 Table 12. */
const USUAL_CURVE: CropCurve = { stages_days: [20, 30, 30, 10], kcIni: 0.7, kcMid: 1.05, kcEnd: 0.95 };

/** Water need by crop and week, and what each line gives in a week as solved, else its pump's or tap's flow. Beds on no line have no limit. */
export function waterOfFarm(db: FarmDb, farm: FarmRow, shelf: CropShelf, own: OwnFigures): FarmWater {
  const { lines, outlets } = linesWithBeds(db);
  const at = new Map(lines.map(({ lineId }, zone) => [lineId, zone]));
  const flows = derivedRows(db, 'proposal: flows of lines', () =>
    lines.map(({ lineId }) => ({ lineId, flow_L_per_h: flowsOf(db, lineId).flow_L_per_h })),
  );
  const supplies = lines.map((line, zone) => {
    const flow_L_per_h = flows[zone]?.flow_L_per_h ?? null;
    const solved = flow_L_per_h === null ? line : { tapFlow_L_per_min: null, pumpFlow_L_per_h: flow_L_per_h };
    return weekSupply_L(solved, own.pump_h_per_day);
  });
  const { stationId } = farm;
  const eto =
    stationId === null ? [] : derived(db, `weekly eto ${stationId} ${farm.coastal}`, () => etoOfStation(db, farm, stationId));
  const known = eto.some((each) => each !== null);
  return {
    zoneNames: [...lines.map(({ name }) => name), 'Beds on no line'],
    zoneOfBed: new Map(
      outlets.flatMap(({ bedId, lineId }) => (bedId === null ? [] : [[bedId, at.get(lineId) ?? lines.length] as const])),
    ),
    limit_L_per_week: [...supplies.map((supply) => supply ?? Infinity), Infinity],
    // kept with the spans that it has worked out
    use: known
      ? derived(db, `proposal: water use ${stationId} ${farm.coastal}`, () => waterUseOf(shelf, eto), [shelf, eto])
      : () => 0,
    notes: [
      ...(known ? [] : ['The farm has no weather record: the water of the plan is left out of account.']),
      ...lines
        .filter((_, zone) => supplies[zone] === null)
        .map(({ name }) => `${name}: neither a pump nor a tap flow is known, so no limit is set on its water.`),
    ],
  };
}

function etoOfStation(db: FarmDb, farm: FarmRow, stationId: string) {
  const { place, days } = weatherOfStation(db, stationId);
  if (place === undefined) return [];
  return weeklyEto_mm_per_day(
    days.map((day): WeatherDay => ({ ...day, date: day.date as IsoDate })),
    {
      latitude_deg: place.latitude_deg,
      elevation_m: place.elevation_m,
      windHeight_m: place.windHeight_m,
      krs: farm.coastal ? COAST_KRS : INLAND_KRS,
    },
  );
}

function waterUseOf(shelf: CropShelf, eto: readonly (number | null)[]): WaterUse {
  const curves = new Map<string, CropCurve>();
  const seen = new Map<string, readonly number[]>();
  const curveOf = (cropId: string): CropCurve => {
    const present = curves.get(cropId);
    if (present !== undefined) return present;
    const facts = shelf.facts(cropId);
    const stages = (['stage_ini_days', 'stage_dev_days', 'stage_mid_days', 'stage_late_days'] as const).map((name) =>
      numberOf(facts, name),
    );
    const [a, b, c, d] = stages;
    const made: CropCurve = {
      stages_days: a != null && b != null && c != null && d != null && a + b + c + d > 0 ? [a, b, c, d] : USUAL_CURVE.stages_days,
      kcIni: numberOf(facts, 'kc_ini') ?? USUAL_CURVE.kcIni,
      kcMid: numberOf(facts, 'kc_mid') ?? USUAL_CURVE.kcMid,
      kcEnd: numberOf(facts, 'kc_end') ?? USUAL_CURVE.kcEnd,
    };
    curves.set(cropId, made);
    return made;
  };
  const etoByDay = new Map<number, number>();
  const etoOn = (day: number): number => {
    const known = etoByDay.get(day) ?? eto[Math.min(52, Math.floor((dayOfYear(dateOfDay(day)) - 1) / 7))] ?? 0;
    etoByDay.set(day, known);
    return known;
  };
  return (cropId, inBed_day, free_day, monday_day) => {
    const key = `${cropId} ${inBed_day} ${free_day}`;
    let weeks = seen.get(key);
    const monday = inBed_day - ((((inBed_day + 3) % 7) + 7) % 7);
    if (weeks === undefined) {
      const curve = curveOf(cropId);
      const scaled = { ...curve, stages_days: scaledStages(curve.stages_days, Math.max(1, free_day - inBed_day)) };
      weeks = Array.from({ length: Math.ceil((free_day - monday) / 7) }, (_, at) => {
        const from = Math.max(inBed_day, monday + 7 * at);
        const to = Math.min(free_day, monday + 7 * (at + 1));
        return spanUse_L_per_m2(
          scaled,
          from - inBed_day + 1,
          Array.from({ length: Math.max(0, to - from) }, (_, k) => etoOn(from + k)),
        );
      });
      seen.set(key, weeks);
    }
    return weeks[Math.round((monday_day - monday) / 7)] ?? 0;
  };
}
