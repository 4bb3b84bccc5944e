import { useState } from 'react';
import { cautionsOfMaterial } from '../../../planner/orders/handling-cautions.ts';
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
import { animalOrigins, type MaterialRow, organicUses } from './material-columns.ts';

type Values = InputOf<typeof api.materials.setMany>['edits'][number]['values'];

const shares = [
  ['nShare', 'Nitrogen, N'],
  ['p2o5Share', 'Phosphate, P₂O₅'],
  ['k2oShare', 'Potash, K₂O'],
  ['caShare', 'Calcium, Ca'],
  ['mgShare', 'Magnesium, Mg'],
  ['sShare', 'Sulfur, S'],
  ['firstYearNShare', 'Nitrogen for plants in year 1'],
  ['moistureShare', 'Moisture'],
  ['neutralisingShare', 'Neutralises (CaCO₃ equivalent)'],
  ['porosityShare', 'Pores'],
  ['capacityShare', 'Water held'],
  ['settlingFirstShare', 'Settles in year 1'],
  ['settlingLaterShare', 'Settles in later years'],
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
      `Saved ${now.name}.`,
    );
    if (done !== undefined) setChanged({});
  };
  const path = (name: string) => `edits.0.values.${name}`;
  return (
    <Sheet title={material.name} onClose={onClose}>
      <p className="small soft">{material.source === '' ? 'No source is named.' : `Source: ${material.source}`}</p>
      <Cautions ids={cautionsOfMaterial(material)} folded />
      <Form
        label={`Material ${material.name}`}
        failure={save.failure}
        paths={['name', 'kind', 'notes', 'dryDensity_kg_per_m3', 'moistDensity_kg_per_m3', ...shares.map(([name]) => name)].map(
          path,
        )}
        onSave={() => void submit()}
      >
        <TextField label="Name" path={path('name')} value={now.name} onChange={(name) => set({ name })} />
        <div className="form-pair">
          <QuantityField
            label="Bulk density, dry"
            path={path('dryDensity_kg_per_m3')}
            unit="kg_per_m3"
            value={now.dryDensity_kg_per_m3}
            onChange={(value) => set({ dryDensity_kg_per_m3: value })}
          />
          <QuantityField
            label="as handled"
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
            label="Organic use"
            value={now.organicUse}
            choices={organicUses}
            onChange={(organicUse) => set({ organicUse })}
          />
          <ChoiceField
            label="Animal origin"
            value={now.animalOrigin}
            choices={animalOrigins}
            onChange={(animalOrigin) => set({ animalOrigin })}
          />
        </div>
        <FlagField label="Throws dust" value={now.dusty} onChange={(dusty) => set({ dusty })} />
        <FlagField label="Not used any more" value={now.retired} onChange={(retired) => set({ retired })} />
        <TextField label="Notes" path={path('notes')} lines={3} value={now.notes} onChange={(notes) => set({ notes })} />
        <div className="row">
          <Button type="submit" weight="main" disabled={save.busy || Object.keys(changed).length === 0}>
            Save
          </Button>
        </div>
      </Form>
      <section className="stack">
        <h3>Offered by</h3>
        {own.length === 0 ? <p className="soft">Nobody yet. Add an offer under Offers.</p> : null}
        <dl className="facts">
          {own.map((offer) => (
            <div key={offer.id} className="keys-line">
              <dt>{offer.supplier}</dt>
              <dd>
                {offer.name}: {reader.money(offer.price_minor)} for {reader.print(offer.packageAmount, offer.baseUnit)}
              </dd>
            </div>
          ))}
        </dl>
      </section>
    </Sheet>
  );
}
