import { useMemo } from 'react';
import type { Reader } from '../../../planner/units/reader.ts';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, count, derived, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { TabHead } from '../orders/tab-head.ts';
import { amountText } from './amount-text.ts';

type Row = OutputOf<typeof api.costs.plan>[number];

const idOf = (row: Row): string => `${row.cropId} ${row.unit}`;

const columnsFor = (reader: Reader): readonly Column<Row>[] => [
  text('crop', say('Crop'), { width: 150 }),
  derived('text', 'plannedText', say('Planned'), (row) => amountText(row.plannedAmount, row.unit, reader), { width: 95 }),
  derived('text', 'soldText', say('Sold'), (row) => amountText(row.soldAmount, row.unit, reader), { width: 95 }),
  money('plan_minor', say('Planned income'), { total: 'sum', width: 150 }),
  money('actual_minor', say('Income'), { total: 'sum', width: 115 }),
  money('sum_minor', say('Difference'), { total: 'sum', width: 130 }),
  money('area_minor', say('by ground'), { total: 'sum', width: 110, hint: say('Planted on more or less ground, or failed') }),
  money('yield_minor', say('by yield'), { total: 'sum', width: 110, hint: say('Each m² gave more or less that could be sold') }),
  money('price_minor', say('by price'), { total: 'sum', width: 110, hint: say('Each unit brought more or less') }),
  money('cost_minor', say('Costs'), { total: 'sum', width: 110 }),
  count('failed', say('Failed'), { width: 80, hint: say('Plantings lost') }),
];

/** Each crop's income against the plan, and why it differs: ground, yield, price, in parts that add up. */
export function PlanTab({ tabs, choice, season }: TabHead) {
  const plan = useRead(api.costs.plan, { seasonId: season.seasonId });
  const reader = useReader();
  const columns = useMemo(() => columnsFor(reader), [reader]);
  return (
    <Page
      title={say('Costs')}
      lead={say('Why income is not as planned: the causes add up to the difference.')}
      tabs={tabs}
      actions={choice}
    >
      <Shown reading={plan}>
        {(rows) => (
          <Grid
            name="Against plan"
            rows={rows}
            columns={columns}
            rowId={idOf}
            empty={<Empty title={say('No plantings in this season')}>{say('Plan the season first.')}</Empty>}
          />
        )}
      </Shown>
    </Page>
  );
}
