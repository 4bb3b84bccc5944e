import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { DateField } from '../../fields/date-field.tsx';
import { type Column, derived, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { fillOrder } from './fill-order.ts';
import type { StandingRow } from './harvest-types.ts';
import { SaleDialog } from './sale-dialog.tsx';

const rounded = (amount: number): number => Number(amount.toFixed(3));

const columns: readonly Column<StandingRow>[] = [
  text('outlet', say('Outlet'), { width: 170 }),
  text('crop', say('Crop'), { width: 150 }),
  derived('count', 'amountPerWeek', say('A week'), (row) => rounded(row.amountPerWeek), { width: 90 }),
  derived('count', 'filled', say('Sold'), (row) => rounded(row.filled), {
    width: 90,
    hint: say('Sold to this outlet in the week'),
  }),
  derived('count', 'open', say('Open'), (row) => rounded(row.open), { width: 90 }),
  derived('count', 'onHand', say('On hand'), (row) => rounded(row.onHand), {
    width: 90,
    hint: say('Left in lots of the last three weeks'),
  }),
  text('unit', say('Unit'), { width: 90 }),
  money('price_minor', say('Price a unit')),
];

const idOf = (row: StandingRow): string => row.demandId;

/** What outlets take each week, filled from the oldest lots that fit. */
export function StandingOrders({ today }: { readonly today: IsoDate }) {
  const [day, setDay] = useState(today);
  const orders = useRead(api.sales.standing, { date: day });
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [filling, setFilling] = useState<StandingRow>();
  const filled = filling === undefined ? undefined : fillOrder(filling);
  return (
    <>
      <h2>{say('Standing orders')}</h2>
      <div className="period-fields">
        <DateField label={say('In the week of')} value={day} onChange={(next) => next !== null && setDay(next)} />
      </div>
      <Shown reading={orders}>
        {(rows) => {
          const picked = rows.find((row) => row.demandId === chosen[0]);
          const can = picked !== undefined && chosen.length === 1 && picked.open > 0 && picked.onHand > 0;
          return (
            <Grid
              name="Standing orders"
              rows={rows}
              columns={columns}
              rowId={idOf}
              onSelect={setChosen}
              tools={
                <Button disabled={!can} onClick={() => setFilling(picked)}>
                  {picked === undefined || chosen.length > 1
                    ? say('Choose an order to fill')
                    : picked.open <= 0
                      ? say('This order is filled')
                      : picked.onHand <= 0
                        ? say('No lot on hand for it')
                        : say('Fill from lots')}
                </Button>
              }
              empty={
                <Empty title={say('No standing order in this week')}>
                  {say('What outlets take each week is entered with the demand of the season.')}
                </Empty>
              }
            />
          );
        }}
      </Shown>
      {filled === undefined ? null : (
        <SaleDialog lots={filled.lots} start={filled.start} today={day} onClose={() => setFilling(undefined)} />
      )}
    </>
  );
}
