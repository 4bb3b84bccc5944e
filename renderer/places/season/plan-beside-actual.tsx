import { useState } from 'react';
import { daysBetween, type IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import type { InputOf } from '../../client/use-read.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { PlantingSheetData } from './board-data.ts';

type Planned = InputOf<typeof api.plantings.set>['values'];
type Actual = InputOf<typeof api.plantings.record>['actual'];

const steps = [
  { name: say('Sow'), planned: 'sowDate', actual: 'sownActual' },
  { name: say('Into the bed'), planned: 'inBedDate', actual: 'inBedActual' },
  { name: say('First harvest'), planned: 'firstHarvestDate', actual: 'firstHarvestActual' },
  { name: say('Last harvest'), planned: 'lastHarvestDate', actual: 'lastHarvestActual' },
  { name: say('Bed free'), planned: 'clearDate', actual: 'clearedActual' },
] as const;

/** Dates as planned beside what happened; each real date moves the ones after it. */
export function PlanBesideActual({ found }: { readonly found: PlantingSheetData }) {
  const { record } = found;
  const plan = useChange(api.plantings.set);
  const record_ = useChange(api.plantings.record);
  const [planned, setPlanned] = useState<Planned>({});
  const [actual, setActual] = useState<Actual>({});
  const failure = record_.failure ?? plan.failure;
  const save = async (): Promise<void> => {
    if (Object.keys(planned).length > 0) {
      const done = await plan.run(
        { plantingId: record.id, revision: record.revision, values: planned },
        say('The plan is changed.'),
      );
      if (done === undefined) return;
    }
    if (Object.keys(actual).length > 0)
      await record_.run(
        { plantingId: record.id, revision: record.revision + (Object.keys(planned).length > 0 ? 1 : 0), actual },
        say('Recorded; later dates follow.'),
      );
  };
  const now: Readonly<Record<string, IsoDate | null>> = {
    sowDate: found.dates.sow,
    inBedDate: found.dates.inBed,
    firstHarvestDate: found.dates.firstHarvest,
    lastHarvestDate: found.dates.lastHarvest,
    clearDate: found.dates.free,
  };
  return (
    <Form
      label={say('Planned and real dates')}
      failure={failure}
      paths={steps.flatMap((step) => [`values.${step.planned}`, `actual.${step.actual}`])}
      onSave={() => void save()}
    >
      <table className="compare">
        <thead>
          <tr>
            <th scope="col">{say('Planned')}</th>
            <th scope="col">{say('Happened')}</th>
            <th scope="col">{say('Moved')}</th>
          </tr>
        </thead>
        <tbody>
          {steps.map((step) => {
            const was = record[step.planned] as IsoDate | null;
            if (was === null && step.planned === 'sowDate') return null;
            const is = now[step.planned];
            const days = was === null || is === null || is === undefined ? 0 : daysBetween(was, is);
            return (
              <tr key={step.name}>
                <td>
                  <DateField
                    label={step.name}
                    path={`values.${step.planned}`}
                    value={(planned[step.planned] ?? was) as IsoDate | null}
                    onChange={(date) => (date === null ? undefined : setPlanned({ ...planned, [step.planned]: date }))}
                  />
                </td>
                <td>
                  <DateField
                    label={say('{step}, real', { step: step.name })}
                    path={`actual.${step.actual}`}
                    value={(step.actual in actual ? actual[step.actual] : record[step.actual]) as IsoDate | null}
                    onChange={(date) => setActual({ ...actual, [step.actual]: date })}
                  />
                </td>
                <td className="small">{days === 0 ? '' : `${days > 0 ? '+' : '−'}${Math.abs(days)} d`}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <CountField
        label={say('Plants that stood (planned {plants})', { plants: record.plants })}
        path="actual.plantsActual"
        value={actual.plantsActual === undefined ? record.plantsActual : actual.plantsActual}
        onChange={(plantsActual) => setActual({ ...actual, plantsActual })}
      />
      <Button
        type="submit"
        disabled={plan.busy || record_.busy || (Object.keys(planned).length === 0 && Object.keys(actual).length === 0)}
      >
        {say('Save dates')}
      </Button>
    </Form>
  );
}
