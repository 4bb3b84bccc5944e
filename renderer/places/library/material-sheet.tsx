import { useState } from 'react';
import { cautionsOfMaterial } from '../../../planner/orders/handling-cautions.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { animalOrigins, type MaterialRow, organicUses } from './material-columns.ts';
import { PlantedFields } from './planted-fields.tsx';

type Values = InputOf<typeof api.materials.setMany>['edits'][number]['values'];

const shares = [
  ['nShare', say('Nitrogen, N')],
  ['p2o5Share', say('Phosphate, P₂O₅')],
  ['k2oShare', say('Potash, K₂O')],
  ['caShare', say('Calcium, Ca')],
  ['mgShare', say('Magnesium, Mg')],
  ['sShare', say('Sulfur, S')],
  ['firstYearNShare', say('Nitrogen for plants in year 1')],
  ['moistureShare', say('Moisture')],
  ['neutralisingShare', say('Neutralises (CaCO₃ equivalent)')],
  ['porosityShare', say('Pores')],
  ['capacityShare', say('Water held')],
  ['settlingFirstShare', say('Settles in year 1')],
  ['settlingLaterShare', say('Settles in later years')],
] as const;

/** One material: its analysis, where the values come from, who offers it, and its cautions. */
export function MaterialSheet({ material, onClose }: { readonly material: MaterialRow; readonly onClose: () => void }) {
  const save = useChange(api.materials.setMany);
  const reader = useReader();
  const offers = useRead(api.suppliers.offers, undefined);
  const [changed, setChanged] = useState<Values>({});
  const set = (change: Values) => setChanged({ ...changed, ...change });
  const now = { ...material, ...changed } as MaterialRow;
  const own = offers.state === 'ready' ? offers.data.filter((offer) => offer.materialId === material.id && !offer.retired) : [];
  const submit = async (): Promise<void> => {
    const done = await save.run(
      { edits: [{ materialId: material.id, revision: material.revision, values: changed }] },
      say('Saved {now}.', { now: now.name }),
    );
    if (done !== undefined) setChanged({});
  };
  const path = (name: string) => `edits.0.values.${name}`;
  return (
    <Sheet title={material.name} onClose={onClose}>
      <p className="small soft">
        {material.source === '' ? say('No source is named.') : say('Source: {source}', { source: material.source })}
      </p>
      <Cautions ids={cautionsOfMaterial(material)} folded />
      <Form
        label={say('Material {material}', { material: material.name })}
        failure={save.failure}
        paths={[
          'name',
          'kind',
          'cropId',
          'seedsPer_g',
          'germinationShare',
          'cells',
          'notes',
          'dryDensity_kg_per_m3',
          'moistDensity_kg_per_m3',
          ...shares.map(([name]) => name),
        ].map(path)}
        onSave={() => void submit()}
      >
        <TextField label={say('Name')} path={path('name')} value={now.name} onChange={(name) => set({ name })} />
        <TextField
          label={say('Kind')}
          path={path('kind')}
          value={now.kind}
          onChange={(kind) => set({ kind })}
          hint={say(
            'bulk-mix, organic, mineral, liming, mulch, hardware, tubing, fitting, pump, power, seed, start, tray, cover, packing …',
          )}
        />
        <PlantedFields material={now} path={path} onChange={set} />
        <div className="form-pair">
          <QuantityField
            label={say('Bulk density, dry')}
            path={path('dryDensity_kg_per_m3')}
            unit="kg_per_m3"
            value={now.dryDensity_kg_per_m3}
            onChange={(value) => set({ dryDensity_kg_per_m3: value })}
          />
          <QuantityField
            label={say('as handled')}
            path={path('moistDensity_kg_per_m3')}
            unit="kg_per_m3"
            value={now.moistDensity_kg_per_m3}
            onChange={(value) => set({ moistDensity_kg_per_m3: value })}
          />
        </div>
        <div className="form-pair">
          {shares.map(([name, label]) => (
            <ShareField
              key={name}
              label={label}
              path={path(name)}
              value={now[name]}
              onChange={(value) => set({ [name]: value })}
            />
          ))}
        </div>
        <div className="form-pair">
          <ChoiceField
            label={say('Organic use')}
            value={now.organicUse}
            choices={organicUses}
            onChange={(organicUse) => set({ organicUse })}
          />
          <ChoiceField
            label={say('Animal origin')}
            value={now.animalOrigin}
            choices={animalOrigins}
            onChange={(animalOrigin) => set({ animalOrigin })}
          />
        </div>
        <FlagField label={say('Throws dust')} value={now.dusty} onChange={(dusty) => set({ dusty })} />
        <FlagField label={say('Not used any more')} value={now.retired} onChange={(retired) => set({ retired })} />
        <TextField label={say('Notes')} path={path('notes')} lines={3} value={now.notes} onChange={(notes) => set({ notes })} />
        <div className="row">
          <Button type="submit" weight="main" disabled={save.busy || Object.keys(changed).length === 0}>
            {say('Save')}
          </Button>
        </div>
      </Form>
      <section className="stack">
        <h3>{say('Offered by')}</h3>
        {own.length === 0 ? <p className="soft">{say('Nobody yet. Add an offer under Offers.')}</p> : null}
        <dl className="facts">
          {own.map((offer) => (
            <div key={offer.id} className="keys-line">
              <dt>{offer.supplier}</dt>
              <dd>
                {say('{offer}: {price} for {packageAmount}', {
                  offer: offer.name,
                  price: reader.money(offer.price_minor),
                  packageAmount: reader.print(offer.packageAmount, tradeUnit(offer.baseUnit)),
                })}
              </dd>
            </div>
          ))}
        </dl>
      </section>
    </Sheet>
  );
}
