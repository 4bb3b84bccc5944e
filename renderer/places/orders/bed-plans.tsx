import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

/** Beds that are to be built by a day: what they are made of and filled with becomes a need. */
export function BedPlans({ onClose }: { readonly onClose: () => void }) {
  const designs = useRead(api.designs.list, undefined);
  return (
    <Dialog title={say('Beds to build')} onClose={onClose} wide>
      <p className="soft">
        {say(
          'Parts, fill and mulch of these beds are among the needs. Building beds of the design, at Beds, takes them off here.',
        )}
      </p>
      <PlanList />
      <Shown reading={designs}>
        {(all) => (
          <AddPlan designs={all.filter((each) => !each.retired).map((each) => ({ value: each.designId, text: each.name }))} />
        )}
      </Shown>
    </Dialog>
  );
}

function PlanList() {
  const plans = useRead(api.beds.plans, undefined);
  const remove = useChange(api.beds.removePlan);
  const reader = useReader();
  return (
    <Shown reading={plans}>
      {(rows) =>
        rows.length === 0 ? (
          <p>{say('None yet.')}</p>
        ) : (
          <table className="plain-table">
            <thead>
              <tr>
                <th scope="col" className="number">
                  {say('Beds')}
                </th>
                <th scope="col">{say('Design')}</th>
                <th scope="col">{say('Wanted by')}</th>
                <th scope="col">{say('For')}</th>
                <td />
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.bedPlanId}>
                  <td className="number">{row.count}</td>
                  <td>{row.design}</td>
                  <td>{reader.date(row.wantedDate)}</td>
                  <td className="soft">{row.note}</td>
                  <td>
                    <Button
                      weight="quiet"
                      icon="bin"
                      name={say('Do not build {count} of {design}', { count: row.count, design: row.design })}
                      disabled={remove.busy}
                      onClick={() => void remove.run({ bedPlanId: row.bedPlanId }, say('Took the beds off the plan.'))}
                    />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )
      }
    </Shown>
  );
}

function AddPlan({ designs }: { readonly designs: readonly { readonly value: string; readonly text: string }[] }) {
  const add = useChange(api.beds.addPlan);
  const [designId, setDesign] = useState('');
  const [count, setCount] = useState<number | null>(null);
  const [wanted, setWanted] = useState<IsoDate | null>(null);
  const [note, setNote] = useState('');
  const save = async (): Promise<void> => {
    const made = await add.run(
      { designId, count: count ?? 0, wantedDate: wanted ?? '', note },
      say('What these beds take is among the needs.'),
    );
    if (made === undefined) return;
    setCount(null);
    setNote('');
  };
  return (
    <Form
      label={say('Plan beds')}
      failure={add.failure}
      paths={['designId', 'count', 'wantedDate', 'note']}
      onSave={() => void save()}
    >
      <ChoiceField
        label={say('Design')}
        path="designId"
        value={designId}
        choices={[{ value: '', text: say('Choose one') }, ...designs]}
        onChange={setDesign}
      />
      <div className="form-pair">
        <CountField label={say('Beds')} path="count" value={count} onChange={setCount} needed />
        <DateField label={say('Wanted by')} path="wantedDate" value={wanted} onChange={setWanted} needed />
      </div>
      <TextField label={say('For')} path="note" value={note} onChange={setNote} />
      <Button type="submit" weight="main" disabled={add.busy}>
        {say('Plan them')}
      </Button>
    </Form>
  );
}
