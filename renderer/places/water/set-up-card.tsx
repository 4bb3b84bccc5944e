import { useCallback, useState } from 'react';
import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import { CATCH_S } from '../../../planner/irrigation/setup-card.ts';
import { useReader } from '../../client/reader.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { say } from '../../words/say.ts';
import { cardRows, type Walk } from './card-rows.ts';
import type { LineData } from './line-data.ts';
import { useGradually } from './use-gradually.ts';

const walks = [
  { value: 'near-to-far', text: say('Near to far over the whole line') },
  { value: 'by-branch', text: say('Branch by branch, less walking') },
] as const;

/** The card to take along the line, near to far. */
export function SetUpCard({ data, report }: { readonly data: LineData; readonly report: LineReport }) {
  const reader = useReader();
  const [walk, setWalk] = useState<Walk>('near-to-far');
  const { rows, done } = useGradually(useCallback(() => cardRows(data, report, walk), [data, report, walk]));
  const zones = report.zones.length > 1;
  const turns = rows.some((row) => row.turns !== null);
  return (
    <section className="panel line-panel">
      <h2>{say('Set-up card: {line}', { line: data.line.name })}</h2>
      <p className="soft small">
        {say(
          '{more} Walk near to far. At each bed hold a jug under the outlet for {cATCH} seconds and turn its valve until the jug shows this card’s figure, then go on and leave it. An early bed reads less than it will give at the end: the beds share one tube.',
          { more: data.line.supply === 'tap' ? say('Tap fully open.') : say('Reservoir full, pump running.'), cATCH: CATCH_S },
        )}
      </p>
      <div className="no-print card-walk">
        <ChoiceField label={say('Walk')} value={walk} choices={walks} onChange={setWalk} />
      </div>
      {done ? null : (
        <p className="soft small" role="status">
          {say('Working out the card: {rows} of {outlets} beds…', { rows: rows.length, outlets: report.outlets.length })}
        </p>
      )}
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{say('Step')}</th>
            <th scope="col">{say('Bed')}</th>
            {zones ? <th scope="col">{say('Zone')}</th> : null}
            <th scope="col" className="number">
              {say('See now in {cATCH} s', { cATCH: CATCH_S })}
            </th>
            <th scope="col" className="number">
              {say('That is')}
            </th>
            <th scope="col" className="number">
              {say('In the end')}
            </th>
            {turns ? (
              <th scope="col" className="number">
                {say('Turns of this valve')}
              </th>
            ) : null}
            <th scope="col" className="print-only">
              {say('Measured')}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            <tr key={row.id}>
              <td className="number">{at + 1}</td>
              <th scope="row">{row.code}</th>
              {zones ? <td>{row.zone}</td> : null}
              {row.missing_m > 0 ? (
                <td colSpan={3}>
                  {say('Not reached: {missing} of head is missing. Lower the outlet or raise the water.', {
                    missing: reader.print(row.missing_m, 'm', 2),
                  })}
                </td>
              ) : (
                <>
                  <td className="number">{reader.print(row.catch_mL, 'mL', 2)}</td>
                  <td className="number">{reader.print(row.seeNow_L_per_h, 'L_per_h', 2)}</td>
                  <td className="number">{reader.print(row.final_L_per_h, 'L_per_h', 2)}</td>
                </>
              )}
              {turns ? (
                <td className="number">{row.turns === null ? '–' : reader.print(row.turns, '', row.turns < 1 ? 1 : 2)}</td>
              ) : null}
              <td className="print-only">______</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
