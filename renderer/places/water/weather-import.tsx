import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { FileField } from '../../imports/file-field.tsx';
import { say } from '../../words/say.ts';
import type { WeatherRecord } from './weather-tab.tsx';

type Preview = OutputOf<typeof api.weather.preview>;

const NEW = 'new';

/** Reads a file, shows what it holds and what is doubtful, and keeps it only when that was agreed. */
export function WeatherImport({ record, onClose }: { readonly record: WeatherRecord; readonly onClose: () => void }) {
  const preview = useChange(api.weather.preview);
  const keep = useChange(api.weather.importFile);
  const [text, setText] = useState('');
  const [seen, setSeen] = useState<Preview>();
  const [target, setTarget] = useState(NEW);
  const [fill, setFill] = useState(false);
  const [skipFaults, setSkipFaults] = useState(false);
  const [station, setStation] = useState({
    name: '',
    latitude_deg: record.farm.latitude_deg as number | null,
    longitude_deg: record.farm.longitude_deg as number | null,
    elevation_m: record.farm.elevation_m as number | null,
    windHeight_m: 10 as number | null,
    source: '',
  });
  const choose = async (read: string, fileName: string): Promise<void> => {
    setText(read);
    setSeen(undefined);
    const found = await preview.run({ text: read, latitude_deg: station.latitude_deg ?? 0 });
    setSeen(found);
    if (found !== undefined && station.name === '')
      setStation({ ...station, name: found.stations[0] ?? fileName.replace(/\.[^.]*$/, ''), source: fileName });
  };
  const pick = (value: string): void => {
    setTarget(value);
    const known = record.stations.find((each) => each.stationId === value);
    if (known !== undefined) setStation({ ...known });
  };
  const save = async (): Promise<void> => {
    const { name, source } = station;
    const done = await keep.run(
      {
        text,
        stationId: target === NEW ? null : target,
        station: {
          name,
          source,
          latitude_deg: station.latitude_deg ?? Number.NaN,
          longitude_deg: station.longitude_deg ?? Number.NaN,
          elevation_m: station.elevation_m ?? Number.NaN,
          windHeight_m: station.windHeight_m ?? Number.NaN,
        },
        fill,
        skipFaults,
      },
      say('Weather read.'),
    );
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title={say('Read a weather file')} onClose={onClose} wide>
      <Form
        onSave={() => void save()}
        failure={keep.failure ?? preview.failure}
        paths={['station.name', 'latitude_deg', 'longitude_deg', 'elevation_m', 'windHeight_m', 'station.source']}
      >
        <FileField
          label={say('File')}
          accept=".csv,.txt,.dly,.tsv"
          onText={(read, fileName) => void choose(read, fileName)}
          hint={say(
            'A table with a column “date” (2026-03-09) and columns such as tmax_C, tmin_C, rain_mm, wind_m_per_s, rhmax_pct (tmax_F, rain_in also), or a daily file of the NOAA archive. Nothing is kept before you agree.',
          )}
        />
        {seen === undefined ? null : <PreviewView seen={seen} />}
        {seen === undefined ? null : (
          <>
            {record.stations.length === 0 ? null : (
              <ChoiceField
                label={say('Goes to')}
                value={target}
                choices={[
                  { value: NEW, text: say('a new station') },
                  ...record.stations.map((each) => ({
                    value: each.stationId,
                    text: say('{each}: in the place of the same days', { each: each.name }),
                  })),
                ]}
                onChange={pick}
              />
            )}
            <TextField
              label={say('Station')}
              path="station.name"
              value={station.name}
              onChange={(name) => setStation({ ...station, name })}
            />
            <div className="form-pair">
              <QuantityField
                label={say('Latitude, degrees')}
                path="latitude_deg"
                unit=""
                value={station.latitude_deg}
                onChange={(value) => setStation({ ...station, latitude_deg: value })}
              />
              <QuantityField
                label={say('Longitude, degrees')}
                path="longitude_deg"
                unit=""
                value={station.longitude_deg}
                onChange={(value) => setStation({ ...station, longitude_deg: value })}
              />
            </div>
            <div className="form-pair">
              <QuantityField
                label={say('Elevation')}
                name="elevation_m"
                value={station.elevation_m}
                onChange={(value) => setStation({ ...station, elevation_m: value })}
              />
              <QuantityField
                label={say('Wind measured at')}
                name="windHeight_m"
                value={station.windHeight_m}
                onChange={(value) => setStation({ ...station, windHeight_m: value })}
              />
            </div>
            <TextField
              label={say('Source')}
              path="station.source"
              value={station.source}
              onChange={(source) => setStation({ ...station, source })}
            />
            <FlagField label={say('Fill gaps, each filled day marked')} value={fill} onChange={setFill} />
            {seen.faultCount === 0 ? null : (
              <FlagField
                label={say('Leave out {faultCount} cells that cannot be read', { faultCount: seen.faultCount })}
                value={skipFaults}
                onChange={setSkipFaults}
              />
            )}
            <Button type="submit" weight="main" disabled={keep.busy || (seen.faultCount > 0 && !skipFaults)}>
              {say('Keep {count} days', { count: seen.count })}
            </Button>
          </>
        )}
      </Form>
    </Dialog>
  );
}

