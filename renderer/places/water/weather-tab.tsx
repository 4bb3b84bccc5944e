import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { shortMonthNames } from '../../words/months.ts';
import { say } from '../../words/say.ts';
import { WeatherFrost } from './weather-frost.tsx';
import { WeatherImport } from './weather-import.tsx';

export type WeatherRecord = OutputOf<typeof api.weather.record>;
type Station = WeatherRecord['stations'][number];

/** Stations and their records, and reading new files. */
export function WeatherTab() {
  const reading = useRead(api.weather.record, undefined);
  return <Shown reading={reading}>{(record) => <WeatherBody record={record} />}</Shown>;
}

function WeatherBody({ record }: { readonly record: WeatherRecord }) {
  const [importing, setImporting] = useState(false);
  const button = (
    <Button weight="main" icon="add" onClick={() => setImporting(true)}>
      {say('Read a weather file')}
    </Button>
  );
  return (
    <div className="stack">
      {importing ? <WeatherImport record={record} onClose={() => setImporting(false)} /> : null}
      {record.stations.length === 0 ? (
        <Empty title={say('No weather yet')} action={button}>
          {say(
            'Read daily weather of a station near you: minimum, maximum and rain are enough. The daily archive of the US National Oceanic and Atmospheric Administration is open to all.',
          )}
        </Empty>
      ) : (
        <>
          <div className="row">{button}</div>
          <Stations record={record} />
          {record.stationId === null ? null : (
            <>
              <Months record={record} />
              <WeatherFrost record={record} />
              <Doubts record={record} />
            </>
          )}
        </>
      )}
    </div>
  );
}

function Stations({ record }: { readonly record: WeatherRecord }) {
  const reader = useReader();
  const choose = useChange(api.weather.choose);
  const remove = useChange(api.weather.remove);
  return (
    <div className="heat-scroll">
      <table className="plain-table">
        <caption className="heard-only">{say('Weather stations')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('Station')}</th>
            <th scope="col">{say('Place')}</th>
            <th scope="col">{say('Days')}</th>
            <th scope="col">{say('Filled')}</th>
            <th scope="col">{say('From')}</th>
            <th scope="col">{say('To')}</th>
            <th scope="col">
              <span className="heard-only">{say('What to do')}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {record.stations.map((station: Station) => (
            <tr key={station.stationId}>
              <th scope="row" title={station.source}>
                {station.name}
              </th>
              <td>
                {reader.print(station.latitude_deg, '', 4)}, {reader.print(station.longitude_deg, '', 5)},{' '}
                {reader.print(station.elevation_m, 'm', 3)}
              </td>
              <td>{station.days}</td>
              <td>{station.filled}</td>
              <td>{reader.date(station.from)}</td>
              <td>{reader.date(station.to)}</td>
              <td>
                {station.stationId === record.stationId ? (
                  <span className="state-mark" data-tone="good">
                    {say('The farm’s record')}
                  </span>
                ) : (
                  <Button
                    weight="quiet"
                    onClick={() =>
                      void choose.run(
                        { stationId: station.stationId },
                        say('{station} is the farm’s record now.', { station: station.name }),
                      )
                    }
                  >
                    {say('Use it')}
                  </Button>
                )}
                <Button
                  weight="quiet"
                  icon="bin"
                  onClick={() =>
                    void remove.run(
                      { stationId: station.stationId },
                      say('{station} was taken away. Undo brings it back.', { station: station.name }),
                    )
                  }
                >
                  {say('Take away')}
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Months({ record }: { readonly record: WeatherRecord }) {
  return (
    <Chart
      title={say('Rain and reference evapotranspiration, mean day of each month')}
      rows={record.months}
      x={{ name: say('Month'), text: (month) => shortMonthNames[month.month - 1] ?? '' }}
      unit="mm_per_day"
      series={[
        { name: say('Rain'), as: 'area', read: (month) => month.rain_mm_per_day },
        { name: say('Evapotranspiration'), as: 'line', read: (month) => month.eto_mm_per_day },
      ]}
      note={record.assumed.join(' ')}
    />
  );
}

const SHOWN = 60;

function Doubts({ record }: { readonly record: WeatherRecord }) {
  const reader = useReader();
  const fill = useChange(api.weather.fill);
  const gaps = record.doubts.some((doubt) => doubt.code === 'missing' || doubt.code === 'no-row');
  if (record.doubts.length === 0)
    return <p className="soft">{say('Nothing in this record looks wrong: no gap, no absurd value.')}</p>;
  return (
    <section className="panel stack">
      <h2>{say('To look at')}</h2>
      {gaps ? (
        <div className="row">
          <Button
            disabled={fill.busy}
            onClick={() => void fill.run({ stationId: record.stationId ?? '' }, say('Gaps filled; each filled day is marked.'))}
          >
            {say('Fill the gaps')}
          </Button>
          <span className="small soft">
            {say(
              'Up to five days by a straight line, longer ones and rain by the mean of the same days of other years (common practice, no source).',
            )}
          </span>
        </div>
      ) : null}
      <ul className="plain-list small">
        {record.doubts.slice(0, SHOWN).map((doubt) => (
          <li key={`${doubt.date} ${doubt.field} ${doubt.code}`}>
            {reader.date(doubt.date)}: {doubt.message}
          </li>
        ))}
      </ul>
      {record.doubts.length > SHOWN ? (
        <p className="small soft">{say('And {doubts} more.', { doubts: record.doubts.length - SHOWN })}</p>
      ) : null}
    </section>
  );
}
