import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

const groups = [
  'salad',
  'leafy',
  'brassica',
  'root',
  'allium',
  'legume',
  'cucurbit',
  'nightshade',
  'celery',
  'corn',
  'other-vegetable',
  'fruit',
  'herb',
  'cut-flower',
  'cover-crop',
] as const;

/** A crop that the library does not have. Its figures are asked for only where a computation needs them. */
export function AddCrop(props: { readonly onClose: () => void; readonly onMade: (cropId: string) => void }) {
  const add = useChange(api.crops.add);
  const [name, setName] = useState('');
  const [family, setFamily] = useState('');
  const [botanicalName, setBotanical] = useState('');
  const [group, setGroup] = useState<(typeof groups)[number]>('leafy');
  const save = async (): Promise<void> => {
    const done = await add.run({ name, family, group, botanicalName }, say('Added {name}.', { name }));
    if (done === undefined) return;
    props.onMade(done.cropId);
    props.onClose();
  };
  return (
    <Dialog title={say('Add a crop')} onClose={props.onClose}>
      <Form
        label={say('Crop')}
        failure={add.failure}
        paths={['name', 'family', 'group', 'botanicalName']}
        onSave={() => void save()}
      >
        <TextField label={say('Name')} path="name" value={name} onChange={setName} />
        <TextField label={say('Botanical name')} path="botanicalName" value={botanicalName} onChange={setBotanical} />
        <TextField
          label={say('Family')}
          path="family"
          hint={say('For rotation, e.g. Brassicaceae')}
          value={family}
          onChange={setFamily}
        />
        <ChoiceField
          label={say('Group')}
          path="group"
          value={group}
          choices={groups.map((each) => ({ value: each, text: each.replaceAll('-', ' ') }))}
          onChange={setGroup}
        />
        <Button type="submit" weight="main" disabled={add.busy}>
          {say('Add')}
        </Button>
      </Form>
    </Dialog>
  );
}
