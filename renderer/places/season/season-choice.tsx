import { useState } from 'react';
import { type IsoDate, yearOf } from '../../../planner/calendar.ts';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { NewSeason } from './season-gate.tsx';

/** The season that the place is about: in the address, else the newest. */
export function useSeasonId(): readonly [string | null, (id: string) => void] {
  const [id, setId] = useQueryValue('season');
  return [id ?? null, setId];
}

export function SeasonChoice({ seasonId }: { readonly seasonId: string }) {
  const seasons = useRead(api.seasons.list, undefined);
  const [, setId] = useSeasonId();
  const [copying, setCopying] = useState(false);
  const [adding, setAdding] = useState(false);
  if (seasons.state !== 'ready') return null;
  return (
    <>
      <label className="row small">
        {say('Season')}
        <select className="plain-select" value={seasonId} onChange={(event) => setId(event.target.value)}>
          {seasons.data.map((season) => (
            <option key={season.id} value={season.id}>
              {season.name}
            </option>
          ))}
        </select>
      </label>
      <Button icon="copy" onClick={() => setCopying(true)}>
        {say('Next season')}
      </Button>
      <Button icon="add" name={say('A season with nothing in it')} onClick={() => setAdding(true)} />
      {adding ? (
        <Dialog title={say('A season with nothing in it')} onClose={() => setAdding(false)}>
          <NewSeason
            onMade={(id) => {
              setAdding(false);
              setId(id);
            }}
          />
        </Dialog>
      ) : null}
      {copying ? (
        <CopySeason
          from={seasons.data.find((season) => season.id === seasonId)}
          onClose={() => setCopying(false)}
          onMade={(id) => {
            setCopying(false);
            setId(id);
          }}
        />
      ) : null}
    </>
  );
}

function CopySeason(props: {
  readonly from: { readonly id: string; readonly name: string; readonly startDate: string } | undefined;
  readonly onClose: () => void;
  readonly onMade: (seasonId: string) => void;
}) {
  const { from } = props;
  const copy = useChange(api.seasons.copy);
  const [years, setYears] = useState<number | null>(1);
  const [name, setName] = useState(from === undefined ? '' : String(yearOf(from.startDate as IsoDate) + 1));
  const [beds, setBeds] = useState<'keep' | 'leave'>('keep');
  const [useLearned, setUseLearned] = useState(true);
  if (from === undefined) return null;
  const save = async (): Promise<void> => {
    const done = await copy.run(
      { fromSeasonId: from.id, name, years: years ?? 0, keepBeds: beds === 'keep', useLearned },
      say('Season {name} is planned as a copy of {from}.', { name, from: from.name }),
    );
    if (done !== undefined) props.onMade(done.seasonId);
  };
  return (
    <Dialog title={say('Plan a season as a copy of {from}', { from: from.name })} onClose={props.onClose}>
      <Form label={say('Copy a season')} failure={copy.failure} paths={['name', 'years']} onSave={() => void save()}>
        <TextField label={say('Name')} path="name" value={name} onChange={setName} />
        <CountField label={say('Years later')} path="years" value={years} onChange={setYears} />
        <ChoiceField
          label={say('Beds')}
          value={beds}
          choices={[
            { value: 'keep', text: say('Same beds; rotation is shown on the board') },
            { value: 'leave', text: say('No beds yet: place them anew') },
          ]}
          onChange={setBeds}
        />
        <FlagField
          label={say('Take days and yields from my own records where there are any')}
          value={useLearned}
          onChange={setUseLearned}
        />
        <p className="small soft">
          {say('Actual dates, plant counts and harvests stay with {from}. One undo takes the copy back.', { from: from.name })}
        </p>
        <Button type="submit" weight="main" disabled={copy.busy}>
          {say('Plan it')}
        </Button>
      </Form>
    </Dialog>
  );
}
