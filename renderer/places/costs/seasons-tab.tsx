import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { type OutputOf, useRead, useReads } from '../../client/use-read.ts';
import { type Column, count, money, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { TabHead } from '../orders/tab-head.ts';

type Row = OutputOf<typeof api.costs.seasonSums>;

const idOf = (row: Row): string => row.seasonId;
const columns: readonly Column<Row>[] = [
  text('name', say('Season'), { width: 120 }),
  money('income_minor', say('Income'), { width: 125 }),
  money('direct_minor', say('Direct cost'), { width: 125 }),
  money('bed_minor', say('Parts and fill'), { width: 125 }),
  money('water_minor', say('Water, lines'), {
    width: 120,
    hint: say('Water, power, and the parts of the lines over their years'),
  }),
  money('overhead_minor', say('Overhead'), { width: 120 }),
  money('margin_minor', say('Margin'), { width: 125 }),
  count('unpriced', say('Prices missing'), { width: 125, hint: say('Costs are at least these, margins at most') }),
  quantity('labour_h', say('Hours'), { width: 95, digits: 3 }),
  money('return_minor_per_h', say('For an hour'), { width: 115 }),
  quantity('area_m2', say('Ground'), { width: 110 }),
];

/** All seasons side by side. */
export function SeasonsTab({ tabs }: TabHead) {
  const seasons = useRead(api.costs.seasons, undefined);
  const named = seasons.state === 'ready' ? seasons.data : [];
  const sums = useReads(
    api.costs.seasonSums,
    named.map(({ seasonId }) => ({ seasonId })),
  );
  return (
    <Page title={say('Costs')} lead={say('Season against season.')} tabs={tabs}>
      <Shown reading={seasons.state === 'ready' ? sums : seasons}>
        {(rows) => (
          <>
            <Grid
              name="Seasons"
              rows={rows}
              columns={columns}
              rowId={idOf}
              empty={<Empty title={say('No season yet')}>{say('Make one at Season.')}</Empty>}
            />
            {rows.length === 0 ? null : (
              <Chart
                title={say('Income and costs by season')}
                rows={rows}
                x={{ name: say('Season'), text: (row) => row.name }}
                unit="minor"
                series={[
                  { name: say('Income'), as: 'bar', read: (row) => row.income_minor },
                  { name: say('All costs'), as: 'line', read: (row) => row.cost_minor },
                  { name: say('Margin'), as: 'line', read: (row) => row.margin_minor },
                ]}
              />
            )}
          </>
        )}
      </Shown>
    </Page>
  );
}
