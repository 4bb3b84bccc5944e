/** A run of weather as the daily loop wants it: no gaps, one entry a day. */
export type WeatherRun = {
  readonly eto_mm: Float64Array;
  readonly rain_mm: Float64Array;
  /** Day of the year, 0 for 1 January. */
  readonly yearDay: Int16Array;
  /** Year of each day. */
  readonly year: Int16Array;
};

/** A part of a run. */
export const partOfRun = (run: WeatherRun, from: number, to: number): WeatherRun => ({
  eto_mm: run.eto_mm.subarray(from, to),
  rain_mm: run.rain_mm.subarray(from, to),
  yearDay: run.yearDay.subarray(from, to),
  year: run.year.subarray(from, to),
});

export type RunDay = { readonly year: number; readonly yearDay: number; readonly eto_mm: number; readonly rain_mm: number };

/** A run from plain days. */
export function weatherRun(days: readonly RunDay[]): WeatherRun {
  return {
    eto_mm: Float64Array.from(days, (day) => day.eto_mm),
    rain_mm: Float64Array.from(days, (day) => day.rain_mm),
    yearDay: Int16Array.from(days, (day) => day.yearDay),
    year: Int16Array.from(days, (day) => day.year),
  };
}
