import { useState } from 'react';
import { Failed, Waiting } from '../../app/states.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { monthChoices } from '../../words/months.ts';
import { say } from '../../words/say.ts';

/** What the beds of the line need in a month: how often to run, who sets it, and how long basins stand wet. */
export function LineNeed({ lineId }: { readonly lineId: string }) {
  const reader = useReader();
  const [month, setMonth] = useState('7');
  const need = useRead(api.waterLines.need, { lineId, month: Number(month) });
  return (
    <section className="panel line-panel">
      <h2>{say('What the beds need')}</h2>
      <div className="card-walk no-print">
        <ChoiceField label={say('Month')} value={month} choices={monthChoices} onChange={setMonth} />
      </div>
      {need.state === 'loading' ? (
        <Waiting what={say('Running every spell of the record')} />
      ) : need.state === 'failed' ? (
        <Failed message={need.message} failure={need.failure} />
      ) : need.data.every_days === null ? (
        <p className="soft">{say('No crop stands on this line in that month.')}</p>
      ) : (
        <>
          <p>
            {say('Run every {every, plural, one {day} other {# days}}{more}. A run must bring {reduce} in all.', {
              every: need.data.every_days,
              more: need.data.limitedBy === '' ? '' : say('; {limitedBy} dries first', { limitedBy: need.data.limitedBy }),
              reduce: reader.print(
                need.data.run_L.reduce((sum, row) => sum + row.run_L, 0),
                'L',
                2,
              ),
            })}
          </p>
          {need.data.standing === 0 ? null : (
            <>
              <p>
                {say(
                  '{standing, plural, one {# basin stands} other {# basins stand}} wet longer than the farm allows after a fill: fill less, more often.',
                  { standing: need.data.standing },
                )}
              </p>
              <Caution id="mosquitoes" />
            </>
          )}
        </>
      )}
    </section>
  );
}
