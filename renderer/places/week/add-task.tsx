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

/** Something of the grower's own to do. */
export function AddTask(props: { readonly due: IsoDate; readonly onClose: () => void }) {
  const add = useChange(api.week.add);
  const [title, setTitle] = useState('');
  const [due, setDue] = useState<IsoDate | null>(props.due);
  const [note, setNote] = useState('');
  const save = async (): Promise<void> => {
    if (due === null) return;
    const done = await add.run({ title, due, bedId: null, note }, say('Added the task.'));
    if (done !== undefined) props.onClose();
  };
  return (
    <Dialog title={say('Add a task')} onClose={props.onClose}>
      <Form label={say('Task')} failure={add.failure} paths={['title', 'due', 'note']} onSave={() => void save()}>
        <TextField label={say('What is to be done')} path="title" value={title} onChange={setTitle} />
        <DateField label={say('On')} path="due" needed value={due} onChange={setDue} />
        <TextField label={say('Note')} path="note" lines={3} value={note} onChange={setNote} />
        <Button type="submit" weight="main" disabled={add.busy}>
          {say('Add')}
        </Button>
      </Form>
    </Dialog>
  );
}
