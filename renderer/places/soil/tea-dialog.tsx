import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { BedChooser } from './bed-chooser.tsx';
import type { HeapRow } from './soil-types.ts';
import { TeaPlan } from './tea-plan.tsx';

/** 1 gal to 100 ft2, and half a pound of compost to the gallon: common practice, no source. */
const USUAL = { drench_L_per_m2: 0.40746, compost_kg_per_L: 0.0599132, tank_L: 75.70824, brew_h: 30, waterParts: 4 };

/** Size a tea batch from the beds to drench, and start it. */
export function TeaDialog({
  today,
  heaps,
  onClose,
}: {
  readonly today: IsoDate;
  readonly heaps: readonly HeapRow[];
  readonly onClose: () => void;
}) {
  const brew = useChange(api.compost.brewTea);
  const [bedIds, setBeds] = useState<readonly string[]>([]);
  const [drench_L_per_m2, setDrench] = useState<number | null>(USUAL.drench_L_per_m2);
  const [waterParts, setWater] = useState<number | null>(USUAL.waterParts);
  const [compost_kg_per_L, setCompost] = useState<number | null>(USUAL.compost_kg_per_L);
  const [tank_L, setTank] = useState<number | null>(USUAL.tank_L);
  const [brew_h, setBrew] = useState<number | null>(USUAL.brew_h);
  const [day, setDay] = useState<IsoDate | null>(today);
  const [time, setTime] = useState('18:00');
  const [heapId, setHeap] = useState('');
  const [additives, setAdditives] = useState('');
  const [waterSource, setSource] = useState('');
  const ready =
    drench_L_per_m2 !== null &&
    waterParts !== null &&
    compost_kg_per_L !== null &&
    tank_L !== null &&
    brew_h !== null &&
    day !== null;
  const input = ready
    ? {
        bedIds: [...bedIds],
        drench_L_per_m2,
        waterParts,
        compost_kg_per_L,
        tank_L,
        brew_h,
        startedAt: `${day}T${time}`,
        additives,
      }
    : null;
  const save = async (): Promise<void> => {
    if (input === null) return;
    const made = await brew.run(
      { ...input, compostBatchId: heapId === '' ? null : heapId, waterSource },
      say('The tea batch is on the list.'),
    );
    if (made !== undefined) onClose();
  };
  return (
    <Dialog title={say('Plan a compost tea batch')} onClose={onClose} wide>
      <Form
        onSave={() => void save()}
        failure={brew.failure}
        paths={[
          'bedIds',
          'drench_L_per_m2',
          'waterParts',
          'compost_kg_per_L',
          'tank_L',
          'brew_h',
          'startedAt',
          'additives',
          'waterSource',
        ]}
        label={say('Tea batch')}
      >
        <Cautions ids={['compost-tea']} />
        <BedChooser
          chosen={bedIds}
          onChange={setBeds}
          fault={brew.failure?.faults.find((each) => each.path === 'bedIds')?.message}
        />
        <div className="form-pair">
          <QuantityField
            label={say('Drench')}
            unit="L_per_m2"
            hint={say('Common practice: 1 to 2.5 gal/100 ft²')}
            value={drench_L_per_m2}
            onChange={setDrench}
            path="drench_L_per_m2"
          />
          <CountField label={say('Parts of water to one of tea')} value={waterParts} onChange={setWater} path="waterParts" />
        </div>
        <div className="form-pair">
          <QuantityField
            label={say('Compost in the brew')}
            unit="kg_per_L"
            value={compost_kg_per_L}
            onChange={setCompost}
            path="compost_kg_per_L"
          />
          <QuantityField label={say('Tank holds')} unit="L" value={tank_L} onChange={setTank} path="tank_L" />
        </div>
        <div className="form-pair">
          <DateField label={say('Air on, day')} value={day} onChange={setDay} path="startedAt" needed />
          <label className="field">
            <span>{say('Air on, time')}</span>
            <input
              type="time"
              value={time}
              onChange={(event) => setTime(event.target.value === '' ? '18:00' : event.target.value)}
            />
          </label>
        </div>
        <div className="form-pair">
          <QuantityField
            label={say('Hours with air')}
            unit=""
            hint={say('24 to 36')}
            value={brew_h}
            onChange={setBrew}
            path="brew_h"
          />
          <ChoiceField
            label={say('Compost of heap')}
            value={heapId}
            choices={[
              { value: '', text: say('Bought or not logged') },
              ...heaps.map((each) => ({ value: each.batchId, text: each.code })),
            ]}
            onChange={setHeap}
          />
        </div>
        <TextField
          label={say('Additives')}
          hint={say('Anything that feeds microbes makes the tea count as raw manure')}
          path="additives"
          value={additives}
          onChange={setAdditives}
        />
        <TextField label={say('Water from')} path="waterSource" value={waterSource} onChange={setSource} />
        {input === null || bedIds.length === 0 ? (
          <p className="soft">{say('Choose beds to see the batch.')}</p>
        ) : (
          <TeaPlan input={input} />
        )}
        <div className="row">
          <Button type="submit" weight="main" disabled={brew.busy || input === null}>
            {say('Keep the batch')}
          </Button>
          <Button onClick={onClose}>{say('Cancel')}</Button>
        </div>
      </Form>
    </Dialog>
  );
}
