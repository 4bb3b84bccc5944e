import { useState } from 'react';
import { Failed, Waiting } from '../../app/states.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { monthChoices } from './month-names.ts';

/** What the beds of the line need in a month: how often to run, who sets it, and how long basins stand wet. */
export function LineNeed({ lineId }: { readonly lineId: string }) {
  const reader = useReader();
  const [month, setMonth] = useState('7');
  const need = useRead(api.waterLines.need, { lineId, month: Number(month) });
  return (
    <section className="panel line-panel">
      <h2>What the beds need</h2>
      <div className="card-walk no-print">
        <ChoiceField label="Month" value={month} choices={monthChoices} onChange={setMonth} />
      </div>
      {need.state === 'loading' ? (
        <Waiting what="Running every spell of the record" />
      ) : need.state === 'failed' ? (
        <Failed message={need.message} failure={need.failure} />
      ) : need.data.every_days === null ? (
        <p className="soft">No crop stands on this line in that month.</p>
      ) : (
        <>
          <p>
            Run every {need.data.every_days === 1 ? 'day' : `${need.data.every_days} days`}
            {need.data.limitedBy === '' ? '' : `; ${need.data.limitedBy} dries first`}. A run must bring{' '}
            {reader.print(
              need.data.run_L.reduce((sum, row) => sum + row.run_L, 0),
              'L',
              2,
            )}{' '}
            in all.
          </p>
          {need.data.standing === 0 ? null : (
            <>
              <p>
                {need.data.standing} {need.data.standing === 1 ? 'basin stands' : 'basins stand'} wet longer than the farm allows
                after a fill: fill less, more often.
              </p>
              <Caution id="mosquitoes" />
            </>
          )}
        </>
      )}
    </section>
  );
}
