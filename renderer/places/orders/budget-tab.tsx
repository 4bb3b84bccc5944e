import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { type Column, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import { BudgetMonths } from './budget-months.tsx';
import { NoPrice } from './no-price.tsx';
import type { TabHead } from './tab-head.ts';

type Row = OutputOf<typeof api.orders.budget>[number];

const idOf = (row: Row): string => row.category;
const columns: readonly Column<Row>[] = [
  text('category', say('Category'), { width: 220 }),
  money('budget_minor', say('Budget'), { edit: true, total: 'sum', hint: say('For the season, its months included') }),
  money('actual_minor', say('Spent'), { total: 'sum' }),
  money('committed_minor', say('Ordered'), { total: 'sum', hint: say('Ordered and not yet here') }),
  money('left_minor', say('Left'), { total: 'sum' }),
];
/** A season's spending by category and month against what was set aside. */
export function BudgetTab({ tabs, choice, season }: TabHead) {
  const budget = useRead(api.orders.budget, { seasonId: season.seasonId });
  const set = useChange(api.orders.setBudgets);
  const [adding, setAdding] = useState(false);
  const edit = async (edits: readonly Edit<Row>[]): Promise<unknown> => {
    await set.run({
      seasonId: season.seasonId,
      budgets: edits.map((each) => ({
        category: each.row.category,
        amount_minor: typeof each.value === 'number' ? each.value : 0,
      })),
    });
    return undefined;
  };
  return (
    <Page
      title={say('Orders')}
      lead={say(
        'What was bought from the lists of the season, or in its days without a list; delivery and tax are a category of their own.',
      )}
      tabs={tabs}
      actions={
        <>
          {choice}
          <Button icon="add" onClick={() => setAdding(true)}>
            {say('Add a category')}
          </Button>
        </>
      }
    >
      <NoPrice seasonId={season.seasonId} />
      <Shown reading={budget}>
        {(rows) => (
          <>
            <Grid
              name="Budget"
              rows={rows}
              columns={columns}
              rowId={idOf}
              onEdit={edit}
              failure={set.failure}
              empty={
                <Empty title={say('No budget and no purchases yet')}>{say('Add a category with what you want to spend.')}</Empty>
              }
            />
            {rows.length === 0 ? null : <BudgetMonths rows={rows} seasonId={season.seasonId} />}
          </>
        )}
      </Shown>
      {adding ? <AddCategory seasonId={season.seasonId} onClose={() => setAdding(false)} /> : null}
    </Page>
  );
}

function AddCategory({ seasonId, onClose }: { readonly seasonId: string; readonly onClose: () => void }) {
  const set = useChange(api.orders.setBudgets);
  const [category, setCategory] = useState('');
  const [amount, setAmount] = useState<number | null>(null);
  const save = async (): Promise<void> => {
    const saved = await set.run(
      { seasonId, budgets: [{ category, amount_minor: amount ?? Number.NaN }] },
      say('Set the budget of {category}.', { category }),
    );
    if (saved !== undefined) onClose();
  };
  return (
    <Dialog title={say('Add a category')} onClose={onClose}>
      <Form
        label={say('Add a category')}
        failure={set.failure}
        paths={['budgets.0.category', 'budgets.0.amount_minor']}
        onSave={() => void save()}
      >
        <TextField label={say('Category')} path="budgets.0.category" value={category} onChange={setCategory} needed />
        <MoneyField
          label={say('Budget of the season')}
          path="budgets.0.amount_minor"
          value={amount}
          onChange={setAmount}
          needed
        />
        <Button type="submit" weight="main" disabled={set.busy}>
          {say('Add')}
        </Button>
      </Form>
    </Dialog>
  );
}
