import type { station, weatherDay } from '../../db/schema/weather.ts';
import { csvRecords } from '../library/csv-records.ts';

export const SAMPLE_STATION: typeof station.$inferInsert = {
  id: 'station-coast',
  name: 'Coast near 47.6 N, 2012-2015',
  latitude_deg: 47.6,
  longitude_deg: -122.3,
  elevation_m: 130,
  windHeight_m: 10,
  source:
    'Daily observations of the US National Oceanic and Atmospheric Administration (US Government work), from the open data package vega-datasets 3.2.1',
};

/** The shipped weather record: real days of an open data set. */
export function sampleWeather(resources: string): (typeof weatherDay.$inferInsert)[] {
  return csvRecords(resources, 'weather/coast-47n-2012-2015.csv').map((record) => ({
    stationId: SAMPLE_STATION.id,
    date: (record['date'] ?? '').slice(0, 10).replaceAll('/', '-'),
    tmin_C: Number(record['temp_min']),
    tmax_C: Number(record['temp_max']),
    rain_mm: Number(record['precipitation']),
    wind_m_per_s: Number(record['wind']),
  }));
}
