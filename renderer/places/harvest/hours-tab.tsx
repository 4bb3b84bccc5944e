import { type ReactNode, useEffect, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { type Column, count, date, derived, flag, money, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { plantingText } from './entry-text.ts';
import type { HoursRow } from './harvest-types.ts';
import { PeriodFields } from './period-fields.tsx';
import { usePeriod } from './use-period.ts';

const columns: readonly Column<HoursRow>[] = [
  date('date', say('Day')),
  text('task', say('Task'), { width: 130 }),
  quantity('labour_min', say('Time'), { total: 'sum' }),
  count('people', say('People')),
  money('wage_minor_per_h', say('Wage an hour')),
  derived(
    'text',
    'for',
    say('For'),
    (row) =>
      [
        row.crop === null ? '' : `${row.crop}${(row.number ?? 1) > 1 ? say(' no. {number}', { number: row.number }) : ''}`,
        row.bed ?? row.block ?? '',
      ]
        .filter((part) => part !== '')
        .join(', ') || say('the farm'),
    { width: 200 },
  ),
  flag('standard', say('Standard time'), { width: 120, hint: say('Not logged: a standard time stands in for it') }),
  text('who', say('Who'), { width: 90 }),
  text('note', say('Note')),
];

const rowId = (row: HoursRow): string => row.labourId;
const MS_PER_MIN = 60_000;

/** Hours worked: entered, or taken by a timer that runs while the page is open. */
export function HoursTab({ tabs, today }: { readonly tabs: ReactNode; readonly today: IsoDate }) {
  const period = usePeriod(today);
  const log = useRead(api.labour.log, { from: period.from, to: period.to });
  const remove = useChange(api.labour.remove);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const takeAway = async (): Promise<void> => {
    const done = await remove.run({ labourIds: [...chosen] }, say('Took the hours away.'));
    if (done !== undefined) setChosen([]);
  };
  return (
    <Page title={say('Harvest')} lead={say('Hours by task, for a planting, a bed or the farm.')} tabs={tabs}>
      <HoursLine today={today} />
      <PeriodFields period={period} />
      <Shown reading={log}>
        {(rows) => (
          <Grid
            name="Hours"
            rows={rows}
            columns={columns}
            rowId={rowId}
            onSelect={setChosen}
            failure={remove.failure}
            tools={
              chosen.length === 0 ? null : (
                <Button weight="harm" disabled={remove.busy} onClick={() => void takeAway()}>
                  {say('Take {chosen, plural, one {it} other {# lines}} away', { chosen: chosen.length })}
                </Button>
              )
            }
            empty={
              <Empty title={say('No hours in these days')}>
                {say('Enter them above. What nobody logs can be filled with standard times in Costs.')}
              </Empty>
            }
          />
        )}
      </Shown>
    </Page>
  );
}

function HoursLine({ today }: { readonly today: IsoDate }) {
  const [date, setDate] = useState<IsoDate>(today);
  const choices = useRead(api.harvest.choices, { date });
  const tasks = useRead(api.labour.tasks, undefined);
  const add = useChange(api.labour.add);
  const [task, setTask] = useState('weed');
  const [labour_min, setMinutes] = useState<number | null>(null);
  const [people, setPeople] = useState<number | null>(1);
  const [plantingId, setPlanting] = useState('');
  const [who, setWho] = useState('');
  const timer = useTimer();
  const save = async (): Promise<void> => {
    const done = await add.run(
      { date, task, labour_min: labour_min ?? 0, people: people ?? 1, plantingId: plantingId === '' ? null : plantingId, who },
      say('Logged {labour} min: {task}.', { labour: labour_min ?? 0, task }),
    );
    if (done !== undefined) setMinutes(null);
  };
  const toggle = (): void => {
    if (timer.running) setMinutes(Math.max(1, Math.round(timer.stop())));
    else timer.start();
  };
  const known = tasks.state === 'ready' ? tasks.data : [task];
  const plantings = choices.state === 'ready' ? choices.data.plantings : [];
  return (
    <section className="entry-line" aria-label={say('Enter hours')}>
      <Form
        onSave={() => void save()}
        failure={add.failure}
        paths={['date', 'task', 'labour_min', 'people', 'plantingId', 'who']}
        label={say('Enter hours')}
      >
        <div className="entry-fields">
          <DateField label={say('Day')} path="date" value={date} onChange={(next) => next !== null && setDate(next)} />
          <ChoiceField
            label={say('Task')}
            path="task"
            value={task}
            choices={[...new Set([task, ...known])].map((each) => ({ value: each, text: each }))}
            onChange={setTask}
          />
          <QuantityField label={say('Minutes')} path="labour_min" unit="min" value={labour_min} onChange={setMinutes} />
          <CountField label={say('People')} path="people" value={people} onChange={setPeople} />
          <ChoiceField
            label={say('For')}
            path="plantingId"
            value={plantingId}
            choices={[
              { value: '', text: say('the farm') },
              ...plantings.map((each) => ({ value: each.plantingId, text: plantingText(each) })),
            ]}
            onChange={setPlanting}
          />
          <TextField label={say('Who')} path="who" value={who} onChange={setWho} />
        </div>
        <div className="row">
          <Button type="submit" weight="main" disabled={add.busy}>
            {say('Log hours')}
          </Button>
          <Button aria-pressed={timer.running} onClick={toggle}>
            {timer.running ? say('Stop timer, {minutes} min', { minutes: timer.minutes }) : say('Start timer')}
          </Button>
        </div>
      </Form>
    </section>
  );
}

/** A stopwatch in whole minutes, kept while the page is open. */
function useTimer() {
  const [since, setSince] = useState<number>();
  const [minutes, setMinutes] = useState(0);
  useEffect(() => {
    if (since === undefined) return undefined;
    const tick = setInterval(() => setMinutes(Math.floor((performance.now() - since) / MS_PER_MIN)), 1000);
    return () => clearInterval(tick);
  }, [since]);
  return {
    running: since !== undefined,
    minutes,
    start: () => {
      setMinutes(0);
      setSince(performance.now());
    },
    stop: (): number => {
      const taken = since === undefined ? 0 : (performance.now() - since) / MS_PER_MIN;
      setSince(undefined);
      return taken;
    },
  };
}
