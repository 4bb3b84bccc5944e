import { type IsoDate, isIsoDate } from '../calendar.ts';
import { refuse } from '../errors.ts';

/** Elements that the program uses, with what one raw step is worth and in what unit it counts. */
const elements: Readonly<Record<string, { readonly unit: ReadingUnit; readonly step: number }>> = {
  TMAX: { unit: 'C', step: 0.1 },
  TMIN: { unit: 'C', step: 0.1 },
  TAVG: { unit: 'C', step: 0.1 },
  TOBS: { unit: 'C', step: 0.1 },
  MXPN: { unit: 'C', step: 0.1 },
  MNPN: { unit: 'C', step: 0.1 },
  ADPT: { unit: 'C', step: 0.1 },
  PRCP: { unit: 'mm', step: 0.1 },
  MDPR: { unit: 'mm', step: 0.1 },
  EVAP: { unit: 'mm', step: 0.1 },
  SNOW: { unit: 'mm', step: 1 },
  SNWD: { unit: 'mm', step: 1 },
  AWND: { unit: 'm_per_s', step: 0.1 },
  WSF2: { unit: 'm_per_s', step: 0.1 },
  WSF5: { unit: 'm_per_s', step: 0.1 },
  WSFG: { unit: 'm_per_s', step: 0.1 },
  TSUN: { unit: 'min', step: 1 },
  RHMN: { unit: 'pct', step: 1 },
  RHMX: { unit: 'pct', step: 1 },
  RHAV: { unit: 'pct', step: 1 },
  PSUN: { unit: 'pct', step: 1 },
};

export type ReadingUnit = 'C' | 'mm' | 'm_per_s' | 'min' | 'pct' | 'raw';

/** The archive's mark for a value that is not there. */
const MISSING = -9999;

export type NoaaReading = {
  readonly element: string;
  /** null when missing; kept for viewing, but not to be used, when a quality check failed. */
  readonly value: number | null;
  readonly unit: ReadingUnit;
  readonly measurementFlag: string;
  readonly qualityFlag: string;
  readonly sourceFlag: string;
  readonly observed_hhmm: string;
  /** Too little to measure: counts as 0. */
  readonly trace: boolean;
  /** There, and passed all of the archive's checks. */
  readonly accepted: boolean;
};

export type RawReading = {
  readonly element: string;
  readonly value: string | number;
  readonly measurementFlag?: string;
  readonly qualityFlag?: string;
  readonly sourceFlag?: string;
  readonly observed_hhmm?: string;
};

/**
 * One value of the daily archive with its three flags. Tenths become whole units; -9999 and an empty cell are missing, never
 * zero; any quality flag means that the value failed a check and is not used.
 * Source: readme of the Global Historical Climatology Network daily data set, NOAA NCEI (section III).
 * @throws InputError for a value that is no number
 */
export function noaaReading(raw: RawReading): NoaaReading {
  const text = String(raw.value).trim();
  const number = text === '' ? MISSING : Number(text);
  if (!Number.isFinite(number)) refuse('value', 'not-a-number', `${raw.element}: "${text}" is not a number.`);
  const known = elements[raw.element] ?? (/^S[NX]/.test(raw.element) ? elements['TMAX'] : undefined);
  const value = number === MISSING ? null : roundToStep(number * (known?.step ?? 1));
  const qualityFlag = (raw.qualityFlag ?? '').trim();
  const measurementFlag = (raw.measurementFlag ?? '').trim();
  return {
    element: raw.element,
    value,
    unit: known?.unit ?? 'raw',
    measurementFlag,
    qualityFlag,
    sourceFlag: (raw.sourceFlag ?? '').trim(),
    observed_hhmm: (raw.observed_hhmm ?? '').trim(),
    trace: measurementFlag === 'T' && value !== null,
    accepted: value !== null && qualityFlag === '',
  };
}

const roundToStep = (value: number): number => Math.round(value * 10) / 10;

/** `20240709` or `2024-07-09` as a calendar date. @throws InputError at `date` */
export function noaaDate(text: string): IsoDate {
  const trimmed = text.trim();
  const iso = /^\d{8}$/.test(trimmed) ? `${trimmed.slice(0, 4)}-${trimmed.slice(4, 6)}-${trimmed.slice(6)}` : trimmed;
  return isIsoDate(iso) ? iso : refuse('date', 'not-a-date', `"${trimmed}" is not a calendar date.`);
}

export type NoaaLine = NoaaReading & { readonly station: string; readonly date: IsoDate };

/**
 * One line of the archive's yearly files: station, date, element, value, measurement, quality and source flag, time.
 * @throws InputError for a line of another shape
 */
export function noaaLine(cells: readonly string[]): NoaaLine {
  const [station = '', date = '', element = '', value = '', measurementFlag = '', qualityFlag = '', sourceFlag = '', time = ''] =
    cells;
  if (cells.length < 4 || !/^[A-Z]{2}.{9}$/.test(station.trim()))
    refuse('station', 'other-shape', 'A line of this format begins with a station of 11 characters.');
  return {
    station: station.trim(),
    date: noaaDate(date),
    ...noaaReading({ element: element.trim(), value, measurementFlag, qualityFlag, sourceFlag, observed_hhmm: time }),
  };
}

/** A pair of cells of the archive's one-row-a-day file: the padded value, and `measurement,quality,source[,time]`. */
export function noaaCell(element: string, value: string, attributes: string): NoaaReading {
  const [measurementFlag = '', qualityFlag = '', sourceFlag = '', observed_hhmm = ''] = attributes.split(',');
  return noaaReading({ element, value, measurementFlag, qualityFlag, sourceFlag, observed_hhmm });
}

/**
 * One line of the fixed-width archive file: a station, a month, an element and 31 days of eight characters. Days that do not
 * exist are left out.
 * @throws InputError for a line of another shape
 */
export function noaaFixedLine(line: string): readonly NoaaLine[] {
  const shape = /^(.{11})(\d{4})(\d{2})([A-Z0-9]{4})(.*)$/.exec(line);
  if (shape === null)
    return refuse('line', 'other-shape', 'A line of this format begins with a station, a year, a month and an element.');
  const [, station = '', year = '', month = '', element = '', rest = ''] = shape;
  return Array.from({ length: 31 }, (_, at): NoaaLine | null => {
    const cell = rest.slice(at * 8, at * 8 + 8).padEnd(8);
    const date = `${year}-${month}-${String(at + 1).padStart(2, '0')}`;
    if (!isIsoDate(date)) return null;
    const [measurementFlag = '', qualityFlag = '', sourceFlag = ''] = [cell[5], cell[6], cell[7]];
    const reading = noaaReading({ element, value: cell.slice(0, 5), measurementFlag, qualityFlag, sourceFlag });
    return { station, date, ...reading };
  }).filter((each) => each !== null);
}
