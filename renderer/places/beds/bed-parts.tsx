import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { WholeBed } from './bed-types.ts';

type Part = WholeBed['parts'][number];

/** The parts a bed is built of, when they are due, and those that were there before. */
export function BedParts({ bed, today }: { readonly bed: WholeBed; readonly today: IsoDate }) {
  const reader = useReader();
  const [replacing, setReplacing] = useState<string>();
  if (bed.parts.length === 0) return <p className="soft">{say('This bed has no parts.')}</p>;
  const standing = bed.parts.filter((part) => part.removedDate === null);
  const gone = bed.parts.filter((part) => part.removedDate !== null);
  return (
    <>
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">{say('Part')}</th>
            <th scope="col" className="number">
              {say('Amount')}
            </th>
            <th scope="col">{say('Due')}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {standing.map((part) => (
            <tr key={part.partId}>
              <td>
                {part.name}
                <div className="small soft">
                  {say('in since {installedDate}, {price}', {
                    installedDate: reader.date(part.installedDate),
                    price: part.unpricedAmount > 0 ? say('no price known') : reader.money(part.price_minor),
                  })}
                </div>
              </td>
              <td className="number">{reader.print(part.amount, tradeUnit(part.baseUnit))}</td>
              <td>
                {part.dueDate < today ? (
                  <span className="state-mark" data-tone="stop">
                    {reader.date(part.dueDate)}
                  </span>
                ) : (
                  reader.date(part.dueDate)
                )}
              </td>
              <td>
                <Button weight="quiet" onClick={() => setReplacing(part.partId)}>
                  {say('Replace…')}
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {standing
        .filter((part) => part.partId === replacing)
        .map((part) => (
          <Replace key={part.partId} part={part} today={today} onDone={() => setReplacing(undefined)} />
        ))}
      {gone.length === 0 ? null : (
        <>
          <h3>{say('Was here before')}</h3>
          <ul className="small">
            {gone.map((part) => (
              <li key={part.partId}>
                {say('{part}: {installedDate} to {removedDate}, {reason}', {
                  part: part.name,
                  installedDate: reader.date(part.installedDate),
                  removedDate: reader.date(part.removedDate),
                  reason: part.reason,
                })}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Replace({ part, today, onDone }: { readonly part: Part; readonly today: IsoDate; readonly onDone: () => void }) {
  const replace = useChange(api.beds.replacePart);
  const [date, setDate] = useState<IsoDate | null>(today);
  const [reason, setReason] = useState('');
  const [amount, setAmount] = useState<number | null>(part.amount);
  const [price, setPrice] = useState<number | null>(null);
  const [life, setLife] = useState<number | null>(part.life_years);
  const save = async (): Promise<void> => {
    const input = {
      partId: part.partId,
      date: date ?? '',
      reason,
      amount: amount ?? Number.NaN,
      price_minor: price,
      life_years: life ?? Number.NaN,
    };
    if ((await replace.run(input, say('Replaced: {part}.', { part: part.name }))) !== undefined) onDone();
  };
  return (
    <div className="panel">
      <h3>{say('Replace {part}', { part: part.name })}</h3>
      <Form
        onSave={() => void save()}
        failure={replace.failure}
        paths={['date', 'reason', 'amount', 'price_minor', 'life_years']}
        label={say('Replace {part}', { part: part.name })}
      >
        <TextField label={say('Why')} path="reason" value={reason} onChange={setReason} needed />
        <div className="form-pair">
          <DateField label={say('On')} path="date" value={date} onChange={setDate} />
          <QuantityField
            label={say('Amount')}
            path="amount"
            unit={tradeUnit(part.baseUnit)}
            value={amount}
            onChange={setAmount}
          />
        </div>
        <div className="form-pair">
          <MoneyField
            label={say('Price of it all')}
            path="price_minor"
            value={price}
            onChange={setPrice}
            hint={say('Empty: average cost in stock, else the price of the day')}
          />
          <QuantityField label={say('Life')} path="life_years" unit="years" value={life} onChange={setLife} />
        </div>
        <div className="row">
          <Button type="submit" weight="main" disabled={replace.busy}>
            {say('Replace')}
          </Button>
          <Button onClick={onDone}>{say('Leave it')}</Button>
        </div>
      </Form>
    </div>
  );
}
