import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { BedChooser } from './bed-chooser.tsx';

type Materials = OutputOf<typeof api.applications.materials>;

/** Enter a dressing that was given without a card: one rate on many beds. */
export function ApplicationDialog({ today, onClose }: { readonly today: IsoDate; readonly onClose: () => void }) {
  const materials = useRead(api.applications.materials, undefined);
  return (
    <Dialog title={say('Enter an application')} onClose={onClose} wide>
      <Shown reading={materials}>{(list) => <Entry materials={list} today={today} onClose={onClose} />}</Shown>
    </Dialog>
  );
}

function Entry({
  materials,
  today,
  onClose,
}: {
  readonly materials: Materials;
  readonly today: IsoDate;
  readonly onClose: () => void;
}) {
  const enter = useChange(api.applications.enter);
  const [materialId, setMaterial] = useState(materials[0]?.materialId ?? '');
  const [bedIds, setBeds] = useState<readonly string[]>([]);
  const [rate, setRate] = useState<number | null>(null);
  const [date, setDate] = useState<IsoDate | null>(today);
  const [worked, setWorked] = useState<IsoDate | null>(null);
  const [facts, setFacts] = useState({ time: '', who: '', method: 'broadcast', weather: '', reason: '', note: '' });
  const chosen = materials.find((each) => each.materialId === materialId);
  const save = async (): Promise<void> => {
    const done = await enter.run(
      {
        materialId,
        bedIds: [...bedIds],
        rate_kg_per_m2: rate ?? Number.NaN,
        date: date ?? '',
        incorporatedDate: worked,
        ...facts,
      },
      say('The application is on record and out of stock.'),
    );
    if (done !== undefined) onClose();
  };
  const words = (name: keyof typeof facts, label: string, hint?: string) => (
    <TextField
      label={label}
      hint={hint}
      path={name}
      value={facts[name]}
      onChange={(text) => setFacts({ ...facts, [name]: text })}
    />
  );
  return (
    <Form
      onSave={() => void save()}
      failure={enter.failure}
      paths={[
        'materialId',
        'bedIds',
        'rate_kg_per_m2',
        'date',
        'incorporatedDate',
        'time',
        'who',
        'method',
        'weather',
        'reason',
        'note',
      ]}
      label={say('Application')}
    >
      <div className="form-pair">
        <ChoiceField
          label={say('Material')}
          path="materialId"
          value={materialId}
          choices={materials.map((each) => ({ value: each.materialId, text: each.name }))}
          onChange={setMaterial}
        />
        <QuantityField
          label={say('Rate by area')}
          unit="kg_per_m2"
          path="rate_kg_per_m2"
          value={rate}
          onChange={setRate}
          needed
        />
      </div>
      <Cautions
        ids={[
          ...(chosen?.animalOrigin === 'raw' ? ['raw-manure'] : []),
          ...(chosen?.dusty === true ? ['dust-perlite-silica'] : []),
        ]}
      />
      <BedChooser
        chosen={bedIds}
        onChange={setBeds}
        fault={enter.failure?.faults.find((each) => each.path === 'bedIds')?.message}
      />
      <div className="form-pair">
        <DateField label={say('Given on')} path="date" value={date} onChange={setDate} needed />
        <DateField
          label={say('Worked in on')}
          hint={say('Empty: left on top')}
          path="incorporatedDate"
          value={worked}
          onChange={setWorked}
        />
      </div>
      <div className="form-pair">
        {words('who', say('By'), say('Name or initials'))}
        {words('time', say('Time'), say('Where the records ask for it'))}
      </div>
      <div className="form-pair">
        {words('method', say('How'))}
        {words('weather', say('Weather'))}
      </div>
      {words('reason', say('Reason'))}
      {words('note', say('Note'))}
      <div className="row">
        <Button type="submit" weight="main" disabled={enter.busy}>
          {say('Enter')}
        </Button>
        <Button onClick={onClose}>{say('Cancel')}</Button>
      </div>
    </Form>
  );
}
