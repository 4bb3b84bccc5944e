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
import type { LotToSell, SaleStart } from './fill-order.ts';

type Outcome = 'sold' | 'unsold' | 'spoiled' | 'given';
type Line = {
  readonly lot: LotToSell;
  readonly amount: number | null;
  readonly price_minor: number | null;
  readonly outcome: Outcome;
};

export const outcomes: readonly { readonly value: Outcome; readonly text: string }[] = [
  { value: 'sold', text: say('sold') },
  { value: 'unsold', text: say('brought back unsold') },
  { value: 'spoiled', text: say('spoiled') },
  { value: 'given', text: say('given away') },
];

/** One sale of the chosen lots. Without a price the outlet's list is used; never more than the lot has left. */
export function SaleDialog({
  lots,
  today,
  start,
  onClose,
}: {
  readonly lots: readonly LotToSell[];
  readonly today: IsoDate;
  /** What is known of the sale before it is entered, such as the order it fills. */
  readonly start?: SaleStart;
  readonly onClose: () => void;
}) {
  const outlets = useRead(api.sales.outlets, undefined);
  const add = useChange(api.sales.add);
  const [date, setDate] = useState<IsoDate>(today);
  const [outletId, setOutlet] = useState(start?.outletId ?? '');
  const [buyer, setBuyer] = useState('');
  const [lines, setLines] = useState<readonly Line[]>(() =>
    lots.map((lot) => ({
      lot,
      amount: start?.amounts.get(lot.lotId) ?? Number(lot.left.toFixed(3)),
      price_minor: start?.price_minor ?? null,
      outcome: 'sold',
    })),
  );
  const set = (at: number, change: Partial<Line>) =>
    setLines(lines.map((line, index) => (index === at ? { ...line, ...change } : line)));
  const save = async (): Promise<void> => {
    const done = await add.run(
      {
        date,
        outletId,
        buyer,
        lines: lines.map((line) => ({
          lotId: line.lot.lotId,
          plantingId: line.lot.plantingId,
          amount: line.amount ?? 0,
          unit: line.lot.unit,
          price_minor: line.price_minor,
          outcome: line.outcome,
        })),
      },
      say('Sale kept.'),
    );
    if (done !== undefined) onClose();
  };
  const paths = [
    'date',
    'outletId',
    'buyer',
    ...lines.flatMap((_, at) => [`lines.${at}.amount`, `lines.${at}.price_minor`, `lines.${at}.unit`]),
  ];
  return (
    <Dialog
      title={say('{lots, plural, one {Sell lot {lots2}} other {Sell # lots}}', { lots: lots.length, lots2: lots[0]?.code ?? '' })}
      onClose={onClose}
      wide
    >
      <Shown reading={outlets}>
        {(known) => (
          <Form onSave={() => void save()} failure={add.failure} paths={paths} label={say('Sale')}>
            <div className="form-pair">
              <DateField label={say('Day')} path="date" value={date} onChange={(next) => next !== null && setDate(next)} />
              <ChoiceField
                label={say('Outlet')}
                path="outletId"
                value={outletId}
                choices={[{ value: '', text: say('choose one') }, ...known.map((each) => ({ value: each.id, text: each.name }))]}
                onChange={setOutlet}
              />
            </div>
            <TextField
              label={say('Buyer')}
              path="buyer"
              hint={say('Where records ask for it')}
              value={buyer}
              onChange={setBuyer}
            />
            {lines.map((line, at) => (
              <fieldset key={`${line.lot.lotId} ${line.lot.unit}`} className="sale-line">
                <legend>
                  {say('{lot}: {crop}, {left} {unit} left', {
                    lot: line.lot.code,
                    crop: line.lot.crop,
                    left: Number(line.lot.left.toFixed(3)),
                    unit: line.lot.unit,
                  })}
                </legend>
                <div className="entry-fields">
                  <QuantityField
                    label={say('Amount, {unit}', { unit: line.lot.unit })}
                    path={`lines.${at}.amount`}
                    value={line.amount}
                    onChange={(amount) => set(at, { amount })}
                  />
                  <MoneyField
                    label={say('Price a unit')}
                    path={`lines.${at}.price_minor`}
                    hint={say('Empty: from the outlet’s list')}
                    value={line.price_minor}
                    onChange={(price_minor) => set(at, { price_minor })}
                  />
                  <ChoiceField
                    label={say('Outcome')}
                    value={line.outcome}
                    choices={outcomes}
                    onChange={(outcome) => set(at, { outcome })}
                  />
                </div>
              </fieldset>
            ))}
            <div className="row">
              <Button type="submit" weight="main" disabled={add.busy}>
                {say('Keep sale')}
              </Button>
              <Button onClick={onClose}>{say('Cancel')}</Button>
            </div>
          </Form>
        )}
      </Shown>
    </Dialog>
  );
}
