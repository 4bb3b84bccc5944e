import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import type { FarmView } from '../../app/farm-gate.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import type { InputOf } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { say } from '../../words/say.ts';
import { FrostFields, MeasureFields, MoneyFields, NameFields, PlaceFields, RecordFields, UnitFields } from './setting-fields.tsx';

export type FarmValues = InputOf<typeof api.farm.set>['values'];

/** What the parts of the settings form share: the values as they are now, and one that was changed. */
export type SettingProps = { readonly values: FarmView; readonly set: (change: FarmValues) => void };

/** All settings of the farm in one form: nothing is written before Save, and it is one step of undo. */
export function SettingsTab({ farm }: { readonly farm: FarmView }) {
  const save = useChange(api.farm.set);
  const [changed, setChanged] = useState<FarmValues>({});
  const paths = Object.keys(farm).map((name) => `values.${name}`);
  const given = Object.entries(changed).filter(([name, value]) => value !== farm[name as keyof FarmView]);
  const shared: SettingProps = {
    values: { ...farm, ...withoutNothing(changed) },
    set: (change) => setChanged({ ...changed, ...change }),
  };
  return (
    <Form
      label={say('Farm settings')}
      failure={save.failure}
      paths={paths}
      onSave={() =>
        void save.run({ values: Object.fromEntries(given), revision: farm.revision }, say('Saved the farm’s settings.'))
      }
    >
      <div className="packed">
        <NameFields {...shared} />
        <PlaceFields {...shared} />
        <UnitFields {...shared} />
        <FrostFields {...shared} />
        <MoneyFields {...shared} />
        <RecordFields {...shared} />
        <MeasureFields {...shared} />
      </div>
      <div className="form-foot">
        <Button type="submit" weight="main" disabled={save.busy || given.length === 0}>
          {say('Save settings')}
        </Button>
        <Button disabled={given.length === 0} onClick={() => setChanged({})}>
          {say('Put back')}
        </Button>
        <span className="small soft">
          {given.length === 0 ? say('Nothing changed.') : say('{given} changed, not yet saved.', { given: given.length })}
        </span>
      </div>
    </Form>
  );
}

function withoutNothing(values: FarmValues): Partial<FarmView> {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}
