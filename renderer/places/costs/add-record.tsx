import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { recordKinds } from './record-kinds.ts';

/** A record: what, when, where, who, what was seen. A correction names the entry it corrects. */
export function AddRecord(props: {
  readonly rows: readonly { readonly logId: string; readonly text: string }[];
  readonly onClose: () => void;
}) {
  const append = useChange(api.records.append);
  const [kind, setKind] = useState<(typeof recordKinds)[number]['value']>('cleaning');
  const [date, setDate] = useState<IsoDate | null>(null);
  const [time, setTime] = useState('');
  const [place, setPlace] = useState('');
  const [who, setWho] = useState('');
  const [observed, setObserved] = useState('');
  const [corrects, setCorrects] = useState('');
  const save = async (): Promise<void> => {
    const added = await append.run(
      { kind, date: date ?? '', time, place, who, observed, correctsId: corrects === '' ? null : corrects },
      say('Added the record.'),
    );
    if (added !== undefined) props.onClose();
  };
  return (
    <Dialog title={say('Add a record')} onClose={props.onClose}>
      <Form
        label={say('Add a record')}
        failure={append.failure}
        paths={['kind', 'date', 'time', 'place', 'who', 'observed']}
        onSave={() => void save()}
      >
        <ChoiceField label={say('What')} path="kind" value={kind} choices={recordKinds} onChange={setKind} />
        <div className="form-pair">
          <DateField label={say('Date')} path="date" value={date} onChange={setDate} needed />
          <TextField label={say('Time')} path="time" value={time} onChange={setTime} placeholder="07:30" />
        </div>
        <div className="form-pair">
          <TextField label={say('Place')} path="place" value={place} onChange={setPlace} />
          <TextField label={say('Who, name or initials')} path="who" value={who} onChange={setWho} needed />
        </div>
        <TextField
          label={say('Seen or done, with actual values')}
          path="observed"
          lines={3}
          value={observed}
          onChange={setObserved}
          needed
        />
        <ChoiceField
          label={say('Corrects')}
          value={corrects}
          choices={[
            { value: '', text: say('nothing: a new record') },
            ...props.rows.slice(0, 50).map((row) => ({ value: row.logId, text: row.text.slice(0, 80) })),
          ]}
          onChange={setCorrects}
        />
        {kind === 'flood' || kind === 'animals' ? <Cautions ids={['animals-flood-contamination']} /> : null}
        <Button type="submit" weight="main" disabled={append.busy}>
          {say('Add')}
        </Button>
      </Form>
    </Dialog>
  );
}
