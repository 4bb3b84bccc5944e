import { useState } from 'react';
import type { IsoDate } from '../../planner/calendar.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { DateField } from '../fields/date-field.tsx';
import { FlagField } from '../fields/flag-field.tsx';
import { Form } from '../fields/form.tsx';
import { MoneyField } from '../fields/money-field.tsx';
import { PriceField } from '../fields/price-field.tsx';
import { CountField, QuantityField, ShareField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { refused } from './refused.ts';

/** Each kind of field: filled, empty, refused, disabled. */
export function PartFields() {
  const [text, setText] = useState('By the shed');
  const [depth_m, setDepth] = useState<number | null>(9);
  const [money, setMoney] = useState<number | null>(1250);
  const [count, setCount] = useState<number | null>(12);
  const [share, setShare] = useState<number | null>(0.35);
  const [date, setDate] = useState<IsoDate | null>('2027-03-09' as IsoDate);
  const [choice, setChoice] = useState<'full' | 'shade'>('full');
  const [flag, setFlag] = useState(true);
  return (
    <Form onSave={() => undefined} failure={refused} paths={['depth_m']} label="Fields">
      <div className="columns">
        <div className="form">
          <TextField label="Words" value={text} onChange={setText} hint="A hint stands below." />
          <TextField label="A note" lines={3} value={text} onChange={setText} />
          <TextField label="Disabled" value={text} onChange={setText} disabled />
          <QuantityField label="Depth, refused" name="depth_m" value={depth_m} onChange={setDepth} />
          <QuantityField label="Water, empty and needed" unit="L" needed value={null} onChange={() => undefined} />
        </div>
        <div className="form">
          <MoneyField label="Price" value={money} onChange={setMoney} />
          <PriceField label="Price of a unit" per="kWh" value={14.5} onChange={() => undefined} />
          <div className="form-pair">
            <CountField label="Beds" value={count} onChange={setCount} />
            <ShareField label="Moisture" value={share} onChange={setShare} />
          </div>
          <DateField label="Built on" value={date} onChange={setDate} />
          <ChoiceField
            label="Sun"
            value={choice}
            choices={[
              { value: 'full', text: 'Full sun' },
              { value: 'shade', text: 'Shade' },
            ]}
            onChange={setChoice}
          />
          <ChoiceField
            label="Sun, disabled"
            value={choice}
            choices={[{ value: 'full', text: 'Full sun' }]}
            onChange={setChoice}
            disabled
          />
          <FlagField label="Covered" value={flag} onChange={setFlag} hint="Under a roof or a tunnel" />
        </div>
      </div>
    </Form>
  );
}
