import type { IsoDate } from '../../planner/calendar.ts';
import type { WeatherDay } from '../../planner/climate/weather-day.ts';

/** A mild dry day of a thermometer and a rain gauge, but for what is given. */
export const aWeatherDay = (date: string, over: Partial<WeatherDay> = {}): WeatherDay => ({
  date: date as IsoDate,
  tmin_C: 5,
  tmax_C: 15,
  rain_mm: 0,
  wind_m_per_s: null,
  rhmin_share: null,
  rhmax_share: null,
  radiation_MJ_per_m2: null,
  dewPoint_C: null,
  ...over,
});
