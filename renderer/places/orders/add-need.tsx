import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

/** A need that no plan knows of: what, how much, by when and what for. */
export function AddNeed({ seasonId, onClose }: { readonly seasonId: string; readonly onClose: () => void }) {
  const materials = useRead(api.materials.list, undefined);
  const add = useChange(api.orders.addNeed);
  const [materialId, setMaterialId] = useState('');
  const [amount, setAmount] = useState<number | null>(null);
  const [reason, setReason] = useState('');
  const [wanted, setWanted] = useState<IsoDate | null>(null);
  const save = async (): Promise<void> => {
    const added = await add.run(
      { seasonId, materialId, amount: amount ?? 0, reason, wantedDate: wanted ?? '' },
      say('Added the need.'),
    );
    if (added !== undefined) onClose();
  };
  return (
    <Dialog title={say('Add a need')} onClose={onClose}>
      <Shown reading={materials}>
        {(all) => (
          <Form
            label={say('Add a need')}
            failure={add.failure}
            paths={['materialId', 'amount', 'reason', 'wantedDate']}
            onSave={() => void save()}
          >
            <ChoiceField
              label={say('Material')}
              path="materialId"
              value={materialId}
              choices={[{ value: '', text: say('Choose one') }, ...all.map((each) => ({ value: each.id, text: each.name }))]}
              onChange={setMaterialId}
            />
            <div className="form-pair">
              <QuantityField
                key={materialId}
                label={say('Amount')}
                needed
                path="amount"
                unit={tradeUnit(all.find((each) => each.id === materialId)?.baseUnit ?? '')}
                value={amount}
                onChange={setAmount}
              />
              <DateField label={say('Wanted by')} needed path="wantedDate" value={wanted} onChange={setWanted} />
            </div>
            <TextField label={say('For')} path="reason" value={reason} onChange={setReason} />
            <Button type="submit" weight="main" disabled={add.busy}>
              {say('Add')}
            </Button>
          </Form>
        )}
      </Shown>
    </Dialog>
  );
}
