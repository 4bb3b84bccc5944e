import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { type FarmRow, farmOfFile } from '../../db/repositories/farm.ts';
import { daysOfStation, type StationRow, stationOfId, type WeatherDayRow } from '../../db/repositories/weather.ts';
import { dayOfYear, type IsoDate, isLeapYear } from '../../planner/calendar.ts';
import { COAST_KRS, INLAND_KRS } from '../../planner/climate/radiation.ts';
import { type Assumed, assumedSays, type EtoMethod, referenceEt } from '../../planner/climate/reference-et.ts';
import { leastHumidity_share } from '../../planner/climate/vapour.ts';
import type { StationPlace, WeatherDay } from '../../planner/climate/weather-day.ts';
import { windAt2m_m_per_s } from '../../planner/climate/wind.ts';
import { type WeatherRun, weatherRun } from '../../planner/water/weather-run.ts';

export type RecordDay = WeatherDay & { readonly eto_mm: number | null; readonly filled: boolean };

export type WeatherRecord = {
  readonly station: StationRow;
  readonly place: StationPlace;
  readonly days: readonly RecordDay[];
  /** Years without a gap, in order: those that plans are run through. */
  readonly years: readonly number[];
  readonly yearsWithGaps: readonly number[];
  /** How the reference was reckoned, and what stood in for a measurement. */
  readonly methods: readonly { readonly method: EtoMethod; readonly days: number }[];
  readonly assumed: readonly string[];
  /** Mean wind and least humidity of the warm half of the year; null without wind. */
  readonly air: { readonly wind2m_m_per_s: number; readonly rhmin_share: number } | null;
};

export const weatherDayOf = ({ stationId: _, flags: __, filled: ___, date, ...values }: WeatherDayRow): WeatherDay => ({
  ...values,
  date: date as IsoDate,
});

export const placeOf = (station: StationRow, farm: FarmRow): StationPlace => ({
  latitude_deg: station.latitude_deg,
  elevation_m: station.elevation_m,
  windHeight_m: station.windHeight_m,
  krs: farm.coastal ? COAST_KRS : INLAND_KRS,
});

/** The farm's weather with its reference evapotranspiration; null when no station is chosen. */
export const weatherOfFarm = (db: FarmDb): WeatherRecord | null => derived(db, 'weather', () => recordRead(db));

function recordRead(db: FarmDb): WeatherRecord | null {
  const farm = farmOfFile(db);
  if (farm === undefined) return null;
  const station = farm.stationId === null ? undefined : stationOfId(db, farm.stationId);
  if (station === undefined) return null;
  const place = placeOf(station, farm);
  const methods = new Map<EtoMethod, number>();
  const assumed = new Set<Assumed>();
  const days = daysOfStation(db, station.id).map((row): RecordDay => {
    const day = weatherDayOf(row);
    const et = referenceEt(day, place);
    if (et.state === 'known') {
      methods.set(et.method, (methods.get(et.method) ?? 0) + 1);
      for (const each of et.assumed) assumed.add(each);
    }
    return { ...day, eto_mm: et.state === 'known' ? et.eto_mm_per_day : null, filled: row.filled };
  });
  const { whole, gaps } = splitYears(days);
  return {
    station,
    place,
    days,
    years: whole,
    yearsWithGaps: gaps,
    methods: [...methods].map(([method, count]) => ({ method, days: count })),
    assumed: [...assumed].map((each) => assumedSays[each]),
    air: airOf(days, place),
  };
}

function splitYears(days: readonly RecordDay[]) {
  const known = new Map<number, number>();
  for (const day of days) {
    const year = Number(day.date.slice(0, 4));
    known.set(year, (known.get(year) ?? 0) + (day.eto_mm !== null && day.rain_mm !== null ? 1 : 0));
  }
  const years = [...known].sort(([a], [b]) => a - b);
  const isWhole = ([year, count]: readonly [number, number]): boolean => count === (isLeapYear(year) ? 366 : 365);
  return {
    whole: years.filter(isWhole).map(([year]) => year),
    gaps: years.filter((each) => !isWhole(each)).map(([year]) => year),
  };
}

/** Warm half of the year: April to September in the north. */
function airOf(days: readonly RecordDay[], place: StationPlace): WeatherRecord['air'] {
  let wind = 0;
  let windDays = 0;
  let humid = 0;
  let humidDays = 0;
  for (const day of days) {
    const month = Number(day.date.slice(5, 7));
    if ((month >= 4 && month <= 9) !== place.latitude_deg >= 0) continue;
    if (day.wind_m_per_s !== null) {
      wind += windAt2m_m_per_s(day.wind_m_per_s, place.windHeight_m);
      windDays += 1;
    }
    const least =
      day.rhmin_share ??
      (day.tmin_C !== null && day.tmax_C !== null ? leastHumidity_share(day.dewPoint_C ?? day.tmin_C, day.tmax_C) : null);
    if (least !== null) {
      humid += least;
      humidDays += 1;
    }
  }
  return windDays === 0 || humidDays === 0 ? null : { wind2m_m_per_s: wind / windDays, rhmin_share: humid / humidDays };
}

/** One whole year of the record as the daily balance wants it. */
export const runOfYear = (record: WeatherRecord, year: number): WeatherRun =>
  runOf(record.days.filter((day) => Number(day.date.slice(0, 4)) === year));

const runs = new WeakMap<WeatherRecord, WeatherRun>();

/** All whole years one after the other, the same for the same record. A gap between years is bridged: the year before ends in winter. */
export function runOfYears(record: WeatherRecord): WeatherRun {
  const whole = new Set(record.years);
  const run = runs.get(record) ?? runOf(record.days.filter((day) => whole.has(Number(day.date.slice(0, 4)))));
  runs.set(record, run);
  return run;
}

const runOf = (days: readonly RecordDay[]): WeatherRun =>
  weatherRun(
    days.map((day) => ({
      year: Number(day.date.slice(0, 4)),
      yearDay: dayOfYear(day.date) - 1,
      eto_mm: day.eto_mm ?? 0,
      rain_mm: day.rain_mm ?? 0,
    })),
  );
