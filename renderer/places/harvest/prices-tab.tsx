import type { ReactNode } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, date, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import { AddPrice } from './add-price.tsx';
import type { PriceRow } from './harvest-types.ts';

const columns: readonly Column<PriceRow>[] = [
  text('crop', say('Crop'), { width: 190 }),
  text('outlet', say('Outlet'), { width: 190 }),
  text('unit', say('Unit'), { width: 100 }),
  text('grade', say('Grade'), { width: 100 }),
  money('price_minor', say('Price a unit'), { edit: true }),
  date('fromDate', say('From')),
];

const idOf = (row: PriceRow): string => row.priceId;

/** What each outlet pays for a unit, from a day on; a sale without a price of its own takes the newest in force. */
export function PricesTab({ tabs, today }: { readonly tabs: ReactNode; readonly today: IsoDate }) {
  const prices = useRead(api.sales.prices, undefined);
  const change = useChange(api.sales.setPrices);
  const edit = (edits: readonly Edit<PriceRow>[]) =>
    change.run({ edits: edits.map(({ row, value }) => ({ priceId: row.priceId, price_minor: Number(value) })) });
  return (
    <Page
      title={say('Harvest')}
      lead={say('Prices by outlet and unit. A new price gets a line from its day on: sales before it keep the old one.')}
      tabs={tabs}
    >
      <AddPrice today={today} />
      <Shown reading={prices}>
        {(rows) => (
          <Grid
            name="Prices"
            rows={rows}
            columns={columns}
            rowId={idOf}
            onEdit={edit}
            failure={change.failure}
            empty={<Empty title={say('No price yet')}>{say('Add what an outlet pays for a unit of a crop above.')}</Empty>}
          />
        )}
      </Shown>
    </Page>
  );
}
