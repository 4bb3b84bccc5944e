import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { baseUnitChoices } from './material-columns.ts';

/** A new material: its name, kind and what it is counted by; its analysis is entered in its sheet. */
export function AddMaterial({
  onClose,
  onAdded,
}: {
  readonly onClose: () => void;
  readonly onAdded: (materialId: string) => void;
}) {
  const add = useChange(api.materials.add);
  const [name, setName] = useState('');
  const [kind, setKind] = useState('organic');
  const [baseUnit, setBaseUnit] = useState<(typeof baseUnitChoices)[number]['value']>('kg');
  const save = async (): Promise<void> => {
    const added = await add.run({ name, kind, baseUnit }, say('Added {name}.', { name }));
    if (added === undefined) return;
    onAdded(added.materialId);
    onClose();
  };
  return (
    <Dialog title={say('Add a material')} onClose={onClose}>
      <Form onSave={() => void save()} failure={add.failure} paths={['name', 'kind', 'baseUnit']} label={say('Add a material')}>
        <TextField
          label={say('Name')}
          path="name"
          value={name}
          onChange={setName}
          hint={say('As you would look for it: Feather meal')}
        />
        <TextField
          label={say('Kind')}
          path="kind"
          value={kind}
          onChange={setKind}
          hint={say('organic, mineral, mulch, bulk-mix, hardware, tubing, seed, start, tray, cover, packing …')}
        />
        <ChoiceField
          label={say('Counted by')}
          path="baseUnit"
          value={baseUnit}
          choices={baseUnitChoices}
          onChange={setBaseUnit}
        />
        <div className="row">
          <Button type="submit" weight="main" disabled={add.busy}>
            {say('Add')}
          </Button>
          <Button onClick={onClose}>{say('Not now')}</Button>
        </div>
      </Form>
    </Dialog>
  );
}
