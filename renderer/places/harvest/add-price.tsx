import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

const choose = { value: '', text: say('choose one') };

/** One line of the price list. Outlet and day stay for the next line. */
export function AddPrice({ today }: { readonly today: IsoDate }) {
  const outlets = useRead(api.sales.outlets, undefined);
  const crops = useRead(api.crops.list, undefined);
  const add = useChange(api.sales.addPrice);
  const [outletId, setOutlet] = useState('');
  const [cropId, setCrop] = useState('');
  const [unit, setUnit] = useState('');
  const [grade, setGrade] = useState('first');
  const [price_minor, setPrice] = useState<number | null>(null);
  const [fromDate, setFrom] = useState<IsoDate>(today);
  const save = async (): Promise<void> => {
    if (price_minor === null) return;
    const done = await add.run({ outletId, cropId, unit, grade, price_minor, fromDate }, say('Added the price.'));
    if (done === undefined) return;
    setCrop('');
    setPrice(null);
  };
  const known = outlets.state === 'ready' ? outlets.data : [];
  const grown = crops.state === 'ready' ? crops.data : [];
  return (
    <section className="entry-line" aria-label={say('Add a price')}>
      <Form
        onSave={() => void save()}
        failure={add.failure}
        paths={['outletId', 'cropId', 'unit', 'grade', 'price_minor', 'fromDate']}
        label={say('Add a price')}
      >
        <div className="entry-fields">
          <ChoiceField
            label={say('Outlet')}
            path="outletId"
            value={outletId}
            choices={[choose, ...known.map((each) => ({ value: each.id, text: each.name }))]}
            onChange={setOutlet}
          />
          <ChoiceField
            label={say('Crop')}
            path="cropId"
            value={cropId}
            choices={[choose, ...grown.map((each) => ({ value: each.cropId, text: each.name }))]}
            onChange={setCrop}
          />
          <TextField label={say('Unit')} path="unit" value={unit} onChange={setUnit} />
          <TextField label={say('Grade')} path="grade" value={grade} onChange={setGrade} />
          <MoneyField label={say('Price a unit')} path="price_minor" value={price_minor} onChange={setPrice} needed />
          <DateField label={say('From')} path="fromDate" value={fromDate} onChange={(next) => next !== null && setFrom(next)} />
        </div>
        <div className="row">
          <Button type="submit" weight="main" disabled={add.busy}>
            {say('Add the price')}
          </Button>
        </div>
      </Form>
    </section>
  );
}
