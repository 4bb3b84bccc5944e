import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { type Starter, startersFor } from './starter-designs.ts';

const localToday = (): IsoDate => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10) as IsoDate;
};

type Sizes = { readonly length_m: number | null; readonly width_m: number | null; readonly depth_m: number | null };

/** The second half of a first run: a block, a design and the first beds, in one form and one step of undo. */
export function FirstBeds() {
  const build = useChange(api.beds.buildFirst);
  const { system } = useReader();
  const starters = startersFor(system);
  const [starter, setStarter] = useState<Starter>(starters[0] as Starter);
  const [name, setName] = useState(starter.values.name);
  const [sizes, setSizes] = useState<Sizes>(starter.values);
  const [blockCode, setBlockCode] = useState('A');
  const [blockName, setBlockName] = useState('');
  const [count, setCount] = useState<number | null>(10);
  const [perRow, setPerRow] = useState<number | null>(5);
  const [path_m, setPath] = useState<number | null>(system === 'us' ? 0.6096 : 0.6);
  const [built, setBuilt] = useState<IsoDate | null>(localToday());

  const choose = (id: string): void => {
    const next = starters.find((each) => each.id === id);
    if (next === undefined) return;
    setStarter(next);
    setName(next.values.name);
    setSizes(next.values);
  };

  const save = async (): Promise<void> => {
    const { length_m, width_m, depth_m } = sizes;
    if (length_m === null || width_m === null || depth_m === null || count === null || perRow === null || built === null) return;
    const rim_m = starter.values.depth_m - starter.values.fillDepth_m;
    const fillDepth_m = starter.values.fillDepth_m === 0 ? 0 : Math.max(0, depth_m - rim_m);
    const beds = await build.run(
      {
        values: { ...starter.values, name, length_m, width_m, depth_m, fillDepth_m },
        layers: [...starter.layers],
        parts: [],
        block: { blockId: null, newBlock: { code: blockCode, name: blockName } },
        firstCode: `${blockCode}-01`,
        count,
        perRow,
        endPath_m: path_m ?? 0,
        sidePath_m: path_m ?? 0,
        x_m: 0,
        y_m: 0,
        turn_deg: 0,
        builtDate: built,
      },
      say('Built {count} beds. Next: what grows in them, in Season.', { count }),
    );
    if (beds !== undefined) go('beds');
  };

  return (
    <section className="panel stack" aria-label={say('The first beds')}>
      <h2>{say('The first beds')}</h2>
      <ol className="steps">
        <li>{say('The farm and its place')}</li>
        <li aria-current="step">{say('A block and a design')}</li>
        <li aria-current="step">{say('The first beds')}</li>
      </ol>
      <Form
        label={say('The first beds')}
        failure={build.failure}
        paths={['values.name', 'length_m', 'width_m', 'depth_m', 'newBlock.code', 'count', 'perRow', 'builtDate']}
        onSave={() => void save()}
      >
        <div className="columns">
          <div className="form">
            <h3>{say('The design')}</h3>
            <ChoiceField
              label={say('Begin with')}
              value={starter.id}
              choices={starters.map(({ id, text }) => ({ value: id, text }))}
              onChange={choose}
            />
            <TextField label={say('Its name')} path="values.name" value={name} onChange={setName} />
            <div className="form-three">
              <QuantityField
                label={say('Length')}
                path="length_m"
                unit="m"
                needed
                value={sizes.length_m}
                onChange={(length_m) => setSizes({ ...sizes, length_m })}
              />
              <QuantityField
                label={say('Width')}
                path="width_m"
                unit="m"
                needed
                value={sizes.width_m}
                onChange={(width_m) => setSizes({ ...sizes, width_m })}
              />
              <QuantityField
                label={say('Depth')}
                path="depth_m"
                unit="m_short"
                needed
                value={sizes.depth_m}
                onChange={(depth_m) => setSizes({ ...sizes, depth_m })}
              />
            </div>
          </div>
          <div className="form">
            <h3>{say('The beds')}</h3>
            <div className="form-pair">
              <TextField
                label={say('Block')}
                path="newBlock.code"
                value={blockCode}
                onChange={setBlockCode}
                hint={say('A short code; beds are A-01, A-02 …')}
              />
              <TextField
                label={say('Its name')}
                value={blockName}
                onChange={setBlockName}
                hint={say('For instance: by the shed')}
              />
            </div>
            <div className="form-three">
              <CountField label={say('How many')} path="count" needed value={count} onChange={setCount} />
              <CountField label={say('in a row')} path="perRow" needed value={perRow} onChange={setPerRow} />
              <QuantityField label={say('Path between')} unit="m" value={path_m} onChange={setPath} />
            </div>
            <DateField label={say('Built on')} path="builtDate" needed value={built} onChange={setBuilt} />
          </div>
        </div>
        <Cautions ids={['dig-call-first', 'lead-in-soil', 'treated-wood-tyres-pallets']} folded />
        <div className="row">
          <Button type="submit" weight="main" disabled={build.busy}>
            {say('Build the beds')}
          </Button>
          <Button onClick={() => go('beds')}>{say('Later')}</Button>
        </div>
      </Form>
    </section>
  );
}