const SHOWN = 12;

function PreviewView({ seen }: { readonly seen: Preview }) {
  const reader = useReader();
  const range = (name: string, found: Preview['tmax'], unit: string) =>
    found === null ? (
      <>
        <dt>{name}</dt>
        <dd>{say('not in the file')}</dd>
      </>
    ) : (
      <>
        <dt>{name}</dt>
        <dd>
          {say('{least} to {most}{more}', {
            least: reader.print(found.least, unit),
            most: reader.print(found.most, unit),
            more: found.missing === 0 ? '' : say(', {missing} days without', { missing: found.missing }),
          })}
        </dd>
      </>
    );
  return (
    <section className="panel stack" aria-label={say('What the file holds')}>
      <dl className="facts">
        <dt>{say('Read as')}</dt>
        <dd>{seen.format}</dd>
        <dt>{say('Days')}</dt>
        <dd>{say('{count}, {from} to {to}', { count: seen.count, from: reader.date(seen.from), to: reader.date(seen.to) })}</dd>
        {range(say('Lowest of the day'), seen.tmin, 'C')}
        {range(say('Highest of the day'), seen.tmax, 'C')}
        {range(say('Rain of a day'), seen.rain, 'mm')}
        {seen.refused === 0 ? null : (
          <>
            <dt>{say('Failed the archive’s checks')}</dt>
            <dd>{say('{refused} values, left empty', { refused: seen.refused })}</dd>
          </>
        )}
        {seen.traces === 0 ? null : (
          <>
            <dt>{say('Traces of rain')}</dt>
            <dd>{say('{traces}, counted as 0 and marked', { traces: seen.traces })}</dd>
          </>
        )}
        {seen.observedTimes.length === 0 ? null : (
          <>
            <dt>{say('Read at')}</dt>
            <dd>
              {say('{observedTimes}. A morning reading belongs in part to the day before; nothing is shifted.', {
                observedTimes: seen.observedTimes.join(', '),
              })}
            </dd>
          </>
        )}
      </dl>
      {seen.warning === null ? null : <p className="failed">{seen.warning}</p>}
      {seen.faultCount === 0 ? null : (
        <div className="failed" role="alert">
          <p>{say('{faultCount} cells cannot be read:', { faultCount: seen.faultCount })}</p>
          <ul className="plain-list small">
            {seen.faults.slice(0, SHOWN).map((fault) => (
              <li key={`${fault.line} ${fault.column}`}>
                {say('Line {line}, {column}: {message}', { line: fault.line, column: fault.column, message: fault.message })}
              </li>
            ))}
          </ul>
        </div>
      )}
      {seen.doubtCount === 0 ? null : (
        <details>
          <summary>
            {say('{doubtCount, plural, one {# thing} other {# things}} to look at', { doubtCount: seen.doubtCount })}
          </summary>
          <ul className="plain-list small">
            {seen.doubts.slice(0, SHOWN * 4).map((doubt) => (
              <li key={`${doubt.date} ${doubt.field} ${doubt.code}`}>
                {reader.date(doubt.date)}: {doubt.message}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
