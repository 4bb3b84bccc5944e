import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import type { LineData } from './line-data.ts';

type Part = OutputOf<typeof api.waterLines.worn>[number];
type Entry = { readonly kind: 'new' } | { readonly kind: 'replace'; readonly part: Part };

const priceHint = 'Empty: average cost in stock, else the price of the day';

/** Parts of the line with the day they went in and their life: what is due becomes a need of Orders. */
export function LineWear({ data }: { readonly data: LineData }) {
  const parts = useRead(api.waterLines.worn, { lineId: data.line.id });
  const remove = useChange(api.waterLines.removePart);
  const [entry, setEntry] = useState<Entry>();
  return (
    <section className="panel line-panel" aria-label="Wear of the parts">
      <h2>Wear of the parts</h2>
      <p className="soft">
        Pump, tubing, valves, filter, regulator, battery: with the day they went in and their life they become needs of Orders
        when they are due.
      </p>
      <Shown reading={parts}>
        {(rows) => (
          <>
            <WearTable
              rows={rows}
              today={data.today as IsoDate}
              busy={remove.busy}
              onReplace={(part) => setEntry({ kind: 'replace', part })}
              onRemove={(part) =>
                void remove.run({ linePartId: part.linePartId }, `Took ${part.name} off the line. Undo brings it back.`)
              }
            />
            <Gone rows={rows.filter((part) => part.removedDate !== null)} />
          </>
        )}
      </Shown>
      {entry === undefined ? (
        <div className="row no-print">
          <Button icon="add" onClick={() => setEntry({ kind: 'new' })}>
            Enter a part
          </Button>
        </div>
      ) : null}
      {entry?.kind === 'new' ? <EnterPart data={data} onDone={() => setEntry(undefined)} /> : null}
      {entry?.kind === 'replace' ? (
        <ReplacePart
          key={entry.part.linePartId}
          part={entry.part}
          today={data.today as IsoDate}
          onDone={() => setEntry(undefined)}
        />
      ) : null}
    </section>
  );
}

