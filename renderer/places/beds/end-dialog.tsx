import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';

/** Retires beds: they leave the drawing and the table, their plantings, parts and costs stay in the books. */
export function EndDialog(props: { readonly bedIds: readonly string[]; readonly today: IsoDate; readonly onClose: () => void }) {
  const retire = useChange(api.beds.retire);
  const [date, setDate] = useState<IsoDate | null>(props.today);
  const [because, setBecause] = useState('');
  const many = props.bedIds.length;
  const save = async (): Promise<void> => {
    const done = await retire.run(
      { bedIds: [...props.bedIds], date: date ?? '', because },
      many === 1 ? 'The bed is retired.' : `${many} beds are retired.`,
    );
    if (done !== undefined) props.onClose();
  };
  return (
    <Dialog title={many === 1 ? 'Retire a bed' : `Retire ${many} beds`} onClose={props.onClose}>
      <p>
        They leave the drawing. What grew in them and what they cost stays in the books, and they can be taken into use again.
      </p>
      <Form onSave={() => void save()} failure={retire.failure} paths={['date', 'because']} label="Retire">
        <DateField label="On" path="date" value={date} onChange={setDate} />
        <TextField label="Why" path="because" value={because} onChange={setBecause} needed />
        <div className="row">
          <Button type="submit" weight="harm" disabled={retire.busy}>
            Retire
          </Button>
          <Button onClick={props.onClose}>Leave it</Button>
        </div>
      </Form>
    </Dialog>
  );
}
