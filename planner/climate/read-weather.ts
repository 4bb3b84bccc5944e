import type { IsoDate } from '../calendar.ts';
import { InputError } from '../errors.ts';
import { ownValue } from '../own-value.ts';
import { type NoaaLine, type NoaaReading, noaaCell, noaaDate, noaaFixedLine, noaaLine } from './noaa-reading.ts';
import { plainColumns, readPlainRow } from './plain-weather.ts';
import type { WeatherDay } from './weather-day.ts';

export type WeatherFormat = 'element-lines' | 'station-days' | 'fixed-width' | 'plain-days';

export const formatSays: Readonly<Record<WeatherFormat, string>> = {
  'element-lines': 'NOAA daily archive, one element and day a line',
  'station-days': 'NOAA daily archive, one day a row',
  'fixed-width': 'NOAA daily archive, fixed width',
  'plain-days': 'One day a row, columns by name',
};

/** A day as read: what may be used, and the marks to show beside it. */
export type ReadDay = WeatherDay & { readonly flags: string };

export type ReadFault = { readonly line: number; readonly column: string; readonly message: string };

export type WeatherRead = {
  readonly format: WeatherFormat;
  readonly stations: readonly string[];
  readonly days: readonly ReadDay[];
  readonly faults: readonly ReadFault[];
  /** Values that failed the archive's own checks and are not used. */
  readonly refused: number;
  readonly traces: number;
  readonly observedTimes: readonly string[];
};

type Field = Exclude<keyof WeatherDay, 'date'>;
type Draft = { [K in Field]: number | null } & { flags: string[] };

const fieldOf: Readonly<Record<string, Field>> = {
  TMAX: 'tmax_C',
  TMIN: 'tmin_C',
  PRCP: 'rain_mm',
  AWND: 'wind_m_per_s',
  ADPT: 'dewPoint_C',
  RHMN: 'rhmin_share',
  RHMX: 'rhmax_share',
};

const empty = (): Draft => ({
  tmin_C: null,
  tmax_C: null,
  rain_mm: null,
  wind_m_per_s: null,
  rhmin_share: null,
  rhmax_share: null,
  radiation_MJ_per_m2: null,
  dewPoint_C: null,
  flags: [],
});

/** Which of the four shapes a file has, from its first row; undefined when it is none. */
export function weatherFormat(rows: readonly (readonly string[])[]): WeatherFormat | undefined {
  const first = rows[0];
  if (first === undefined) return undefined;
  const names = first.map((cell) => cell.trim().toUpperCase());
  if (names.some((name) => name.endsWith('_ATTRIBUTES'))) return 'station-days';
  if (/^[A-Z]{2}\S{9}\d{6}[A-Z0-9]{4}/.test(first[0] ?? '')) return 'fixed-width';
  if (names[0] === 'ID' && names[2] === 'ELEMENT') return 'element-lines';
  if (first.length >= 4 && /^[A-Z]{2}\S{9}$/.test(names[0] ?? '') && /^\d{8}$/.test(names[1] ?? '')) return 'element-lines';
  return plainColumns(first) === undefined ? undefined : 'plain-days';
}

class Gathering {
  readonly #days = new Map<IsoDate, Draft>();
  readonly stations = new Set<string>();
  readonly times = new Set<string>();
  readonly faults: ReadFault[] = [];
  refused = 0;
  traces = 0;

  day(date: IsoDate): Draft {
    const known = this.#days.get(date);
    if (known !== undefined) return known;
    const fresh = empty();
    this.#days.set(date, fresh);
    return fresh;
  }

  put(date: IsoDate, reading: NoaaReading): void {
    const field = ownValue(fieldOf, reading.element);
    if (field === undefined || reading.value === null) return;
    const day = this.day(date);
    if (!reading.accepted) {
      this.refused += 1;
      day.flags.push(`${reading.element} failed check ${reading.qualityFlag}`);
      return;
    }
    if (reading.trace) {
      this.traces += 1;
      day.flags.push(`${reading.element} trace`);
    }
    if (reading.observed_hhmm !== '') this.times.add(reading.observed_hhmm);
    day[field] = reading.unit === 'pct' ? reading.value / 100 : reading.value;
  }

  attempt(line: number, column: string, work: () => void): void {
    try {
      work();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.faults.push(...error.faults.map((fault) => ({ line, column: column || fault.path, message: fault.message })));
    }
  }

  days(): readonly ReadDay[] {
    return [...this.#days]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([date, { flags, ...values }]) => ({ date, ...values, flags: flags.join('; ') }));
  }
}

/**
 * Reads a weather file that was split into rows. Nothing is guessed silently: each bad cell is reported by line and column,
 * values that failed the archive's checks are counted and left empty.
 * @param rows cells of each line, the first line included; a fixed-width file gives one cell a row
 * @returns undefined when the file has none of the known shapes
 */
export function readWeather(rows: readonly (readonly string[])[]): WeatherRead | undefined {
  const format = weatherFormat(rows);
  if (format === undefined) return undefined;
  const all = new Gathering();
  const put = (lines: readonly NoaaLine[]): void => {
    for (const each of lines) {
      all.stations.add(each.station);
      all.put(each.date, each);
    }
  };
  const header = (rows[0] ?? []).map((cell) => cell.trim());
  const skip = format === 'plain-days' || format === 'station-days' || header[0]?.toUpperCase() === 'ID' ? 1 : 0;
  const columns = format === 'plain-days' ? plainColumns(header) : undefined;
  rows.slice(skip).forEach((cells, at) => {
    const line = at + skip + 1;
    if (cells.every((cell) => cell.trim() === '')) return;
    if (format === 'element-lines') all.attempt(line, '', () => put([noaaLine(cells)]));
    else if (format === 'fixed-width') all.attempt(line, '', () => put(noaaFixedLine(cells[0] ?? '')));
    else if (format === 'station-days') readStationRow(all, header, cells, line);
    else if (columns !== undefined) {
      all.attempt(line, 'date', () => {
        const read = readPlainRow(columns, cells);
        all.faults.push(...read.faults.map((fault) => ({ line, ...fault })));
        Object.assign(all.day(read.date), read.values);
        if (read.station !== '') all.stations.add(read.station);
      });
    }
  });
  return {
    format,
    stations: [...all.stations],
    days: all.days(),
    faults: all.faults,
    refused: all.refused,
    traces: all.traces,
    observedTimes: [...all.times].sort(),
  };
}

function readStationRow(all: Gathering, header: readonly string[], cells: readonly string[], line: number): void {
  const cell = (name: string): string => cells[header.indexOf(name)] ?? '';
  all.attempt(line, 'DATE', () => {
    const date = noaaDate(cell('DATE'));
    all.day(date);
    if (cell('STATION') !== '') all.stations.add(cell('STATION').trim());
    for (const element of Object.keys(fieldOf)) {
      if (!header.includes(element)) continue;
      all.attempt(line, element, () => all.put(date, noaaCell(element, cell(element), cell(`${element}_ATTRIBUTES`))));
    }
  });
}
