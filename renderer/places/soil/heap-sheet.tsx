import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { DateField } from '../../fields/date-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { HeapRow } from './soil-types.ts';

/** One heap: its log against the time and temperature rule, and today's reading. */
export function HeapSheet({
  heap,
  today,
  onClose,
}: {
  readonly heap: HeapRow;
  readonly today: IsoDate;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const remove = useChange(api.compost.removeReading);
  const readings = heap.readings.filter((each) => each.temperature_C !== null);
  return (
    <Sheet title={say('Heap {heap}', { heap: heap.code })} onClose={onClose}>
      {heap.rule === null ? (
        <p className="soft">
          {say('No time and temperature rule is reckoned for this method; treat compost with manure in it as raw.')}
        </p>
      ) : (
        <dl className="facts">
          <dt>{say('Days at 131 to 170 °F')}</dt>
          <dd>
            {say('{more} of {wanted} wanted', {
              more:
                heap.method === 'turned-windrow'
                  ? heap.rule.daysInBand
                  : say('{longestRun} in a row', { longestRun: heap.rule.longestRun_days }),
              wanted: heap.rule.wanted_days,
            })}
          </dd>
          {heap.rule.wantedTurnings === 0 ? null : (
            <>
              <dt>{say('Turnings')}</dt>
              <dd>
                {say('{turnings} of {wantedTurnings} wanted', {
                  turnings: heap.rule.turnings,
                  wantedTurnings: heap.rule.wantedTurnings,
                })}
              </dd>
            </>
          )}
          <dt>{say('C:N at start')}</dt>
          <dd>
            {heap.mix === null ? say('not known for every material') : reader.print(heap.mix.carbonToNitrogen, '', 2)}
            {heap.mix !== null && (heap.mix.carbonToNitrogen < 25 || heap.mix.carbonToNitrogen > 40)
              ? say(', outside the 25 to 40 of the organic rule')
              : ''}
          </dd>
          <dt>{say('Went in')}</dt>
          <dd>{heap.ingredients.map((each) => `${each.name} ${reader.print(each.amount_kg, 'kg')}`).join(', ')}</dd>
        </dl>
      )}
      <p className="small soft">
        {say(
          'This is arithmetic, no verdict: whether it satisfies a rule is for your certifier or the agency to say. Raw manure added later starts the days again. Source: 7 CFR 205.203(c)(2), from memory.',
        )}
      </p>
      {heap.withAnimal ? <Cautions ids={['raw-manure']} folded /> : null}
      {readings.length < 2 ? null : (
        <Chart
          title={say('Temperature of the heap')}
          rows={readings}
          x={{ name: say('Day'), text: (row) => reader.date(row.date, 'day') }}
          unit="C"
          height={190}
          series={[{ name: say('Temperature'), as: 'line', read: (row) => row.temperature_C }]}
          marks={[{ name: reader.print(55, 'C'), value: 55 }]}
        />
      )}
      <Reading heap={heap} today={today} />
      {heap.readings.length === 0 ? null : (
        <table className="lines">
          <caption>{say('Log')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('Day')}</th>
              <th scope="col" className="number">
                {say('Temperature')}
              </th>
              <th scope="col">{say('Turned')}</th>
              <th scope="col">{say('By')}</th>
              <th scope="col">
                <span className="heard-only">{say('Remove')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {heap.readings.toReversed().map((each) => (
              <tr key={each.id}>
                <td>{reader.date(each.date)}</td>
                <td className="number">{reader.print(each.temperature_C, 'C')}</td>
                <td>{each.turned ? say('yes') : ''}</td>
                <td>{each.who}</td>
                <td>
                  <Button
                    icon="bin"
                    weight="quiet"
                    name={say('Remove the reading of {date}', { date: reader.date(each.date) })}
                    onClick={() => void remove.run({ readingId: each.id }, say('Reading removed. Undo brings it back.'))}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Sheet>
  );
}

function Reading({ heap, today }: { readonly heap: HeapRow; readonly today: IsoDate }) {
  const add = useChange(api.compost.addReading);
  const finish = useChange(api.compost.finish);
  const [date, setDate] = useState<IsoDate | null>(today);
  const [temperature_C, setTemperature] = useState<number | null>(null);
  const [turned, setTurned] = useState(false);
  const [who, setWho] = useState('');
  const save = async (): Promise<void> => {
    const done = await add.run({ batchId: heap.batchId, date: date ?? '', temperature_C, turned, who }, say('Reading logged.'));
    if (done !== undefined) {
      setTemperature(null);
      setTurned(false);
    }
  };
  return (
    <Form
      onSave={() => void save()}
      failure={add.failure ?? finish.failure}
      paths={['date', 'temperature_C', 'who']}
      label={say('Log a reading')}
    >
      <div className="form-pair">
        <DateField label={say('Day')} path="date" value={date} onChange={setDate} needed />
        <QuantityField
          label={say('Temperature')}
          name="temperature_C"
          path="temperature_C"
          value={temperature_C}
          onChange={setTemperature}
        />
      </div>
      <div className="form-pair">
        <FlagField label={say('Turned')} value={turned} onChange={setTurned} />
        <TextField label={say('By')} path="who" value={who} onChange={setWho} />
      </div>
      <div className="row">
        <Button type="submit" weight="main" disabled={add.busy}>
          {say('Log reading')}
        </Button>
        {heap.curedDate === null ? (
          <Button
            disabled={finish.busy}
            onClick={() =>
              void finish.run(
                { batchId: heap.batchId, revision: heap.revision, curedDate: today, made_L: heap.made_L },
                say('{heap} is cured as of today.', { heap: heap.code }),
              )
            }
          >
            {say('Curing ends today')}
          </Button>
        ) : null}
      </div>
    </Form>
  );
}
