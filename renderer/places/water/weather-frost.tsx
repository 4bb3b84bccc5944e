import { dateOfYearDay } from '../../../planner/calendar.ts';
import { useReader } from '../../client/reader.tsx';
import type { WeatherRecord } from './weather-tab.tsx';

/** A year without 29 February, to print days of the year as dates. */
const PLAIN_YEAR = 2027;

/** Frost dates and dry spells of the record. */
export function WeatherFrost({ record }: { readonly record: WeatherRecord }) {
  const reader = useReader();
  const day = (value: number | null): string =>
    value === null ? 'none' : reader.date(dateOfYearDay(PLAIN_YEAR, Math.round(value))).replace(/,?\s*2027/, '');
  return (
    <div className="columns">
      <section className="panel stack">
        <h2>Frost</h2>
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">Chance</th>
              <th scope="col">Last in spring after</th>
              <th scope="col">First in fall before</th>
            </tr>
          </thead>
          <tbody>
            {record.frostDates.map(({ risk, spring, fall }) => (
              <tr key={risk}>
                <th scope="row">{Math.round(risk * 100)} %</th>
                <td>{day(spring)}</td>
                <td>{day(fall)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="small soft">
          {record.frosts.length < record.frostYearsWanted
            ? `From ${record.frosts.length} years only, by a normal curve: far too few to rely on. ${record.frostYearsWanted} years or more are wanted.`
            : `From ${record.frosts.length} years of record.`}{' '}
          At 0 °C (32 °F). Source: NOAA Climatography No. 20.
        </p>
      </section>
      <section className="panel stack">
        <h2>Longest dry spell</h2>
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">Year</th>
              <th scope="col">Days</th>
              <th scope="col">From</th>
              <th scope="col">To</th>
            </tr>
          </thead>
          <tbody>
            {record.dryRuns.slice(-12).map(({ year, run }) => (
              <tr key={year}>
                <th scope="row">{year}</th>
                <td>{run?.days ?? 0}</td>
                <td>{reader.date(run?.from ?? null)}</td>
                <td>{reader.date(run?.to ?? null)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="small soft">Days in a row with less than 1 mm of rain.</p>
      </section>
    </div>
  );
}
