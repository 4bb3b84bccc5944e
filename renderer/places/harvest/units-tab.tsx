import { type ReactNode, useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { type Column, derived, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';

type Units = OutputOf<typeof api.harvest.units>;
type Own = Units['own'][number];
type Listed = Units['listed'][number];

const ownColumns: readonly Column<Own>[] = [
  derived('text', 'crop', say('Crop'), (row) => row.crop ?? say('any crop'), { width: 180 }),
  text('unit', say('Unit'), { width: 140 }),
  quantity('net_kg', say('One weighs')),
  text('source', say('Whose word'), { width: 260 }),
];
const listedColumns: readonly Column<Listed>[] = [
  text('cropId', say('Crop'), { width: 180 }),
  text('unit', say('Unit'), { width: 140 }),
  quantity('net_kg', say('One weighs')),
  text('source', say('Source'), { width: 420 }),
];
const ownId = (row: Own): string => row.saleUnitId;
const listedId = (row: Listed): string => `${row.cropId} ${row.unit} ${row.source} ${row.net_kg}`;

/** Net weights of units of sale: your own weighings first, then published tables, each with its source. */
export function UnitsTab({ tabs }: { readonly tabs: ReactNode }) {
  const units = useRead(api.harvest.units, undefined);
  const crops = useRead(api.crops.list, undefined);
  const set = useChange(api.harvest.setUnit);
  const remove = useChange(api.harvest.removeUnit);
  const [cropId, setCrop] = useState('');
  const [unit, setUnit] = useState('');
  const [net_kg, setWeight] = useState<number | null>(null);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const save = async (): Promise<void> => {
    const done = await set.run(
      { cropId: cropId === '' ? null : cropId, unit, net_kg: net_kg ?? 0 },
      say('One {unit} is kept.', { unit }),
    );
    if (done === undefined) return;
    setUnit('');
    setWeight(null);
  };
  const takeAway = async (): Promise<void> => {
    for (const saleUnitId of chosen) await remove.run({ saleUnitId }, say('Took the unit away.'));
    setChosen([]);
  };
  const known = crops.state === 'ready' ? crops.data : [];
  return (
    <Page
      title={say('Harvest')}
      lead={say('What one bunch, box or bushel weighs. A bushel differs by place: every weight names its source.')}
      tabs={tabs}
    >
      <section className="entry-line" aria-label={say('Weigh a unit')}>
        <Form onSave={() => void save()} failure={set.failure} paths={['cropId', 'unit', 'net_kg']} label={say('Weigh a unit')}>
          <div className="entry-fields">
            <ChoiceField
              label={say('Crop')}
              path="cropId"
              value={cropId}
              choices={[{ value: '', text: say('any crop') }, ...known.map((each) => ({ value: each.cropId, text: each.name }))]}
              onChange={setCrop}
            />
            <TextField label={say('Unit')} path="unit" value={unit} onChange={setUnit} />
            <QuantityField label={say('One weighs')} path="net_kg" unit="kg" value={net_kg} onChange={setWeight} />
          </div>
          <div className="row">
            <Button type="submit" weight="main" disabled={set.busy}>
              {say('Keep weight')}
            </Button>
          </div>
        </Form>
      </section>
      <Shown reading={units}>
        {({ own, listed }) => (
          <>
            <Grid
              name="Own units of sale"
              rows={own}
              columns={ownColumns}
              rowId={ownId}
              onSelect={setChosen}
              failure={remove.failure}
              tools={
                chosen.length === 0 ? null : (
                  <Button weight="harm" onClick={() => void takeAway()}>
                    {say('Take {chosen} away', { chosen: chosen.length })}
                  </Button>
                )
              }
              empty={
                <Empty title={say('No weighing of your own yet')}>
                  {say('Weigh a few and enter the mean; it stands over the tables below.')}
                </Empty>
              }
            />
            <h2>{say('From published tables')}</h2>
            <Grid name="Published units of sale" rows={listed} columns={listedColumns} rowId={listedId} />
          </>
        )}
      </Shown>
    </Page>
  );
}
