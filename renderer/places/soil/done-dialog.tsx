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
      `${props.doses.length} doses recorded and taken out of stock.`,
    );
    if (answer !== undefined) props.onClose(true);
  };
  return (
    <Dialog title={`Record ${props.doses.length} doses as given`} onClose={() => props.onClose(false)}>
      <Form
        onSave={() => void save()}
        failure={done.failure}
        paths={['date', 'who', 'method', 'incorporatedDate', 'weather', 'note']}
        label="Record as given"
      >
        <p>{sums.join(', ')} leave stock.</p>
        {raw ? <Cautions ids={['raw-manure']} /> : null}
        <div className="form-pair">
          <DateField label="Given on" path="date" value={date} onChange={setDate} needed />
          <DateField label="Worked in on" hint="Empty: left on top" path="incorporatedDate" value={worked} onChange={setWorked} />
        </div>
        <div className="form-pair">
          <TextField label="By" hint="Name or initials" path="who" value={who} onChange={setWho} />
          <TextField label="How" hint="Empty: as planned" path="method" value={method} onChange={setMethod} />
        </div>
        <TextField label="Weather" path="weather" value={weather} onChange={setWeather} />
        <TextField label="Note" path="note" lines={2} value={note} onChange={setNote} />
        <div className="row">
          <Button type="submit" weight="main" disabled={done.busy}>
            Record
          </Button>
          <Button onClick={() => props.onClose(false)}>Cancel</Button>
        </div>
      </Form>
    </Dialog>
  );
}
