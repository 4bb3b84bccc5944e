import { type IsoDate, parseIsoDate } from '../calendar.ts';
import { celsiusOf, convert } from '../units/convert.ts';
import type { WeatherDay } from './weather-day.ts';

type Field = Exclude<keyof WeatherDay, 'date'>;
type Column = { readonly at: number; readonly name: string; readonly field: Field; readonly to: (value: number) => number };
export type PlainColumns = {
  readonly date: number;
  readonly station: number;
  readonly columns: readonly Column[];
};

const same = (value: number): number => value;
const fromPercent = (value: number): number => value / 100;

/** Names of columns that are understood, in small letters, with what brings their value to ours. */
const known: Readonly<Record<string, readonly [Field, (value: number) => number]>> = {
  temp_max: ['tmax_C', same],
  tmax: ['tmax_C', same],
  tmax_c: ['tmax_C', same],
  tmax_f: ['tmax_C', celsiusOf],
  temp_min: ['tmin_C', same],
  tmin: ['tmin_C', same],
  tmin_c: ['tmin_C', same],
  tmin_f: ['tmin_C', celsiusOf],
  precipitation: ['rain_mm', same],
  prcp: ['rain_mm', same],
  rain: ['rain_mm', same],
  rain_mm: ['rain_mm', same],
  rain_in: ['rain_mm', (value) => convert(value, 'in', 'mm')],
  wind: ['wind_m_per_s', same],
  awnd: ['wind_m_per_s', same],
  wind_m_per_s: ['wind_m_per_s', same],
  wind_km_per_h: ['wind_m_per_s', (value) => convert(value, 'km_per_h', 'm_per_s')],
  wind_mi_per_h: ['wind_m_per_s', (value) => convert(value, 'mi_per_h', 'm_per_s')],
  rhmin_share: ['rhmin_share', same],
  rhmin_pct: ['rhmin_share', fromPercent],
  rhmax_share: ['rhmax_share', same],
  rhmax_pct: ['rhmax_share', fromPercent],
  radiation_mj_per_m2: ['radiation_MJ_per_m2', same],
  dewpoint_c: ['dewPoint_C', same],
  dew_point_c: ['dewPoint_C', same],
};

/** What stands for a value that is not there. Common practice, no source. */
const missing = new Set(['', '-', 'n/a', 'na', 'null', '-9999']);

/** Where the understood columns are; undefined when there is no date or neither temperature nor rain. */
export function plainColumns(header: readonly string[]): PlainColumns | undefined {
  const names = header.map((cell) => cell.trim().toLowerCase());
  const date = names.indexOf('date');
  const columns = names.flatMap((name, at) => {
    const found = known[name];
    return found === undefined ? [] : [{ at, name: header[at]?.trim() ?? name, field: found[0], to: found[1] }];
  });
  const useful = columns.some(({ field }) => field === 'tmax_C' || field === 'rain_mm');
  return date < 0 || !useful ? undefined : { date, station: names.indexOf('station'), columns };
}

export type PlainRow = {
  readonly date: IsoDate;
  readonly station: string;
  readonly values: Partial<Record<Field, number | null>>;
  readonly faults: readonly { readonly column: string; readonly message: string }[];
};

/** One row of a plain table. @throws InputError when its date is none */
export function readPlainRow(columns: PlainColumns, cells: readonly string[]): PlainRow {
  const date = parseIsoDate((cells[columns.date] ?? '').trim().slice(0, 10).replaceAll('/', '-'), 'date');
  const values: Partial<Record<Field, number | null>> = {};
  const faults: { column: string; message: string }[] = [];
  for (const { at, name, field, to } of columns.columns) {
    const text = (cells[at] ?? '').trim();
    if (missing.has(text.toLowerCase())) {
      values[field] = null;
      continue;
    }
    const value = Number(text);
    if (Number.isFinite(value)) values[field] = to(value);
    else faults.push({ column: name, message: `"${text}" is not a number.` });
  }
  return { date, station: columns.station < 0 ? '' : (cells[columns.station] ?? '').trim(), values, faults };
}
