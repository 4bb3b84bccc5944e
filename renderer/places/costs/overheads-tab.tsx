import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { type Column, choice as choiceColumn, date, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { TabHead } from '../orders/tab-head.ts';

type Row = OutputOf<typeof api.costs.overheads>[number];

const keys = [
  { value: 'area', text: say('Ground') },
  { value: 'bed-days', text: say('Ground and time') },
  { value: 'plants', text: say('Plants') },
  { value: 'hours', text: say('Hours') },
  { value: 'income', text: say('Income') },
] as const;

const fits: Readonly<Record<(typeof keys)[number]['value'], string>> = {
  area: say('Fits land, fences, a water fee for the site.'),
  'bed-days': say('Fits what a bed costs whether or not it is used: tunnels, land where beds turn over.'),
  plants: say('Fits starts, trays, the propagation house.'),
  hours: say('Fits tools, training, the shed, insurance.'),
  income: say('Fits fees that follow turnover. It makes good crops look dear.'),
};

const idOf = (row: Row): string => row.id;
const columns: readonly Column<Row>[] = [
  date('date', say('Date'), { width: 120 }),
  text('name', say('Cost'), { width: 220 }),
  money('amount_minor', say('Amount'), { total: 'sum', width: 120 }),
  choiceColumn('shareKey', say('Shared by'), keys, { width: 150 }),
  text('category', say('Category'), { width: 150 }),
];

/** Costs that no bed or planting carries by itself, each with the key by which it is shared. */
export function OverheadsTab({ tabs, choice, season }: TabHead) {
  const overheads = useRead(api.costs.overheads, { seasonId: season.seasonId });
  const remove = useChange(api.costs.removeOverhead);
  const [adding, setAdding] = useState(false);
  const [selected, setSelected] = useState<readonly string[]>([]);
  return (
    <Page
      title={say('Costs')}
      lead={say('Each is shared by one key only, to the cent; what nobody weighs under stays apart.')}
      tabs={tabs}
      actions={
        <>
          {choice}
          <Button weight="main" icon="add" onClick={() => setAdding(true)}>
            {say('Add a cost')}
          </Button>
        </>
      }
    >
      <Shown reading={overheads}>
        {(rows) => (
          <Grid
            name="Overheads"
            rows={rows}
            columns={columns}
            rowId={idOf}
            onSelect={setSelected}
            tools={
              selected.length === 0 ? undefined : (
                <Button
                  icon="bin"
                  onClick={() => {
                    for (const overheadId of selected) void remove.run({ overheadId }, say('Took the cost away.'));
                  }}
                >
                  {say('Take away')}
                </Button>
              )
            }
            empty={
              <Empty title={say('No overheads in this season')}>
                {say('Rent, insurance, fees: add what no bed carries by itself.')}
              </Empty>
            }
          />
        )}
      </Shown>
      {adding ? <AddOverhead seasonId={season.seasonId} onClose={() => setAdding(false)} /> : null}
    </Page>
  );
}

function AddOverhead({ seasonId, onClose }: { readonly seasonId: string; readonly onClose: () => void }) {
  const add = useChange(api.costs.addOverhead);
  const [name, setName] = useState('');
  const [day, setDay] = useState<IsoDate | null>(null);
  const [amount, setAmount] = useState<number | null>(null);
  const [shareKey, setKey] = useState<(typeof keys)[number]['value']>('bed-days');
  const save = async (): Promise<void> => {
    const added = await add.run(
      { seasonId, name, date: day ?? '', amount_minor: amount ?? 0, shareKey },
      say('Added {name}.', { name }),
    );
    if (added !== undefined) onClose();
  };
  return (
    <Dialog title={say('Add a cost')} onClose={onClose}>
      <Form
        label={say('Add a cost')}
        failure={add.failure}
        paths={['name', 'date', 'amount_minor', 'shareKey']}
        onSave={() => void save()}
      >
        <TextField label={say('Cost')} path="name" value={name} onChange={setName} needed />
        <div className="form-pair">
          <DateField label={say('Date')} path="date" value={day} onChange={setDay} needed />
          <MoneyField label={say('Amount')} path="amount_minor" value={amount} onChange={setAmount} needed />
        </div>
        <ChoiceField
          label={say('Shared by')}
          path="shareKey"
          value={shareKey}
          choices={keys}
          onChange={setKey}
          hint={fits[shareKey]}
        />
        <Button type="submit" weight="main" disabled={add.busy}>
          {say('Add')}
        </Button>
      </Form>
    </Dialog>
  );
}
