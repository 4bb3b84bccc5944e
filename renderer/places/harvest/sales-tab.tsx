import { type ReactNode, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, date, derived, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { LotRow, SaleRow } from './harvest-types.ts';
import { PeriodFields } from './period-fields.tsx';
import { outcomes, SaleDialog } from './sale-dialog.tsx';
import { StandingOrders } from './standing-orders.tsx';
import { usePeriod } from './use-period.ts';

const saleColumns: readonly Column<SaleRow>[] = [
  date('date', say('Day')),
  text('outlet', say('Outlet'), { width: 150 }),
  text('crop', say('Crop'), { width: 150 }),
  text('lot', say('Lot'), { width: 170 }),
  derived('count', 'amount', say('Amount'), (row) => row.amount),
  text('unit', say('Unit'), { width: 90 }),
  money('price_minor', say('Price a unit')),
  money('paid_minor', say('Paid'), { total: 'sum' }),
  choice('outcome', say('Outcome'), outcomes, { width: 90 }),
  text('documentNumber', say('Document'), { width: 130 }),
  text('buyer', say('Buyer')),
];

const lotColumns: readonly Column<LotRow>[] = [
  text('code', say('Lot'), { width: 180 }),
  date('date', say('Harvested')),
  text('crop', say('Crop'), { width: 150 }),
  text('bed', say('Bed'), { width: 80 }),
  derived('count', 'harvested', say('Harvested'), (row) => row.harvested),
  derived('count', 'gone', say('Gone'), (row) => row.gone),
  derived('count', 'left', say('Left'), (row) => Number(row.left.toFixed(3))),
  text('unit', say('Unit'), { width: 90 }),
];

const saleId = (row: SaleRow): string => row.saleLineId;
const lotId = (row: LotRow): string => `${row.lotId} ${row.unit}`;

/** Lots on hand, sold by choosing them; the log of sales with what was not sold. */
export function SalesTab({ tabs, today }: { readonly tabs: ReactNode; readonly today: IsoDate }) {
  const period = usePeriod(today);
  const lots = useRead(api.harvest.lots, { date: today });
  const log = useRead(api.sales.log, { from: period.from, to: period.to });
  const remove = useChange(api.sales.removeLines);
  const [chosenLots, setChosenLots] = useState<readonly string[]>([]);
  const [chosenSales, setChosenSales] = useState<readonly string[]>([]);
  const [selling, setSelling] = useState<readonly LotRow[]>();
  const takeAway = async (): Promise<void> => {
    const done = await remove.run({ saleLineIds: [...chosenSales] }, say('Took the sale away.'));
    if (done !== undefined) setChosenSales([]);
  };
  return (
    <Page title={say('Harvest')} lead={say('From lots harvested to what they brought.')} tabs={tabs}>
      <Shown reading={lots}>
        {(rows) => {
          const left = rows.filter((row) => row.left > 0);
          const picked = left.filter((row) => chosenLots.includes(lotId(row)));
          return (
            <Grid
              name="Lots on hand"
              rows={left}
              columns={lotColumns}
              rowId={lotId}
              onSelect={setChosenLots}
              tools={
                <Button weight="main" disabled={picked.length === 0} onClick={() => setSelling(picked)}>
                  {picked.length === 0
                    ? say('Choose lots to sell')
                    : say('Sell {picked, plural, one {this lot} other {# lots}}', { picked: picked.length })}
                </Button>
              }
              empty={
                <Empty title={say('No lot on hand')}>
                  {say('What was harvested in the last 60 days and not yet sold stands here.')}
                </Empty>
              }
            />
          );
        }}
      </Shown>
      <StandingOrders today={today} />
      <h2>{say('Sales')}</h2>
      <PeriodFields period={period} />
      <Shown reading={log}>
        {(rows) => (
          <Grid
            name="Sales"
            rows={rows}
            columns={saleColumns}
            rowId={saleId}
            onSelect={setChosenSales}
            failure={remove.failure}
            tools={
              chosenSales.length === 0 ? null : (
                <Button weight="harm" disabled={remove.busy} onClick={() => void takeAway()}>
                  {say('Take {chosenSales, plural, one {it} other {# lines}} away', { chosenSales: chosenSales.length })}
                </Button>
              )
            }
            empty={
              <Empty title={say('No sale in these days')}>{say('Choose lots above and sell them, or choose other days.')}</Empty>
            }
          />
        )}
      </Shown>
      {selling === undefined ? null : <SaleDialog lots={selling} today={today} onClose={() => setSelling(undefined)} />}
    </Page>
  );
}
