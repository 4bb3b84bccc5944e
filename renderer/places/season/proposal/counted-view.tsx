import { Button } from '../../../app/button.tsx';
import { api } from '../../../client/api.ts';
import { useReader } from '../../../client/reader.tsx';
import { useChange } from '../../../client/use-change.ts';
import { Grid } from '../../../table/grid.tsx';
import { say } from '../../../words/say.ts';
import { countedColumns, withEdits } from './counted-columns.tsx';
import { LimitFields } from './limit-fields.tsx';
import type { FigureRow, Overview } from './proposal-types.ts';

const rowId = (row: FigureRow): string => row.cropId;

/** Everything a proposal counts with; the grower's own figure goes before records and library. */
export function CountedView({ overview }: { readonly overview: Overview }) {
  const reader = useReader();
  const set = useChange(api.proposals.setFigures);
  return (
    <div className="stack">
      <LimitFields
        key={JSON.stringify(overview.own)}
        overview={overview}
        onSave={(own) => set.run(own, say('The figures are kept.'))}
        busy={set.busy}
        failure={set.failure}
      />
      <section className="stack" aria-label={say('Crops')}>
        <h2>{say('Crops')}</h2>
        <p className="soft">
          {say(
            'Yields and hours come from your own records where there are some, else from the library or common practice. Seed, feed and other direct costs count as nothing until you enter them. Type over a figure to use your own; empty the cell to go back.',
          )}
        </p>
        <Grid
          name="Figures of the proposal"
          rows={overview.crops}
          columns={countedColumns}
          rowId={rowId}
          onEdit={(edits) => set.run(withEdits(overview.own, edits), say('The figures are kept.'))}
          failure={set.failure}
        />
      </section>
      {overview.leftOut.length === 0 ? null : (
        <section className="panel" aria-label={say('Crops left out')}>
          <h2>{say('Left out')}</h2>
          <ul>
            {overview.leftOut.map(({ cropId, name, because }) => (
              <li key={cropId}>
                {name}: {because}{' '}
                {overview.own.crops[cropId]?.leaveOut === true ? (
                  <Button
                    weight="quiet"
                    onClick={() => void set.run(withEdits(overview.own, [{ row: { cropId }, key: 'leaveOut', value: false }]))}
                  >
                    {say('Take it in again')}
                  </Button>
                ) : null}
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className="panel" aria-label={say('Water lines')}>
        <h2>{say('Water')}</h2>
        <ul>
          {overview.lines.map(({ name, most_L_per_week }) => (
            <li key={name}>
              {name}:{' '}
              {most_L_per_week === null
                ? say('no limit')
                : say('at most {most} a week', { most: reader.print(most_L_per_week, 'L', 3) })}
            </li>
          ))}
          {overview.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
        <p className="small soft">
          {say(
            'The pump’s largest flow over the hours it may run. What reaches the beds is less; see the line’s own page under Water.',
          )}
        </p>
      </section>
    </div>
  );
}
