import { dateOfDay, dayNumber, dayOfYear, type IsoDate } from '../calendar.ts';
import { extraterrestrial_MJ_per_m2 } from './sun.ts';
import type { WeatherDay } from './weather-day.ts';

export type WeatherDoubt = {
  readonly date: IsoDate;
  readonly field: keyof WeatherDay;
  readonly code: 'out-of-bounds' | 'minimum-above-maximum' | 'repeated' | 'too-bright' | 'missing' | 'no-row';
  readonly message: string;
};

/** Bounds beyond the world's records, so that only an absurd value falls outside. From memory: WMO extremes. */
const bounds = {
  tmin_C: [-90, 45, 'C'],
  tmax_C: [-90, 57, 'C'],
  rain_mm: [0, 1900, 'mm'],
  wind_m_per_s: [0, 60, 'm/s'],
  rhmin_share: [0, 1, ''],
  rhmax_share: [0, 1, ''],
  radiation_MJ_per_m2: [0, 50, 'MJ/m2'],
  dewPoint_C: [-90, 36, 'C'],
} as const;

type Bounded = keyof typeof bounds;
const names = Object.keys(bounds) as Bounded[];
const words: Readonly<Record<Bounded, string>> = {
  tmin_C: 'lowest temperature',
  tmax_C: 'highest temperature',
  rain_mm: 'rain',
  wind_m_per_s: 'wind',
  rhmin_share: 'least humidity',
  rhmax_share: 'greatest humidity',
  radiation_MJ_per_m2: 'sunlight',
  dewPoint_C: 'dew point',
};

/** Days in a row with the very same pair of temperatures before it looks like a stuck meter. Common practice, no source. */
const STUCK_DAYS = 5;

/** Everything in a record that a grower should look at: absurd values, gaps, stuck meters. In order of date. */
export function weatherDoubts(days: readonly WeatherDay[], latitude_deg: number): readonly WeatherDoubt[] {
  const found: WeatherDoubt[] = [];
  let same = 0;
  days.forEach((day, at) => {
    const say = (field: keyof WeatherDay, code: WeatherDoubt['code'], message: string): void => {
      found.push({ date: day.date, field, code, message });
    };
    for (const name of names) {
      const value = day[name];
      const [least, most, unit] = bounds[name];
      if (value !== null && (value < least || value > most))
        say(name, 'out-of-bounds', `The ${words[name]}, ${value} ${unit}, is beyond anything measured on earth.`);
    }
    if (day.tmin_C !== null && day.tmax_C !== null && day.tmin_C > day.tmax_C)
      say('tmin_C', 'minimum-above-maximum', `The night’s ${day.tmin_C} C is above the day’s ${day.tmax_C} C.`);
    for (const name of ['tmin_C', 'tmax_C', 'rain_mm'] as const)
      if (day[name] === null) say(name, 'missing', `No ${words[name]} on this day.`);
    const sun = day.radiation_MJ_per_m2;
    if (sun !== null && sun > extraterrestrial_MJ_per_m2(latitude_deg, dayOfYear(day.date)) + 0.5)
      say('radiation_MJ_per_m2', 'too-bright', `${sun} MJ/m2 is more sunlight than reaches the top of the air here on this day.`);
    const before = days[at - 1];
    same =
      before !== undefined && before.tmax_C !== null && before.tmax_C === day.tmax_C && before.tmin_C === day.tmin_C
        ? same + 1
        : 0;
    if (same === STUCK_DAYS - 1) say('tmax_C', 'repeated', `The same temperatures for ${STUCK_DAYS} days: a stuck meter?`);
    if (before !== undefined) {
      for (let gap = dayNumber(before.date) + 1; gap < dayNumber(day.date); gap += 1)
        found.push({ date: dateOfDay(gap), field: 'date', code: 'no-row', message: 'No row for this day.' });
    }
  });
  return found.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

/** The same record with absurd values emptied: what may be used. */
export function withoutAbsurd(days: readonly WeatherDay[]): readonly WeatherDay[] {
  return days.map((day) => {
    const kept: Record<Bounded, number | null> = { ...pick(day) };
    for (const name of names) {
      const value = day[name];
      if (value !== null && (value < bounds[name][0] || value > bounds[name][1])) kept[name] = null;
    }
    if (kept.tmin_C !== null && kept.tmax_C !== null && kept.tmin_C > kept.tmax_C) {
      kept.tmin_C = null;
      kept.tmax_C = null;
    }
    return { date: day.date, ...kept };
  });
}

const pick = ({ date: _, ...rest }: WeatherDay): Record<Bounded, number | null> => rest;
