import { useState } from 'react';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { type Column, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import { type BudgetMonthRow, budgetMonths } from './rows.ts';

type Row = OutputOf<typeof api.orders.budget>[number];

const idOf = (row: BudgetMonthRow): string => String(row.month);
const columns: readonly Column<BudgetMonthRow>[] = [
  text('name', say('Month'), { width: 140 }),
  money('budget_minor', say('Budget'), { edit: (row) => row.mayEdit, total: 'sum' }),
  money('actual_minor', say('Spent'), { total: 'sum' }),
  money('committed_minor', say('Ordered'), { total: 'sum', hint: say('Ordered and not yet here') }),
];

/** A season's spending month by month, of one category or of all; what a month may cost is entered for one category. */
export function BudgetMonths({ rows, seasonId }: { readonly rows: readonly Row[]; readonly seasonId: string }) {
  const set = useChange(api.orders.setBudgets);
  const [category, setCategory] = useState('');
  const months = budgetMonths(rows, category === '' ? null : category);
  const edit = async (edits: readonly Edit<BudgetMonthRow>[]): Promise<unknown> => {
    await set.run({
      seasonId,
      budgets: edits.map((each) => ({
        category,
        month: each.row.month,
        amount_minor: typeof each.value === 'number' ? each.value : 0,
      })),
    });
    return undefined;
  };
  return (
    <section className="stack" aria-label={say('By month')}>
      <h2>{say('By month')}</h2>
      <ChoiceField
        label={say('Category')}
        value={category}
        choices={[
          { value: '', text: say('All: choose one to enter its months') },
          ...rows.map((row) => ({ value: row.category, text: row.category })),
        ]}
        onChange={setCategory}
      />
      <Grid name="Budget by month" rows={months} columns={columns} rowId={idOf} onEdit={edit} failure={set.failure} />
      <Chart
        title={say('Spent and ordered by month')}
        rows={months}
        x={{ name: say('Month'), text: (row) => row.name }}
        unit="minor"
        series={[
          { name: say('Spent'), as: 'bar', read: (row) => row.actual_minor },
          { name: say('Ordered'), as: 'bar', read: (row) => row.committed_minor },
          { name: say('Budget'), as: 'line', read: (row) => row.budget_minor },
        ]}
      />
    </section>
  );
}
