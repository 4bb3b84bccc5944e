import { useState } from 'react';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import { type NeedRow, sayOnTheWay } from './need-columns.tsx';

/** One need: where its amount comes from, and another amount in its place with the reason for it. */
export function NeedSheet(props: { readonly row: NeedRow; readonly seasonId: string; readonly onClose: () => void }) {
  const { row, seasonId, onClose } = props;
  const reader = useReader();
  const set = useChange(api.orders.setNeedAmount);
  const [amount, setAmount] = useState<number | null>(row.amount);
  const [reason, setReason] = useState(row.amountReason);
  const about = { seasonId, key: row.key, materialId: row.materialId };
  return (
    <Sheet title={row.material} onClose={onClose}>
      <dl className="facts">
        <dt>{say('Reason')}</dt>
        <dd>{reader.datesIn(sayKnown(row.reason))}</dd>
        <dt>{row.source === 'hand' ? say('Entered') : say('Computed')}</dt>
        <dd>{reader.print(row.computed, tradeUnit(row.baseUnit))}</dd>
        {row.changed ? (
          <>
            <dt>{say('Your amount')}</dt>
            <dd>
              {say('{amount}: {why}', {
                amount: reader.print(row.amount, tradeUnit(row.baseUnit)),
                why: row.amountReason || say('no reason kept'),
              })}
            </dd>
          </>
        ) : null}
        {row.onTheWay > 0 ? (
          <>
            <dt>{say('On the way')}</dt>
            <dd>{sayOnTheWay(row, reader)}</dd>
          </>
        ) : null}
      </dl>
      <Form
        label={say('Another amount')}
        failure={set.failure}
        paths={['amount', 'reason']}
        onSave={() =>
          void set.run(
            { ...about, amount: amount ?? Number.NaN, reason },
            say('{material} has another amount.', { material: row.material }),
          )
        }
      >
        <h3>{say('Another amount')}</h3>
        <QuantityField
          label={say('Amount')}
          path="amount"
          unit={tradeUnit(row.baseUnit)}
          value={amount}
          onChange={setAmount}
          needed
        />
        <TextField
          label={say('Why')}
          path="reason"
          value={reason}
          onChange={setReason}
          needed
          hint={say('Kept with the need, and shown beside it')}
        />
        <div className="row">
          <Button type="submit" weight="main" disabled={set.busy}>
            {say('Take this amount')}
          </Button>
          {row.changed ? (
            <Button
              disabled={set.busy}
              onClick={() =>
                void set
                  .run(
                    { ...about, amount: null, reason: '' },
                    say('Back to {amount}.', { amount: reader.print(row.computed, tradeUnit(row.baseUnit)) }),
                  )
                  .then((done) => {
                    if (done !== undefined) onClose();
                  })
              }
            >
              {say('Back to {amount}', { amount: reader.print(row.computed, tradeUnit(row.baseUnit)) })}
            </Button>
          ) : null}
        </div>
      </Form>
    </Sheet>
  );
}
