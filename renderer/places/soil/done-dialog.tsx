import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { DoseRow } from './soil-types.ts';

/** Records planned doses as given: when, how, by whom. */
export function DoneDialog(props: {
  readonly doses: readonly DoseRow[];
  readonly today: IsoDate;
  readonly onClose: (done: boolean) => void;
}) {
  const reader = useReader();
  const done = useChange(api.applications.done);
  const [date, setDate] = useState<IsoDate | null>(props.today);
  const [worked, setWorked] = useState<IsoDate | null>(props.today);
  const [who, setWho] = useState('');
  const [method, setMethod] = useState('');
  const [weather, setWeather] = useState('');
  const [note, setNote] = useState('');
  const raw = props.doses.some((dose) => dose.animalOrigin === 'raw');
  const sums = [...Map.groupBy(props.doses, (dose) => dose.material)].map(
    ([material, list]) =>
      `${material} ${reader.print(
        list.reduce((sum, dose) => sum + dose.amount_kg, 0),
        'kg',
      )}`,
  );
  const save = async (): Promise<void> => {
    const answer = await done.run(
      {
        applicationBedIds: props.doses.map((dose) => dose.applicationBedId),
        date: date ?? '',
        who,
        method,
        incorporatedDate: worked,
        weather,
        note,
      },
      say('{doses} doses recorded and taken out of stock.', { doses: props.doses.length }),
    );
    if (answer !== undefined) props.onClose(true);
  };
  return (
    <Dialog title={say('Record {doses} doses as given', { doses: props.doses.length })} onClose={() => props.onClose(false)}>
      <Form
        onSave={() => void save()}
        failure={done.failure}
        paths={['date', 'who', 'method', 'incorporatedDate', 'weather', 'note']}
        label={say('Record as given')}
      >
        <p>{say('{sums} leave stock.', { sums: sums.join(', ') })}</p>
        {raw ? <Cautions ids={['raw-manure']} /> : null}
        <div className="form-pair">
          <DateField label={say('Given on')} path="date" value={date} onChange={setDate} needed />
          <DateField
            label={say('Worked in on')}
            hint={say('Empty: left on top')}
            path="incorporatedDate"
            value={worked}
            onChange={setWorked}
          />
        </div>
        <div className="form-pair">
          <TextField label={say('By')} hint={say('Name or initials')} path="who" value={who} onChange={setWho} />
          <TextField label={say('How')} hint={say('Empty: as planned')} path="method" value={method} onChange={setMethod} />
        </div>
        <TextField label={say('Weather')} path="weather" value={weather} onChange={setWeather} />
        <TextField label={say('Note')} path="note" lines={2} value={note} onChange={setNote} />
        <div className="row">
          <Button type="submit" weight="main" disabled={done.busy}>
            {say('Record')}
          </Button>
          <Button onClick={() => props.onClose(false)}>{say('Cancel')}</Button>
        </div>
      </Form>
    </Dialog>
  );
}
