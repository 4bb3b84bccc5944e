import { parse } from 'csv-parse/sync';
import { type FilledDay, fillGaps } from '../../planner/climate/fill-gaps.ts';
import { formatSays, type ReadDay, readWeather, type WeatherRead } from '../../planner/climate/read-weather.ts';
import { weatherDoubts, withoutAbsurd } from '../../planner/climate/weather-checks.ts';
import { refuse } from '../../planner/errors.ts';

/** Rows of a text file: comma, semicolon or tab by the first line; a fixed-width file one cell a row. */
function rowsOf(text: string): readonly (readonly string[])[] {
  const plain = text.replace(/^\uFEFF/, '');
  const first = plain.slice(0, plain.search(/\r?\n|$/));
  if (/^[A-Z]{2}\S{9}\d{6}[A-Z0-9]{4}/.test(first)) return plain.split(/\r?\n/).map((line) => [line]);
  const delimiter = [',', ';', '\t'].toSorted((a, b) => first.split(b).length - first.split(a).length)[0] ?? ',';
  try {
    return parse(plain, { delimiter, relax_column_count: true, skip_empty_lines: false, relax_quotes: true }) as string[][];
  } catch (error) {
    return refuse(
      'text',
      'not-a-table',
      `This file cannot be read as a table: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

/** A weather file read whole. @throws InputError when its shape is none of those known, or nothing in it is weather */
export function readWeatherFile(text: string): WeatherRead {
  if (text.trim() === '') refuse('text', 'empty', 'The file is empty.');
  const read = readWeather(rowsOf(text));
  if (read === undefined)
    return refuse(
      'text',
      'unknown-shape',
      'This is no weather file that can be read: it needs a column “date” and one for temperature or rain, or a NOAA daily format.',
    );
  if (read.days.length === 0) refuse('text', 'no-days', 'No day of weather was found in this file.');
  if (read.stations.length > 1)
    refuse(
      'text',
      'many-stations',
      `The file has ${read.stations.length} stations. Keep the lines of one: ${read.stations.slice(0, 4).join(', ')}.`,
    );
  return read;
}

const spread = (values: readonly (number | null)[]) => {
  const known = values.filter((value) => value !== null);
  return known.length === 0
    ? null
    : { least: Math.min(...known), most: Math.max(...known), missing: values.length - known.length };
};

/** What a grower is shown before anything is kept. */
export function previewOf(read: WeatherRead, latitude_deg: number) {
  const doubts = weatherDoubts(read.days, latitude_deg);
  const tmax = spread(read.days.map((day) => day.tmax_C));
  return {
    format: formatSays[read.format],
    stations: read.stations,
    from: read.days[0]?.date ?? '',
    to: read.days.at(-1)?.date ?? '',
    count: read.days.length,
    faults: read.faults.slice(0, 200),
    faultCount: read.faults.length,
    refused: read.refused,
    traces: read.traces,
    observedTimes: read.observedTimes,
    doubts: doubts.slice(0, 400),
    doubtCount: doubts.length,
    tmin: spread(read.days.map((day) => day.tmin_C)),
    tmax,
    rain: spread(read.days.map((day) => day.rain_mm)),
    first: read.days.slice(0, 5),
    warning:
      tmax !== null && tmax.most > 60
        ? 'The highest temperature is over 60: is the file in degrees Fahrenheit or in tenths? Name the column tmax_F for Fahrenheit.'
        : null,
  };
}

/** Days as they go into the farm: absurd values emptied; gaps filled only when that was agreed. */
export function daysToKeep(read: WeatherRead, fill: boolean): readonly (FilledDay & { readonly flags: string })[] {
  const flags = new Map(read.days.map((day: ReadDay) => [day.date, day.flags]));
  const useful = withoutAbsurd(read.days);
  const days = fill ? fillGaps(useful) : useful.map((day) => ({ ...day, filled: false }));
  return days.map((day) => ({ ...day, flags: flags.get(day.date) ?? '' }));
}
