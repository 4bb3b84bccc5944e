import { useMemo, useState } from 'react';
import type { Reader } from '../../../planner/units/reader.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, date, derived, flag, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { CountDialog } from './count-dialog.tsx';
import { LotsList } from './lots-list.tsx';
import { StockSheet } from './stock-sheet.tsx';
import type { TabHead } from './tab-head.ts';

export type StockRow = OutputOf<typeof api.stock.list>[number];

const idOf = (row: StockRow): string => row.materialId;

const columnsFor = (reader: Reader): readonly Column<StockRow>[] => [
  text('name', say('Material'), { width: 240 }),
  text('kind', say('Kind'), { width: 110 }),
  derived('text', 'onHandText', say('On hand'), (row) => reader.print(row.onHand, tradeUnit(row.baseUnit)), {
    width: 130,
    draw: (row) =>
      row.below ? (
        <span className="state-mark" data-tone="stop">
          {say('{onHand}, count it', { onHand: reader.print(row.onHand, tradeUnit(row.baseUnit)) })}
        </span>
      ) : (
        reader.print(row.onHand, tradeUnit(row.baseUnit))
      ),
  }),
  money('value_minor', say('Value'), { total: 'sum', width: 120 }),
  date('lastDate', say('Last moved'), { width: 120 }),
  date('counted', say('Last counted'), { width: 120 }),
  derived('flag', 'flaggedMoves', say('Corrected'), (row) => row.flagged > 0, { width: 100 }),
  flag('own', say('Own'), { shown: false }),
];

/** What is on hand, at its average cost; every movement behind it; counts and lots. */
export function StockTab({ tabs }: TabHead) {
  const stock = useRead(api.stock.list, undefined);
  const [materialId, setMaterialId] = useQueryValue('material');
  const [counting, setCounting] = useState(false);
  const reader = useReader();
  const columns = useMemo(() => columnsFor(reader), [reader]);
  const open = stock.state === 'ready' ? stock.data.find((row) => row.materialId === materialId) : undefined;
  return (
    <Page
      title={say('Orders')}
      lead={say('Every movement is kept: opening counts, purchases, uses, corrections. The balance is their sum.')}
      tabs={tabs}
      actions={
        <Button weight="main" onClick={() => setCounting(true)}>
          {say('Count')}
        </Button>
      }
      sheet={open === undefined ? null : <StockSheet key={open.materialId} row={open} onClose={() => setMaterialId(undefined)} />}
    >
      <Shown reading={stock}>
        {(rows) => (
          <>
            <Grid
              name="Stock"
              rows={rows}
              columns={columns}
              rowId={idOf}
              onOpen={(row) => setMaterialId(row.materialId)}
              empty={
                <Empty title={say('Nothing in stock yet')}>{say('Count what is in the shed, or receive a purchase.')}</Empty>
              }
            />
            {counting ? <CountDialog rows={rows} onClose={() => setCounting(false)} /> : null}
          </>
        )}
      </Shown>
      <LotsList />
    </Page>
  );
}
