import { type ReactNode, useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type InputOf, type OutputOf, useRead } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { type Column, count, flag, money, share, text } from '../../table/column.ts';
import { editsByRow } from '../../table/edits-by-row.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';

type SupplierRow = OutputOf<typeof api.suppliers.list>[number];
type Values = InputOf<typeof api.suppliers.setMany>['edits'][number]['values'];

const columns: readonly Column<SupplierRow>[] = [
  text('name', say('Supplier'), { edit: true, mayBeEmpty: false, width: 220 }),
  text('contact', say('Contact'), { edit: true, width: 200 }),
  money('deliveryFee_minor', say('Delivery'), { edit: true, hint: say('For one delivery') }),
  money('freeDeliveryFrom_minor', say('Free from'), {
    edit: true,
    mayBeEmpty: true,
    hint: say('Goods for this much are delivered free; empty: never'),
  }),
  money('minimumOrder_minor', say('Minimum'), { edit: true, hint: say('The least order it takes') }),
  share('tax_share', say('Sales tax'), { edit: true }),
  count('lead_days', say('Days to come'), { edit: true, width: 120 }),
  flag('pickUp', say('Pick up'), { edit: true }),
  count('offers', say('Offers')),
  flag('retired', say('Not used'), { edit: true, width: 90 }),
  text('notes', say('Notes'), { edit: true, shown: false }),
];

const idOf = (row: SupplierRow): string => row.id;

/** Who sells what is needed, and on what terms. */
export function SuppliersTab({ tabs }: { readonly tabs: ReactNode }) {
  const suppliers = useRead(api.suppliers.list, undefined);
  const change = useChange(api.suppliers.setMany);
  const [adding, setAdding] = useState(false);
  const edit = (edits: readonly Edit<SupplierRow>[]) =>
    change.run({
      edits: editsByRow(edits).map(({ row, values }) => ({
        supplierId: row.id,
        revision: row.revision,
        values: values as Values,
      })),
    });
  const add = (
    <Button weight="main" icon="add" onClick={() => setAdding(true)}>
      {say('Add a supplier')}
    </Button>
  );
  return (
    <Page title={say('Library')} tabs={tabs} actions={add}>
      <Shown reading={suppliers}>
        {(rows) => (
          <Grid
            name="Suppliers"
            rows={rows}
            columns={columns}
            rowId={idOf}
            onEdit={edit}
            failure={change.failure}
            empty={
              <Empty title={say('No supplier yet')} action={add}>
                {say('With suppliers and their offers, Orders finds the cheapest packages.')}
              </Empty>
            }
          />
        )}
      </Shown>
      {adding ? <AddSupplier onClose={() => setAdding(false)} /> : null}
    </Page>
  );
}

function AddSupplier({ onClose }: { readonly onClose: () => void }) {
  const add = useChange(api.suppliers.add);
  const [name, setName] = useState('');
  const [contact, setContact] = useState('');
  const save = async (): Promise<void> => {
    const added = await add.run({ name, contact }, say('Added {name}.', { name }));
    if (added !== undefined) onClose();
  };
  return (
    <Dialog title={say('Add a supplier')} onClose={onClose}>
      <Form onSave={() => void save()} failure={add.failure} paths={['name', 'contact']} label={say('Add a supplier')}>
        <TextField label={say('Name')} path="name" value={name} onChange={setName} />
        <TextField label={say('Contact')} path="contact" lines={2} value={contact} onChange={setContact} />
        <div className="row">
          <Button type="submit" weight="main" disabled={add.busy}>
            {say('Add')}
          </Button>
          <Button onClick={onClose}>{say('Not now')}</Button>
        </div>
      </Form>
    </Dialog>
  );
}
