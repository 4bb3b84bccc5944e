import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

const shapes = [
  { value: 'cone', text: say('Cone') },
  { value: 'windrow', text: say('Windrow') },
  { value: 'half-ellipsoid', text: say('Rounded heap') },
] as const;

/** Heaps of soil and fill: measured by their shape, counted as stock. */
export function Heaps() {
  const reader = useReader();
  const heaps = useRead(api.stockpiles.list, undefined);
  const remove = useChange(api.stockpiles.remove);
  const count = useChange(api.stockpiles.countAsStock);
  return (
    <section className="panel stack" aria-label={say('Heaps')}>
      <h2>{say('Heaps')}</h2>
      <Shown reading={heaps}>
        {(rows) =>
          rows.length === 0 ? (
            <p className="soft">
              {say('No heap is measured. Dug soil and compost in heaps are used before anything is bought.')}
            </p>
          ) : (
            <table className="lines">
              <tbody>
                {rows.map((heap) => (
                  <tr key={heap.stockpileId}>
                    <td>
                      {heap.name}
                      <div className="small soft">
                        {heap.material}, {reader.date(heap.measuredDate)}
                      </div>
                    </td>
                    <td className="number">{reader.print(heap.loose_L, 'bulk_L')}</td>
                    <td>
                      <Button
                        disabled={count.busy}
                        onClick={() =>
                          void count.run(
                            { materialId: heap.materialId },
                            say('{material}: stock is what the heaps hold.', { material: heap.material }),
                          )
                        }
                      >
                        {say('Count as stock')}
                      </Button>
                      <Button
                        weight="quiet"
                        icon="bin"
                        name={say('Strike out {heap}', { heap: heap.name })}
                        onClick={() => void remove.run({ stockpileId: heap.stockpileId }, say('The heap is struck out.'))}
                      />
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          )
        }
      </Shown>
      <NewHeap />
    </section>
  );
}

function NewHeap() {
  const add = useChange(api.stockpiles.add);
  const materials = useRead(api.designs.materials, undefined);
  const [name, setName] = useState('');
  const [materialId, setMaterial] = useState('soil-own-loose');
  const [shape, setShape] = useState<(typeof shapes)[number]['value']>('cone');
  const [length_m, setLength] = useState<number | null>(null);
  const [width_m, setWidth] = useState<number | null>(null);
  const [height_m, setHeight] = useState<number | null>(null);
  const none = Number.NaN;
  const save = async (): Promise<void> => {
    const sizes = {
      length_m: length_m ?? none,
      width_m: (shape === 'cone' ? length_m : width_m) ?? none,
      height_m: height_m ?? none,
    };
    if ((await add.run({ name, materialId, shape, ...sizes }, say('The heap is measured.'))) !== undefined) setName('');
  };
  const fills = materials.state === 'ready' ? materials.data.filter((material) => material.baseUnit === 'L') : [];
  return (
    <details>
      <summary>{say('Measure a heap')}</summary>
      <Form
        onSave={() => void save()}
        failure={add.failure}
        paths={['name', 'materialId', 'length_m', 'width_m', 'height_m']}
        label={say('Measure a heap')}
      >
        <TextField label={say('Name')} path="name" value={name} onChange={setName} needed />
        <div className="form-pair">
          <ChoiceField
            label={say('Of')}
            path="materialId"
            value={materialId}
            choices={fills.map((material) => ({ value: material.materialId, text: material.name }))}
            onChange={setMaterial}
          />
          <ChoiceField
            label={say('Shape')}
            value={shape}
            choices={shapes}
            onChange={setShape}
            hint={shape === 'windrow' ? say('Its section is taken as a triangle') : undefined}
          />
        </div>
        <div className="form-pair">
          <QuantityField
            label={shape === 'cone' ? say('Across its foot') : say('Length')}
            name="length_m"
            value={length_m}
            onChange={setLength}
          />
          {shape === 'cone' ? null : <QuantityField label={say('Width')} name="width_m" value={width_m} onChange={setWidth} />}
        </div>
        <QuantityField label={say('Height')} name="height_m" value={height_m} onChange={setHeight} />
        <Button type="submit" disabled={add.busy}>
          {say('Keep the heap')}
        </Button>
      </Form>
    </details>
  );
}
