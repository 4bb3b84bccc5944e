import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

type Props = {
  readonly part: { readonly linePartId: string; readonly name: string };
  readonly today: IsoDate;
  readonly onDone: () => void;
};

/** A part that comes out of its line for good, or was entered in error. */
export function EndPart({ part, today, onDone }: Props) {
  const end = useChange(api.waterLines.endPart);
  const remove = useChange(api.waterLines.removePart);
  const [date, setDate] = useState<IsoDate | null>(today);
  const [reason, setReason] = useState('');
  const save = async (): Promise<void> => {
    const done = await end.run(
      { linePartId: part.linePartId, date: date ?? '', reason },
      say('Took {part} off the line. Undo brings it back.', { part: part.name }),
    );
    if (done !== undefined) onDone();
  };
  const takeBack = async (): Promise<void> => {
    const done = await remove.run(
      { linePartId: part.linePartId },
      say('Took the entry of {part} back. Undo brings it back.', { part: part.name }),
    );
    if (done !== undefined) onDone();
  };
  return (
    <Form
      label={say('Take {part} off the line', { part: part.name })}
      failure={end.failure ?? remove.failure}
      paths={['date', 'reason']}
      onSave={() => void save()}
    >
      <h3>{say('Take {part} off the line', { part: part.name })}</h3>
      <div className="form-pair">
        <TextField label={say('Why')} path="reason" value={reason} onChange={setReason} needed />
        <DateField label={say('On')} path="date" value={date} onChange={setDate} needed />
      </div>
      <div className="row">
        <Button type="submit" weight="main" disabled={end.busy}>
          {say('Take it off')}
        </Button>
        <Button disabled={remove.busy} onClick={() => void takeBack()}>
          {say('It was entered in error')}
        </Button>
        <Button onClick={onDone}>{say('Leave it')}</Button>
      </div>
      <p className="soft small">
        {say(
          'What it cost while it was in stays in the books. An entry made in error goes with all its cost, and what it took lies in stock again.',
        )}
      </p>
    </Form>
  );
}
