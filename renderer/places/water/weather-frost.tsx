import { dateOfYearDay } from '../../../planner/calendar.ts';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import type { WeatherRecord } from './weather-tab.tsx';

/** A year without 29 February, to print days of the year as dates. */
const PLAIN_YEAR = 2027;

/** Frost dates and dry spells of the record. */
export function WeatherFrost({ record }: { readonly record: WeatherRecord }) {
  const reader = useReader();
  const day = (value: number | null): string =>
    value === null ? say('none') : reader.date(dateOfYearDay(PLAIN_YEAR, Math.round(value)), 'day');
  return (
    <div className="columns">
      <section className="panel stack">
        <h2>{say('Frost')}</h2>
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">{say('Chance')}</th>
              <th scope="col">{say('Last in spring after')}</th>
              <th scope="col">{say('First in fall before')}</th>
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
          {say('{more} At {freezing}. Source: NOAA Climatography No. 20.', {
            freezing: reader.print(0, 'C'),
            more:
              record.frosts.length < record.frostYearsWanted
                ? say(
                    'From {frosts} years only, by a normal curve: far too few to rely on. {frostYearsWanted} years or more are wanted.',
                    { frosts: record.frosts.length, frostYearsWanted: record.frostYearsWanted },
                  )
                : say('From {frosts} years of record.', { frosts: record.frosts.length }),
          })}
        </p>
      </section>
      <section className="panel stack">
        <h2>{say('Longest dry spell')}</h2>
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">{say('Year')}</th>
              <th scope="col">{say('Days')}</th>
              <th scope="col">{say('From')}</th>
              <th scope="col">{say('To')}</th>
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
        <p className="small soft">{say('Days in a row with less than 1 mm of rain.')}</p>
      </section>
    </div>
  );
}
