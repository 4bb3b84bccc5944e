import { type ClipboardEvent, useState } from 'react';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { ReaderProvider } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { PathField } from './path-field.tsx';
import { readPlace } from './read-place.ts';
import { currencies, unitSystems } from './setting-choices.ts';

const AUTUMN = 8;

/** From September on a grower plans the year to come. */
const nextSeason = (today: Date): number => today.getFullYear() + (today.getMonth() >= AUTUMN ? 1 : 0);

/** A farm of one's own: name, place and units; its first beds come next. Or the invented sample, to look about in. */
export function NewFarm({ onCancel }: { readonly onCancel?: () => void }) {
  const create = useChange(api.files.create);
  const sample = useChange(api.files.createSample);
  const [name, setName] = useState('');
  const [path, setPath] = useState<string>();
  const [latitude_deg, setLatitude] = useState<number | null>(null);
  const [longitude_deg, setLongitude] = useState<number | null>(null);
  const [elevation_m, setElevation] = useState<number | null>(null);
  const [unitSystem, setUnits] = useState<'us' | 'metric'>('us');
  const [currency, setCurrency] = useState('USD');
  const [year, setYear] = useState<number | null>(() => nextSeason(new Date()));

  const save = async (): Promise<void> => {
    if (latitude_deg === null || longitude_deg === null) return;
    const farm = await create.run({
      path: path ?? name,
      name,
      latitude_deg,
      longitude_deg,
      elevation_m: elevation_m ?? 0,
      unitSystem,
      currency,
      year: year ?? nextSeason(new Date()),
    });
    if (farm !== undefined) window.location.assign(`/farm?farm=${encodeURIComponent(farm.key)}&tab=start`);
  };
  const pastePlace = (event: ClipboardEvent): void => {
    const place = readPlace(event.clipboardData.getData('text'));
    if (place === undefined) return;
    event.preventDefault();
    setLatitude(place.latitude_deg);
    setLongitude(place.longitude_deg);
  };
  const makeSample = async (): Promise<void> => {
    const farm = await sample.run({
      path: `Saltgrass Lane (invented sample) ${Date.now().toString(36)}`,
      beds: 96,
      years: 2,
      seed: 1,
    });
    if (farm !== undefined) window.location.assign(`/week?farm=${encodeURIComponent(farm.key)}`);
  };

  return (
    <ReaderProvider settings={{ system: unitSystem, currency, locale: navigator.language }}>
      <section className="panel stack" aria-label={say('New farm')}>
        <h2>{say('New farm')}</h2>
        <ol className="steps">
          <li aria-current="step">{say('The farm and its place')}</li>
          <li>{say('A block and a design')}</li>
          <li>{say('The first beds')}</li>
        </ol>
        <Form
          label={say('New farm')}
          failure={create.failure}
          paths={['name', 'path', 'latitude_deg', 'longitude_deg', 'elevation_m', 'currency', 'year']}
          onSave={() => void save()}
        >
          <div className="columns">
            <div className="form">
              <TextField label={say('Name of the farm')} path="name" needed value={name} onChange={setName} />
              <PathField
                kind="save"
                label={say('File')}
                path="path"
                value={path ?? name}
                onChange={setPath}
                hint={say('A name in the program’s folder, or a whole path. Everything of the farm is kept in this one file.')}
              />
              <CountField label={say('First season')} path="year" value={year} onChange={setYear} />
            </div>
            <div className="form">
              <div className="form-pair" onPaste={pastePlace}>
                <QuantityField
                  label={say('Latitude')}
                  path="latitude_deg"
                  unit="deg"
                  value={latitude_deg}
                  onChange={setLatitude}
                  needed
                  hint={say('North is positive, e.g. 47.6. A pair copied from a map fills both.')}
                />
                <QuantityField
                  label={say('Longitude')}
                  path="longitude_deg"
                  unit="deg"
                  value={longitude_deg}
                  onChange={setLongitude}
                  needed
                  hint={say('West is negative, e.g. -122.3')}
                />
              </div>
              <QuantityField
                label={say('Height above the sea')}
                path="elevation_m"
                unit="m"
                value={elevation_m}
                onChange={setElevation}
                hint={say('Empty: sea level')}
              />
              <div className="form-pair">
                <ChoiceField label={say('Units')} value={unitSystem} choices={unitSystems} onChange={setUnits} />
                <ChoiceField
                  label={say('Currency')}
                  path="currency"
                  value={currency}
                  choices={currencies}
                  onChange={setCurrency}
                />
              </div>
            </div>
          </div>
          <div className="row">
            <Button type="submit" weight="main" disabled={create.busy}>
              {say('Make the farm')}
            </Button>
            {onCancel === undefined ? null : <Button onClick={onCancel}>{say('Not now')}</Button>}
            <Button disabled={sample.busy} onClick={() => void makeSample()}>
              {say('Make an invented sample farm instead')}
            </Button>
          </div>
        </Form>
      </section>
    </ReaderProvider>
  );
}