function WearTable(props: {
  readonly rows: readonly Part[];
  readonly today: IsoDate;
  readonly busy: boolean;
  readonly onReplace: (part: Part) => void;
  readonly onRemove: (part: Part) => void;
}) {
  const reader = useReader();
  const standing = props.rows.filter((part) => part.removedDate === null);
  if (standing.length === 0) return <p>None entered yet.</p>;
  return (
    <table className="plain-table">
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col" className="number">
            How much
          </th>
          <th scope="col">In since</th>
          <th scope="col" className="number">
            Cost
          </th>
          <th scope="col">Due</th>
          <th scope="col" />
        </tr>
      </thead>
      <tbody>
        {standing.map((part) => (
          <tr key={part.linePartId}>
            <th scope="row">{part.name}</th>
            <td className="number">{reader.print(part.amount, part.baseUnit)}</td>
            <td>{reader.date(part.installedDate)}</td>
            <td className="number">{reader.money(part.price_minor)}</td>
            <td>
              {part.dueDate <= props.today ? (
                <span className="state-mark" data-tone="stop">
                  {reader.date(part.dueDate)}
                </span>
              ) : (
                reader.date(part.dueDate)
              )}
            </td>
            <td className="no-print">
              <div className="row">
                <Button weight="quiet" name={`Replace ${part.name}`} onClick={() => props.onReplace(part)}>
                  Replace…
                </Button>
                <Button
                  weight="quiet"
                  icon="bin"
                  name={`Take ${part.name} off the line`}
                  disabled={props.busy}
                  onClick={() => props.onRemove(part)}
                />
              </div>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Gone({ rows }: { readonly rows: readonly Part[] }) {
  const reader = useReader();
  if (rows.length === 0) return null;
  return (
    <details>
      <summary>Were here before</summary>
      <ul className="small">
        {rows.map((part) => (
          <li key={part.linePartId}>
            {part.name}: {reader.date(part.installedDate)} to {reader.date(part.removedDate)}, {part.reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

function EnterPart({ data, onDone }: { readonly data: LineData; readonly onDone: () => void }) {
  const materials = useRead(api.materials.list, undefined);
  const add = useChange(api.waterLines.addPart);
  const [materialId, setMaterial] = useState('');
  const [amount, setAmount] = useState<number | null>(1);
  const [installed, setInstalled] = useState<IsoDate | null>(data.today as IsoDate);
  const [life, setLife] = useState<number | null>(null);
  const [price, setPrice] = useState<number | null>(null);
  const known = data.parts.find((each) => each.materialId === materialId);
  const save = async (): Promise<void> => {
    const done = await add.run(
      {
        lineId: data.line.id,
        materialId,
        amount: amount ?? Number.NaN,
        installedDate: installed ?? '',
        life_years: life ?? Number.NaN,
        price_minor: price,
      },
      `Entered: ${known?.name ?? 'a part'}.`,
    );
    if (done !== undefined) onDone();
  };
  return (
    <Shown reading={materials}>
      {(all) => (
        <Form
          label="Enter a part"
          failure={add.failure}
          paths={['materialId', 'amount', 'installedDate', 'life_years', 'price_minor']}
          onSave={() => void save()}
        >
          <ChoiceField
            label="Part"
            path="materialId"
            value={materialId}
            choices={[
              { value: '', text: 'Choose a material of the library' },
              ...data.parts.map((each) => ({ value: each.materialId, text: each.name })),
            ]}
            onChange={(id) => {
              setMaterial(id);
              setLife(all.find((each) => each.id === id)?.life_years ?? life);
            }}
          />
          <div className="form-pair">
            <QuantityField
              key={known?.baseUnit ?? ''}
              label="How much"
              path="amount"
              unit={known?.baseUnit ?? 'count'}
              value={amount}
              onChange={setAmount}
            />
            <DateField label="In since" path="installedDate" value={installed} onChange={setInstalled} />
          </div>
          <div className="form-pair">
            <QuantityField label="Life" path="life_years" unit="years" value={life} onChange={setLife} needed />
            <MoneyField label="Price of it all" path="price_minor" value={price} onChange={setPrice} hint={priceHint} />
          </div>
          <div className="row">
            <Button type="submit" weight="main" disabled={add.busy}>
              Enter it
            </Button>
            <Button onClick={onDone}>Leave it</Button>
          </div>
        </Form>
      )}
    </Shown>
  );
}

function ReplacePart(props: { readonly part: Part; readonly today: IsoDate; readonly onDone: () => void }) {
  const { part } = props;
  const replace = useChange(api.waterLines.replacePart);
  const [date, setDate] = useState<IsoDate | null>(props.today);
  const [reason, setReason] = useState('');
  const [amount, setAmount] = useState<number | null>(part.amount);
  const [life, setLife] = useState<number | null>(part.life_years);
  const [price, setPrice] = useState<number | null>(null);
  const save = async (): Promise<void> => {
    const done = await replace.run(
      {
        linePartId: part.linePartId,
        date: date ?? '',
        reason,
        amount: amount ?? Number.NaN,
        life_years: life ?? Number.NaN,
        price_minor: price,
      },
      `Replaced: ${part.name}.`,
    );
    if (done !== undefined) props.onDone();
  };
  return (
    <Form
      label={`Replace ${part.name}`}
      failure={replace.failure}
      paths={['date', 'reason', 'amount', 'life_years', 'price_minor']}
      onSave={() => void save()}
    >
      <h3>Replace {part.name}</h3>
      <TextField label="Why" path="reason" value={reason} onChange={setReason} needed />
      <div className="form-pair">
        <DateField label="On" path="date" value={date} onChange={setDate} />
        <QuantityField label="How much" path="amount" unit={part.baseUnit} value={amount} onChange={setAmount} />
      </div>
      <div className="form-pair">
        <QuantityField label="Life" path="life_years" unit="years" value={life} onChange={setLife} />
        <MoneyField label="Price of it all" path="price_minor" value={price} onChange={setPrice} hint={priceHint} />
      </div>
      <div className="row">
        <Button type="submit" weight="main" disabled={replace.busy}>
          Replace
        </Button>
        <Button onClick={props.onDone}>Leave it</Button>
      </div>
    </Form>
  );
}
