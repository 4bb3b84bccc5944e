import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

/** Retires beds: they leave the drawing and the table, their plantings, parts and costs stay in the books. */
export function EndDialog(props: {
  readonly bedIds: readonly string[];
  readonly today: IsoDate;
  readonly onClose: () => void;
  /** The beds are gone from the drawing, and so is what was open of them. */
  readonly onDone: () => void;
}) {
  const retire = useChange(api.beds.retire);
  const [date, setDate] = useState<IsoDate | null>(props.today);
  const [because, setBecause] = useState('');
  const many = props.bedIds.length;
  const save = async (): Promise<void> => {
    const done = await retire.run(
      { bedIds: [...props.bedIds], date: date ?? '', because },
      say('{many, plural, one {The bed is retired.} other {# beds are retired.}}', { many }),
    );
    if (done === undefined) return;
    props.onClose();
    props.onDone();
  };
  return (
    <Dialog title={say('{many, plural, one {Retire a bed} other {Retire # beds}}', { many })} onClose={props.onClose}>
      <p>
        {say(
          'They leave the drawing. What grew in them and what they cost stays in the books, and they can be taken into use again.',
        )}
      </p>
      <Form onSave={() => void save()} failure={retire.failure} paths={['date', 'because']} label={say('Retire')}>
        <DateField label={say('On')} path="date" value={date} onChange={setDate} />
        <TextField label={say('Why')} path="because" value={because} onChange={setBecause} needed />
        <div className="row">
          <Button type="submit" weight="harm" disabled={retire.busy}>
            {say('Retire')}
          </Button>
          <Button onClick={props.onClose}>{say('Leave it')}</Button>
        </div>
      </Form>
    </Dialog>
  );
}
