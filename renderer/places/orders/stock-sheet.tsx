import { useMemo, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { type Column, choice, date, derived, flag, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { StockRow } from './stock-tab.tsx';

type Move = OutputOf<typeof api.stock.moves>[number];

const kinds = [
  { value: 'opening', text: say('Opening count') },
  { value: 'purchase', text: say('Purchase') },
  { value: 'made', text: say('Made or won') },
  { value: 'use', text: say('Use') },
  { value: 'correction', text: say('Correction') },
  { value: 'return', text: say('Sent back') },
] as const;

const idOf = (row: Move): string => row.moveId;

const columnsFor = (reader: Reader, unit: string): readonly Column<Move>[] => [
  date('date', say('Date'), { width: 100 }),
  choice('kind', say('What'), kinds, { width: 110 }),
  derived('text', 'amountText', say('Amount'), (row) => reader.print(row.amount, unit), { width: 100 }),
  derived('text', 'balanceText', say('Then on hand'), (row) => reader.print(row.balance, unit), { width: 110 }),
  money('value_minor', say('Value'), { width: 90 }),
  text('who', say('Who'), { width: 70 }),
  text('reason', say('Why'), { width: 140 }),
  text('bed', say('Bed'), { width: 70 }),
  flag('flagged', say('Flagged'), { width: 80 }),
];

/** One material's ledger, its average cost with the working, and the entry of a use. */
export function StockSheet({ row, onClose }: { readonly row: StockRow; readonly onClose: () => void }) {
  const moves = useRead(api.stock.moves, { materialId: row.materialId });
  const reader = useReader();
  const columns = useMemo(() => columnsFor(reader, tradeUnit(row.baseUnit)), [reader, row.baseUnit]);
  return (
    <Sheet title={row.name} onClose={onClose}>
      <dl className="facts">
        <dt>{say('On hand')}</dt>
        <dd>{reader.print(row.onHand, tradeUnit(row.baseUnit))}</dd>
        <dt>{say('Cost of one {sign}', { sign: reader.sign(tradeUnit(row.baseUnit)) || say('piece') })}</dt>
        <dd>
          <Figure
            value={row.unitCost_minor / reader.scale(1, tradeUnit(row.baseUnit))}
            unit="minor"
            name={say('Average cost')}
            explain={() => client.stock.explain.query({ materialId: row.materialId, unit: tradeUnit(row.baseUnit) })}
          />
        </dd>
      </dl>
      <UseForm row={row} />
      <Shown reading={moves}>
        {(all) => <Grid name={say('Movements of {row}', { row: row.name })} rows={all} columns={columns} rowId={idOf} />}
      </Shown>
    </Sheet>
  );
}

function UseForm({ row }: { readonly row: StockRow }) {
  const use = useChange(api.stock.use);
  const today = useRead(api.soilTests.today, undefined);
  const now = today.state === 'ready' ? (today.data.today as IsoDate) : null;
  const [chosenDay, setDay] = useState<IsoDate | null>(null);
  const day = chosenDay ?? now;
  const [amount, setAmount] = useState<number | null>(null);
  const [reason, setReason] = useState('');
  const [bedId, setBed] = useState('');
  const [plantingId, setPlanting] = useState('');
  const [lotId, setLot] = useState('');
  const lots = useRead(api.stock.lots, undefined);
  const beds = useRead(api.beds.list, undefined);
  const plantings = useRead(api.stock.plantingsNear, { date: day ?? '2000-01-01' });
  const own = lots.state === 'ready' ? lots.data.filter((lot) => lot.materialId === row.materialId) : [];
  const ask = use.failure?.faults.some((fault) => fault.code === 'confirm') === true;
  const save = (flagged: boolean) => {
    void use.run(
      {
        materialId: row.materialId,
        date: day ?? '',
        amount: amount ?? Number.NaN,
        reason,
        bedId: bedId === '' ? null : bedId,
        plantingId: plantingId === '' ? null : plantingId,
        lotId: lotId === '' ? null : lotId,
        flagged,
      },
      say('Entered the use.'),
    );
  };
  return (
    <Form
      label={say('Enter a use')}
      failure={use.failure}
      paths={['amount', 'reason', 'date', 'bedId', 'plantingId']}
      onSave={() => save(false)}
    >
      <h3>{say('Enter a use')}</h3>
      <div className="form-pair">
        <QuantityField
          label={say('Amount')}
          path="amount"
          unit={tradeUnit(row.baseUnit)}
          value={amount}
          onChange={setAmount}
          needed
        />
        <DateField label={say('On')} path="date" value={day} onChange={setDay} needed />
      </div>
      <TextField label={say('For')} path="reason" value={reason} onChange={setReason} />
      <div className="form-pair">
        <ChoiceField
          label={say('Bed')}
          path="bedId"
          value={bedId}
          choices={[
            { value: '', text: say('No certain one') },
            ...(beds.state === 'ready' ? beds.data.map((bed) => ({ value: bed.bedId as string, text: bed.code })) : []),
          ]}
          onChange={setBed}
        />
        <ChoiceField
          label={say('Planting')}
          path="plantingId"
          value={plantingId}
          choices={[
            { value: '', text: say('No certain one') },
            ...(plantings.state === 'ready'
              ? plantings.data.map((each) => ({ value: each.plantingId, text: `${each.crop} ${each.number}` }))
              : []),
          ]}
          onChange={setPlanting}
        />
      </div>
      <p className="soft small">{say('Its cost goes where it was used; without bed and planting it is shared by all.')}</p>
      {own.length === 0 ? null : (
        <ChoiceField
          label={say('Lot')}
          value={lotId}
          choices={[{ value: '', text: say('No certain one') }, ...own.map((lot) => ({ value: lot.lotId, text: lot.code }))]}
          onChange={setLot}
        />
      )}
      <div className="row">
        <Button type="submit" disabled={use.busy}>
          {say('Take out')}
        </Button>
        {ask ? <Button onClick={() => save(true)}>{say('It is right: take out and flag it')}</Button> : null}
      </div>
    </Form>
  );
}
