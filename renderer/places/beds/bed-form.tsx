import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { WholeBed } from './bed-types.ts';
import { placeChoices, sunChoices } from './bed-words.ts';

const paths = [
  'code',
  'name',
  'length_m',
  'width_m',
  'depth_m',
  'fillDepth_m',
  'turn_deg',
  'floorLimit_kg_per_m2',
  'designId',
  'notes',
];

/** A bed's own code, place and measures. What equals its design is not kept as its own. */
export function BedForm({ bed }: { readonly bed: WholeBed }) {
  const edit = useChange(api.beds.setMany);
  const designs = useRead(api.designs.list, undefined);
  const { row } = bed;
  const [values, setValues] = useState(() => ({
    code: row.code,
    name: row.name,
    designId: row.designId,
    sun: row.sun,
    place: row.place,
    length_m: row.length_m as number | null,
    width_m: row.width_m as number | null,
    depth_m: row.depth_m as number | null,
    fillDepth_m: row.fillDepth_m as number | null,
    turn_deg: row.turn_deg as number | null,
    floorLimit_kg_per_m2: row.floorLimit_kg_per_m2,
    notes: bed.notes,
  }));
  const set = (change: Partial<typeof values>): void => setValues({ ...values, ...change });
  const save = (): void => {
    const changed = Object.fromEntries(
      Object.entries(values).filter(([key, value]) => value !== { ...row, notes: bed.notes }[key as keyof typeof values]),
    );
    void edit.run(
      { edits: [{ bedId: row.bedId, revision: row.revision, values: changed }] },
      say('{values} is changed.', { values: values.code }),
    );
  };
  const designChoices =
    designs.state === 'ready'
      ? designs.data.map((design) => ({ value: design.designId, text: design.name }))
      : [{ value: row.designId, text: row.design }];
  const isPolygon = row.outline.shape === 'polygon';
  return (
    <Form onSave={save} failure={edit.failure} paths={paths} label={say('Change {row}', { row: row.code })}>
      <div className="form-pair">
        <TextField label={say('Code')} path="code" value={values.code} onChange={(code) => set({ code })} needed />
        <TextField label={say('Name')} path="name" value={values.name} onChange={(name) => set({ name })} />
      </div>
      <ChoiceField
        label={say('Design')}
        path="designId"
        value={values.designId}
        choices={designChoices}
        onChange={(designId) => set({ designId })}
      />
      {isPolygon ? null : (
        <div className="form-pair">
          <QuantityField
            label={say('Length')}
            name="length_m"
            value={values.length_m}
            onChange={(length_m) => set({ length_m })}
          />
          <QuantityField label={say('Width')} name="width_m" value={values.width_m} onChange={(width_m) => set({ width_m })} />
        </div>
      )}
      <div className="form-pair">
        <QuantityField
          label={say('Wall or mound height')}
          name="depth_m"
          value={values.depth_m}
          onChange={(depth_m) => set({ depth_m })}
        />
        <QuantityField
          label={say('Fill depth')}
          name="fillDepth_m"
          value={values.fillDepth_m}
          onChange={(fillDepth_m) => set({ fillDepth_m })}
        />
      </div>
      <div className="form-pair">
        <ChoiceField label={say('Sun')} value={values.sun} choices={sunChoices} onChange={(sun) => set({ sun })} />
        <QuantityField
          label={say('Turn, counter-clockwise')}
          path="turn_deg"
          unit="deg"
          value={values.turn_deg}
          onChange={(turn_deg) => set({ turn_deg })}
        />
      </div>
      <div className="form-pair">
        <ChoiceField label={say('Stands on')} value={values.place} choices={placeChoices} onChange={(place) => set({ place })} />
        <QuantityField
          label={say('Floor may carry')}
          name="floorLimit_kg_per_m2"
          value={values.floorLimit_kg_per_m2}
          onChange={(floorLimit_kg_per_m2) => set({ floorLimit_kg_per_m2 })}
          hint={say('As you were told; empty if not known')}
        />
      </div>
      {values.place === 'ground' ? null : <Caution id="decks-roofs-balconies" />}
      <TextField label={say('Notes')} path="notes" value={values.notes} onChange={(notes) => set({ notes })} lines={3} />
      <Button type="submit" weight="main" disabled={edit.busy}>
        {say('Save')}
      </Button>
    </Form>
  );
}
