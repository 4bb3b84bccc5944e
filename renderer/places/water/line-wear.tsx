import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { LineData } from './line-data.ts';
import { EndPart } from './line-part-end.tsx';

type Part = OutputOf<typeof api.waterLines.worn>[number];
type Entry = { readonly kind: 'new' } | { readonly kind: 'replace' | 'end'; readonly part: Part };

const priceHint = say('Empty: average cost in stock, else the price of the day');

/** Parts of the line with the day they went in and their life: what is due becomes a need of Orders. */
export function LineWear({ data }: { readonly data: LineData }) {
  const parts = useRead(api.waterLines.worn, { lineId: data.line.id });
  const [entry, setEntry] = useState<Entry>();
  return (
    <section className="panel line-panel" aria-label={say('Wear of the parts')}>
      <h2>{say('Wear of the parts')}</h2>
      <p className="soft">
        {say(
          'Pump, tubing, valves, filter, regulator, battery: with the day they went in and their life they become needs of Orders when they are due. What they cost is spread over their years and shared at Costs among the beds that the line feeds, by the water each is to get.',
        )}
      </p>
      <Shown reading={parts}>
        {(rows) => (
          <>
            <WearTable
              rows={rows}
              today={data.today as IsoDate}
              onReplace={(part) => setEntry({ kind: 'replace', part })}
              onEnd={(part) => setEntry({ kind: 'end', part })}
            />
            <Gone rows={rows.filter((part) => part.removedDate !== null)} />
          </>
        )}
      </Shown>
      {entry === undefined ? (
        <div className="row no-print">
          <Button icon="add" onClick={() => setEntry({ kind: 'new' })}>
            {say('Enter a part')}
          </Button>
        </div>
      ) : null}
      {entry?.kind === 'new' ? <EnterPart data={data} onDone={() => setEntry(undefined)} /> : null}
      {entry?.kind === 'end' ? (
        <EndPart key={entry.part.linePartId} part={entry.part} today={data.today as IsoDate} onDone={() => setEntry(undefined)} />
      ) : null}
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
  readonly onReplace: (part: Part) => void;
  readonly onEnd: (part: Part) => void;
}) {
  const reader = useReader();
  const standing = props.rows.filter((part) => part.removedDate === null);
  if (standing.length === 0) return <p>{say('None entered yet.')}</p>;
  return (
    <table className="plain-table">
      <thead>
        <tr>
          <th scope="col">{say('Part')}</th>
          <th scope="col" className="number">
            {say('How much')}
          </th>
          <th scope="col">{say('In since')}</th>
          <th scope="col" className="number">
            {say('Cost')}
          </th>
          <th scope="col" className="number">
            {say('Of it a year')}
          </th>
          <th scope="col">{say('Due')}</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {standing.map((part) => (
          <tr key={part.linePartId}>
            <th scope="row">{part.name}</th>
            <td className="number">{reader.print(part.amount, tradeUnit(part.baseUnit))}</td>
            <td>{reader.date(part.installedDate)}</td>
            <td className="number">
              {part.unpricedAmount > 0 && part.price_minor === 0 ? say('no price known') : reader.money(part.price_minor)}
              {part.unpricedAmount > 0 && part.price_minor > 0 ? (
                <div className="small soft">
                  {say('no price known for {amount}', { amount: reader.print(part.unpricedAmount, tradeUnit(part.baseUnit)) })}
                </div>
              ) : null}
            </td>
            <td className="number">
              <Figure
                value={Math.round(part.year_minor)}
                unit="minor"
                name={say('Cost of {part} a year', { part: part.name })}
                explain={() => client.waterLines.explainPart.query({ linePartId: part.linePartId })}
              />
            </td>
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
                <Button weight="quiet" name={say('Replace {part}', { part: part.name })} onClick={() => props.onReplace(part)}>
                  {say('Replace…')}
                </Button>
                <Button
                  weight="quiet"
                  icon="bin"
                  name={say('Take {part} off the line', { part: part.name })}
                  onClick={() => props.onEnd(part)}
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
      <summary>{say('Were here before')}</summary>
      <ul className="small">
        {rows.map((part) => (
          <li key={part.linePartId}>
            {say('{part}: {installedDate} to {removedDate}, {reason}', {
              part: part.name,
              installedDate: reader.date(part.installedDate),
              removedDate: reader.date(part.removedDate),
              reason: part.reason,
            })}
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
      say('Entered: {known}.', { known: known?.name ?? say('a part') }),
    );
    if (done !== undefined) onDone();
  };
  return (
    <Shown reading={materials}>
      {(all) => (
        <Form
          label={say('Enter a part')}
          failure={add.failure}
          paths={['materialId', 'amount', 'installedDate', 'life_years', 'price_minor']}
          onSave={() => void save()}
        >
          <ChoiceField
            label={say('Part')}
            path="materialId"
            value={materialId}
            choices={[
              { value: '', text: say('Choose a material of the library') },
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
              label={say('How much')}
              path="amount"
              unit={tradeUnit(known?.baseUnit ?? 'count')}
              value={amount}
              onChange={setAmount}
            />
            <DateField label={say('In since')} path="installedDate" value={installed} onChange={setInstalled} />
          </div>
          <div className="form-pair">
            <QuantityField label={say('Life')} path="life_years" unit="years" value={life} onChange={setLife} needed />
            <MoneyField label={say('Price of it all')} path="price_minor" value={price} onChange={setPrice} hint={priceHint} />
          </div>
          <div className="row">
            <Button type="submit" weight="main" disabled={add.busy}>
              {say('Enter it')}
            </Button>
            <Button onClick={onDone}>{say('Leave it')}</Button>
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
      say('Replaced: {part}.', { part: part.name }),
    );
    if (done !== undefined) props.onDone();
  };
  return (
    <Form
      label={say('Replace {part}', { part: part.name })}
      failure={replace.failure}
      paths={['date', 'reason', 'amount', 'life_years', 'price_minor']}
      onSave={() => void save()}
    >
      <h3>{say('Replace {part}', { part: part.name })}</h3>
      <TextField label={say('Why')} path="reason" value={reason} onChange={setReason} needed />
      <div className="form-pair">
        <DateField label={say('On')} path="date" value={date} onChange={setDate} />
        <QuantityField
          label={say('How much')}
          path="amount"
          unit={tradeUnit(part.baseUnit)}
          value={amount}
          onChange={setAmount}
        />
      </div>
      <div className="form-pair">
        <QuantityField label={say('Life')} path="life_years" unit="years" value={life} onChange={setLife} />
        <MoneyField label={say('Price of it all')} path="price_minor" value={price} onChange={setPrice} hint={priceHint} />
      </div>
      <div className="row">
        <Button type="submit" weight="main" disabled={replace.busy}>
          {say('Replace')}
        </Button>
        <Button onClick={props.onDone}>{say('Leave it')}</Button>
      </div>
    </Form>
  );
}
