import { useState } from 'react';
import { Shown } from '../../app/states.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { sayKnown } from '../../words/known.ts';
import { monthChoices } from '../../words/months.ts';
import { say, sayWith } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { useDemandChoice } from './demand-data.ts';

type Intervals = OutputOf<typeof api.waterDemand.intervals>;
type Group = Intervals['groups'][number];

/** How often and how much each line must run in a month, and the round by hand. */
export function IntervalPart() {
  const { seasonId } = useDemandChoice();
  const [month, setMonth] = useState('7');
  const reading = useRead(api.waterDemand.intervals, { seasonId, month: Number(month) });
  return (
    <section className="panel stack">
      <h2>{say('Interval and amount')}</h2>
      <div className="row">
        <ChoiceField label={say('Month')} value={month} choices={monthChoices} onChange={setMonth} />
      </div>
      <Shown reading={reading}>
        {(found) => (
          <>
            {found.groups
              .filter((group) => group.beds > 0)
              .map((group) => (
                <GroupInterval key={group.groupId} group={group} found={found} />
              ))}
            {found.groups.some((group) => group.basins > 0) ? <Caution id="mosquitoes" /> : null}
          </>
        )}
      </Shown>
    </section>
  );
}

function GroupInterval({ group, found }: { readonly group: Group; readonly found: Intervals }) {
  const reader = useReader();
  if (group.days === null)
    return (
      <p>
        {sayWith('{strong} nothing grows on its {beds} beds in this month.', {
          strong: <strong>{sayKnown(group.name)}:</strong>,
          beds: group.beds,
        })}
      </p>
    );
  const held = group.days >= group.most_days;
  return (
    <div className="stack">
      <dl className="figures">
        <div>
          <dt>{say('{group}, longest interval', { group: sayKnown(group.name) })}</dt>
          <dd>
            <Figure of={group.working} />
            <span className="small soft">
              {held ? say(' or longer') : say(' · {limitedBy} runs dry first', { limitedBy: group.limitedBy })}
            </span>
          </dd>
        </div>
        <div>
          <dt>{say('One run')}</dt>
          <dd>
            {reader.print(group.run_L, 'L', 2)}
            <span className="small soft">
              {group.run_min === null
                ? say(' for {rows} beds', { rows: group.rows.length })
                : say(', {run} with all outlets open', { run: reader.print(group.run_min, 'min', 2) })}
            </span>
          </dd>
        </div>
        {group.round === null ? null : (
          <div>
            <dt>{say('By can of {can}', { can: reader.print(found.can_L, 'L', 2) })}</dt>
            <dd>
              {say('{cans} cans', { cans: group.round.cans })}
              <span className="small soft">{say(', {walks} walks with two', { walks: group.round.walks })}</span>
            </dd>
          </div>
        )}
      </dl>
      {group.basins === 0 ? null : (
        <p className="small soft">
          {say('{basins} basins are filled only so far that they are dry again within {standing} days.', {
            basins: group.basins,
            standing: found.standing_days,
          })}
        </p>
      )}
      <details>
        <summary>{say('Each bed of {group}', { group: sayKnown(group.name) })}</summary>
        <div className="heat-scroll">
          <table className="plain-table">
            <thead>
              <tr>
                <th scope="col">{say('Bed')}</th>
                <th scope="col">{say('Lasts alone')}</th>
                <th scope="col">{say('To give')}</th>
                {group.round === null ? null : <th scope="col">{say('Cans')}</th>}
                <th scope="col">{say('Fill the basin to')}</th>
                <th scope="col">{say('Water stands')}</th>
              </tr>
            </thead>
            <tbody>
              {group.rows.map((row) => (
                <tr key={row.bedId}>
                  <th scope="row">{row.code}</th>
                  <td>
                    {row.days >= group.most_days
                      ? say('{most} days or more', { most: group.most_days })
                      : reader.print(row.days, 'd', 2)}
                  </td>
                  <td>{reader.print(row.run_L, 'L', 2)}</td>
                  {group.round === null ? null : <td>{group.round.beds.find((bed) => bed.bedId === row.code)?.cans ?? 0}</td>}
                  <td>{row.fill_L === null ? '–' : reader.print(row.fill_L, 'L', 2)}</td>
                  <td>{row.stands_days === null ? '–' : reader.print(row.stands_days, 'd', 2)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </div>
  );
}
