import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { Choices } from './board-data.ts';
import type { DemandData } from './demand-tab.tsx';

const NEW = 'new';

export function AddDemand({ data, onClose }: { readonly data: DemandData; readonly onClose: () => void }) {
  const choices = useRead(api.plantings.choices, { seasonId: data.season.id });
  return (
    <Dialog title={say('Add demand')} onClose={onClose}>
      <Shown reading={choices}>{(found) => <DemandForm data={data} choices={found} onClose={onClose} />}</Shown>
    </Dialog>
  );
}

function DemandForm(props: { readonly data: DemandData; readonly choices: Choices; readonly onClose: () => void }) {
  const { data, choices } = props;
  const add = useChange(api.demand.add);
  const addOutlet = useChange(api.demand.addOutlet);
  const [outletId, setOutletId] = useState(data.outlets[0]?.id ?? NEW);
  const [outletName, setOutletName] = useState('');
  const [cropId, setCropId] = useState(choices.crops[0]?.cropId ?? '');
  const [kind, setKind] = useState<'standing' | 'market'>('standing');
  const [from, setFrom] = useState<IsoDate | null>(data.season.startDate as IsoDate);
  const [to, setTo] = useState<IsoDate | null>(data.season.endDate as IsoDate);
  const [amount, setAmount] = useState<number | null>(null);
  const [unit, setUnit] = useState(choices.crops[0]?.yieldUnit ?? 'kg');
  const [price, setPrice] = useState<number | null>(0);
  const save = async (): Promise<void> => {
    let outlet = outletId;
    if (outlet === NEW) {
      const made = await addOutlet.run({ name: outletName, kind: 'other' });
      if (made === undefined) return;
      outlet = made.outletId;
      setOutletId(outlet);
    }
    if (from === null || to === null || amount === null) return;
    const done = await add.run(
      {
        seasonId: data.season.id,
        entry: {
          outletId: outlet,
          cropId,
          kind,
          fromDate: from,
          toDate: to,
          amountPerWeek: amount,
          unit,
          price_minor: price ?? 0,
          penalty_minor: 0,
        },
      },
      say('Added demand.'),
    );
    if (done !== undefined) props.onClose();
  };
  return (
    <Form
      label={say('Demand')}
      failure={addOutlet.failure ?? add.failure}
      paths={['name', 'toDate', 'entry.amountPerWeek', 'entry.unit', 'entry.price_minor']}
      onSave={() => void save()}
    >
      <ChoiceField
        label={say('Outlet')}
        value={outletId}
        choices={[
          ...data.outlets.map((each) => ({ value: each.id, text: each.name })),
          { value: NEW, text: say('A new outlet…') },
        ]}
        onChange={setOutletId}
      />
      {outletId === NEW ? <TextField label={say('Its name')} path="name" value={outletName} onChange={setOutletName} /> : null}
      <ChoiceField
        label={say('Crop')}
        value={cropId}
        choices={choices.crops.map((each) => ({ value: each.cropId, text: each.name }))}
        onChange={(id) => {
          setCropId(id);
          setUnit(choices.crops.find((each) => each.cropId === id)?.yieldUnit ?? unit);
        }}
      />
      <ChoiceField
        label={say('Kind')}
        value={kind}
        choices={[
          { value: 'standing', text: say('Standing order') },
          { value: 'market', text: say('What the market takes') },
        ]}
        onChange={setKind}
      />
      <div className="form-pair">
        <QuantityField
          label={say('Amount a week')}
          path="entry.amountPerWeek"
          unit=""
          needed
          value={amount}
          onChange={setAmount}
        />
        <TextField label={say('Unit')} path="entry.unit" value={unit} onChange={setUnit} />
      </div>
      <div className="form-pair">
        <DateField label={say('From')} needed value={from} onChange={setFrom} />
        <DateField label={say('To')} path="toDate" needed value={to} onChange={setTo} />
      </div>
      <MoneyField label={say('Price of one')} path="entry.price_minor" value={price} onChange={setPrice} />
      <Button type="submit" weight="main" disabled={add.busy}>
        {say('Add')}
      </Button>
    </Form>
  );
}
