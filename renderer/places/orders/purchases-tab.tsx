import { useState } from 'react';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, choice, count, date, derived, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { PurchaseSheet } from './purchase-sheet.tsx';
import type { TabHead } from './tab-head.ts';

export type PurchaseRow = OutputOf<typeof api.orders.purchases>[number];

const states = [
  { value: 'ordered', text: say('Ordered') },
  { value: 'partly-here', text: say('Partly here') },
  { value: 'here', text: say('Here') },
  { value: 'called-off', text: say('Called off') },
] as const;

const idOf = (row: PurchaseRow): string => row.lineId;

const columns: readonly Column<PurchaseRow>[] = [
  date('orderedDate', say('Ordered'), { width: 110 }),
  text('supplier', say('Supplier'), { width: 190 }),
  text('material', say('Material'), { width: 190 }),
  count('packages', say('Packages'), { width: 95 }),
  count('receivedPackages', say('Came'), { width: 80 }),
  count('returnedPackages', say('Went back'), { width: 95 }),
  money('price_minor', say('Price'), { width: 95 }),
  money('total_minor', say('Total'), { total: 'sum', width: 110 }),
  choice('state', say('State'), states, { width: 110 }),
  text('category', say('Category'), { width: 150 }),
  text('documentNumber', say('Document'), { width: 120 }),
  derived('date', 'receivedDate', say('Complete'), (row) => row.receivedDate, { shown: false }),
];

/** What was ordered, what came of it, what went back. */
export function PurchasesTab({ tabs }: TabHead) {
  const purchases = useRead(api.orders.purchases, undefined);
  const [lineId, setLineId] = useState<string>();
  const reader = useReader();
  const open = purchases.state === 'ready' ? purchases.data.find((row) => row.lineId === lineId) : undefined;
  const mates =
    open === undefined || purchases.state !== 'ready' ? [] : purchases.data.filter((row) => row.purchaseId === open.purchaseId);
  return (
    <Page
      title={say('Orders')}
      lead={say('Open a line to receive the delivery or send goods back: stock and costs follow.')}
      tabs={tabs}
      sheet={
        open === undefined ? null : (
          <PurchaseSheet
            key={`${open.purchaseId} ${mates.map((row) => row.receivedPackages).join()}`}
            lines={mates}
            onClose={() => setLineId(undefined)}
          />
        )
      }
    >
      <Shown reading={purchases}>
        {(rows) => (
          <>
            {rows.some((row) => row.open > 0) ? (
              <p className="soft small">
                {say('On the way: {reduce}', {
                  reduce: reader.money(rows.reduce((sum, row) => sum + Math.round(Math.max(0, row.open) * row.price_minor), 0)),
                })}
              </p>
            ) : null}
            <Grid
              name="Purchases"
              rows={rows}
              columns={columns}
              rowId={idOf}
              onOpen={(row) => setLineId(row.lineId)}
              empty={<Empty title={say('Nothing bought yet')}>{say('Tick lines of the shopping list and order them.')}</Empty>}
            />
          </>
        )}
      </Shown>
    </Page>
  );
}
