import { useState } from 'react';
import { flowOfCatch_L_per_h } from '../../../planner/irrigation/setup-card.ts';
import { LEAST_READINGS } from '../../../planner/irrigation/valve-calibration.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { LineData } from './line-data.ts';

/** Settings of one valve, read: only a valve read at three settings gets its turns printed. */
export function ValveReadings({ data, today }: { readonly data: LineData; readonly today: string }) {
  const reader = useReader();
  const add = useChange(api.waterLines.addReading);
  const remove = useChange(api.waterLines.removeReading);
  const [outletId, setOutletId] = useState(data.facts[0]?.outletId ?? '');
  const [turns, setTurns] = useState<number | null>(null);
  const [caught_mL, setCaught] = useState<number | null>(null);
  const fact = data.facts.find((each) => each.outletId === outletId);
  const save = async (): Promise<void> => {
    if (turns === null || caught_mL === null || caught_mL <= 0) return;
    const done = await add.run(
      { lineId: data.line.id, outletId, turns, flow_L_per_h: flowOfCatch_L_per_h(caught_mL), date: today },
      say('Kept the reading.'),
    );
    if (done === undefined) return;
    setTurns(null);
    setCaught(null);
  };
  return (
    <section className="panel no-print">
      <h2>{say('Turns of a valve')}</h2>
      <p className="soft small">
        {say(
          'Nobody publishes turns for small in-line valves, and they differ from one to the next. Read one valve at {lEAST} settings or more, all others left as they stand, and the card prints its turns.',
          { lEAST: LEAST_READINGS },
        )}
      </p>
      <Form onSave={() => void save()} failure={add.failure} label={say('A reading of a valve')} paths={['turns']}>
        <ChoiceField
          label={say('Bed')}
          value={outletId}
          choices={data.facts.map((each) => ({ value: each.outletId, text: each.code }))}
          onChange={setOutletId}
        />
        <div className="form-pair">
          <QuantityField label={say('Turns from shut')} unit="" path="turns" value={turns} onChange={setTurns} />
          <QuantityField
            label={say('Caught in 30 s')}
            unit="mL"
            path={`flows.${outletId}`}
            value={caught_mL}
            onChange={setCaught}
          />
        </div>
        <Button type="submit" disabled={add.busy || turns === null || caught_mL === null}>
          {say('Keep the reading')}
        </Button>
      </Form>
      {fact === undefined || fact.readings.length === 0 ? (
        <p className="soft small">{say('No reading of this valve yet.')}</p>
      ) : (
        <ul className="readings">
          {fact.readings.map((reading) => (
            <li key={reading.id} className="row">
              <span>
                {say('{turns} turns: {flow}, K {lossK}', {
                  turns: reading.turns,
                  flow: reader.print(reading.flow_L_per_h, 'L_per_h', 2),
                  lossK: reader.print(reading.lossK, '', 2),
                })}
              </span>
              <Button
                weight="quiet"
                icon="bin"
                name={say('Take the reading at {turns} turns away', { turns: reading.turns })}
                onClick={() => void remove.run({ readingId: reading.id }, say('Took the reading away.'))}
              />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
