import { type ReactNode, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

/** Shows the place once there is a season; before that it asks for one. */
export function SeasonGate({ children }: { readonly children: ReactNode }) {
  const seasons = useRead(api.seasons.list, undefined);
  return (
    <Shown reading={seasons}>
      {(list) =>
        list.length > 0 ? (
          children
        ) : (
          <Page title={say('Season')}>
            <Empty title={say('No season yet')}>
              {say('A season is the stretch of days you plan at once: mostly a calendar year, or from one autumn to the next.')}
            </Empty>
            <NewSeason onMade={() => undefined} />
          </Page>
        )
      }
    </Shown>
  );
}

/** A season with nothing in it. */
export function NewSeason({ onMade }: { readonly onMade: (seasonId: string) => void }) {
  const add = useChange(api.seasons.add);
  const [name, setName] = useState('');
  const [startDate, setStart] = useState<IsoDate | null>(null);
  const [endDate, setEnd] = useState<IsoDate | null>(null);
  const save = async (): Promise<void> => {
    if (startDate === null || endDate === null) return;
    const done = await add.run({ name, startDate, endDate }, say('Season {name} can be planned.', { name }));
    if (done !== undefined) onMade(done.seasonId);
  };
  return (
    <div style={{ maxWidth: '26rem' }}>
      <Form label={say('New season')} failure={add.failure} paths={['name', 'startDate', 'endDate']} onSave={() => void save()}>
        <TextField label={say('Name')} path="name" hint={say('For example its year')} value={name} onChange={setName} />
        <div className="form-pair">
          <DateField label={say('First day')} path="startDate" needed value={startDate} onChange={setStart} />
          <DateField label={say('Last day')} path="endDate" needed value={endDate} onChange={setEnd} />
        </div>
        <Button type="submit" weight="main" disabled={add.busy}>
          {say('Plan this season')}
        </Button>
      </Form>
    </div>
  );
}
