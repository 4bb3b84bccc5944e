import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, money, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { TabHead } from '../orders/tab-head.ts';

type Row = OutputOf<typeof api.costs.sideBySide>[number];

const idOf = (row: Row): string => row.seasonId;
const columns: readonly Column<Row>[] = [
  text('name', 'Season', { width: 120 }),
  money('income_minor', 'Income', { width: 125 }),
  money('direct_minor', 'Direct cost', { width: 125 }),
  money('bed_minor', 'Parts and fill', { width: 125 }),
  money('water_minor', 'Water, power', { width: 120 }),
  money('overhead_minor', 'Overhead', { width: 120 }),
  money('margin_minor', 'Margin', { width: 125 }),
  quantity('labour_h', 'Hours', { width: 95, digits: 3 }),
  money('return_minor_per_h', 'For an hour', { width: 115 }),
  quantity('area_m2', 'Ground', { width: 110 }),
];

/** All seasons side by side. */
export function SeasonsTab({ tabs }: TabHead) {
  const seasons = useRead(api.costs.sideBySide, undefined);
  return (
    <Page title="Costs" lead="Season against season." tabs={tabs}>
      <Shown reading={seasons}>
        {(rows) => (
          <>
            <Grid
              name="Seasons"
              rows={rows}
              columns={columns}
              rowId={idOf}
              empty={<Empty title="No season yet">Make one at Season.</Empty>}
            />
            {rows.length === 0 ? null : (
              <Chart
                title="Income and costs by season"
                rows={rows}
                x={{ name: 'Season', text: (row) => row.name }}
                unit="minor"
                series={[
                  { name: 'Income', as: 'bar', read: (row) => row.income_minor },
                  { name: 'All costs', as: 'line', read: (row) => row.cost_minor },
                  { name: 'Margin', as: 'line', read: (row) => row.margin_minor },
                ]}
              />
            )}
          </>
        )}
      </Shown>
    </Page>
  );
}
