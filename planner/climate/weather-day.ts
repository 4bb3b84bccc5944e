import type { IsoDate } from '../calendar.ts';

/** One day's weather. `null` is not known, never zero. */
export type WeatherDay = {
  readonly date: IsoDate;
  readonly tmin_C: number | null;
  readonly tmax_C: number | null;
  readonly rain_mm: number | null;
  readonly wind_m_per_s: number | null;
  readonly rhmin_share: number | null;
  readonly rhmax_share: number | null;
  readonly radiation_MJ_per_m2: number | null;
  readonly dewPoint_C: number | null;
};

/** Where the record was made. */
export type StationPlace = {
  readonly latitude_deg: number;
  readonly elevation_m: number;
  /** Height of the wind meter above the ground. */
  readonly windHeight_m: number;
  /** Coefficient of eq. 50: `INLAND_KRS`, or `COAST_KRS` near a large body of water. */
  readonly krs: number;
  /** Dry country, where the dew point stays about 2 degrees below the minimum. */
  readonly dry?: boolean;
};
