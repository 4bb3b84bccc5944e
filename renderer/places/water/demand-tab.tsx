import { useMemo } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Caution } from '../../cautions/caution.tsx';
import { Chart } from '../../charts/chart.tsx';
import { useReader } from '../../client/reader.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Grid } from '../../table/grid.tsx';
import { sayKnown } from '../../words/known.ts';
import { shortMonthNames } from '../../words/months.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { bedDemandColumns, bedDemandId } from './demand-columns.tsx';
import { type Demand, type GroupDemand, type Overview, useDemandChoice } from './demand-data.ts';
import { DemandFrame } from './demand-frame.tsx';
import { capacityOn, weekMeans } from './demand-rows.ts';

const NO_ROWS = 'all';

/** Water needed on each day against what the lines bring, and the beds that need it. */
export function DemandTab() {
  return (
    <DemandFrame more={(demand) => <SupplyChoice demand={demand} />}>
      {(demand, overview) => <DemandBody demand={demand} overview={overview} />}
    </DemandFrame>
  );
}

function DemandBody({ demand, overview }: { readonly demand: Demand; readonly overview: Overview }) {
  const reader = useReader();
  const { seasonId } = useDemandChoice();
  const [asked] = useQueryValue('supply');
  const [, setBed] = useQueryValue('bed');
  const chosen = demand.groups.find((group) => group.groupId === asked);
  const columns = useMemo(() => bedDemandColumns(seasonId), [seasonId]);
  const rows = chosen === undefined ? demand.beds : demand.beds.filter((bed) => bed.groupId === chosen.groupId);
  const groups = chosen === undefined ? demand.groups : [chosen];
  const days = useMemo(
    () =>
      weekMeans(
        demand,
        groups.map((group) => group.groupId),
      ),
    [demand, groups],
  );
  return (
    <>
      <Headline groups={groups} overview={overview} />
      <Chart
        title={say('Water to give in the weather of {year}, mean of seven days', { year: demand.year })}
        rows={days}
        x={{ name: say('Day'), text: (day) => reader.date(day.date, 'day') }}
        unit="L_per_day"
        series={[
          { name: say('Need, rain taken off'), as: 'area', read: (day) => day.need_L_per_day },
          ...(chosen === undefined || chosen.flow_L_per_h === null
            ? []
            : [
                {
                  name: say('The timer gives'),
                  as: 'line' as const,
                  read: (day: { readonly date: string }) => capacityOn(chosen, day.date),
                },
              ]),
        ]}
        note={noteOf(overview)}
      />
      {chosen === undefined ? null : <MonthTable group={chosen} />}
      <Grid name="Water need by bed" rows={rows} columns={columns} rowId={bedDemandId} onOpen={(row) => setBed(row.bedId)} />
      {overview.left.length === 0 ? null : (
        <p className="small">
          {say('Left out, since their measures do not fit: {left}. See Beds.', { left: overview.left.join(', ') })}
        </p>
      )}
      {overview.notes.map((note) => (
        <p key={note} className="small soft">
          {note}
        </p>
      ))}
      <Caution id="estimate-limits" />
    </>
  );
}

function SupplyChoice({ demand }: { readonly demand: Demand }) {
  const [asked, setGroup] = useQueryValue('supply');
  const chosen = demand.groups.find((group) => group.groupId === asked);
  return (
    <ChoiceField
      label={say('Supply')}
      value={chosen?.groupId ?? NO_ROWS}
      choices={[
        { value: NO_ROWS, text: say('Whole farm') },
        ...demand.groups.map((group) => ({
          value: group.groupId,
          text: say('{group} ({beds} beds)', { group: sayKnown(group.name), beds: group.beds }),
        })),
      ]}
      onChange={(value) => setGroup(value === NO_ROWS ? undefined : value)}
    />
  );
}

function noteOf({ record }: Overview): string {
  if (record === null) return '';
  const method = record.methods.some((each) => each.method === 'temperatures-only')
    ? say('Reference evapotranspiration from temperatures alone on some days (Hargreaves, FAO-56 eq. 52).')
    : say('Reference evapotranspiration by Penman-Monteith (FAO-56 eq. 6).');
  const gaps =
    record.yearsWithGaps.length === 0
      ? ''
      : say(' Left out for gaps: {yearsWithGaps}.', { yearsWithGaps: record.yearsWithGaps.join(', ') });
  return `${record.station}. ${method} ${record.assumed.join(' ')}${gaps}`;
}

function Headline({ groups, overview }: { readonly groups: readonly GroupDemand[]; readonly overview: Overview }) {
  const reader = useReader();
  const hottest = overview.record?.hottest ?? null;
  return (
    <dl className="figures">
      {groups.map((group) => (
        <div key={group.groupId}>
          <dt>{say('{group}, thirstiest week', { group: sayKnown(group.name) })}</dt>
          <dd>
            {group.weekWorking === null ? '–' : <Figure of={group.weekWorking} digits={2} />}
            <span className="small soft">
              {group.most_L_per_day === null
                ? group.because === null
                  ? say(' for {beds} beds', { beds: group.beds })
                  : ` · ${group.because}`
                : say(' of {most} in {run} a day', {
                    most: reader.print(group.most_L_per_day, 'L_per_day', 2),
                    run: reader.print(overview.choices.run_h_per_day, 'h'),
                  })}
            </span>
          </dd>
        </div>
      ))}
      {hottest === null ? null : (
        <div>
          <dt>{say('Hottest week of record')}</dt>
          <dd>
            {reader.print(hottest.mean, 'mm_per_day', 2)}
            <span className="small soft">
              {' '}
              {say('{from} to {to}', { from: reader.date(hottest.from), to: reader.date(hottest.to) })}
            </span>
          </dd>
        </div>
      )}
    </dl>
  );
}

function MonthTable({ group }: { readonly group: GroupDemand }) {
  const reader = useReader();
  if (group.flow_L_per_h === null) return null;
  return (
    <div className="heat-scroll">
      <table className="plain-table">
        <caption className="heard-only">{say('Need against the timer, by month')}</caption>
        <thead>
          <tr>
            <th scope="col">{reader.sign('L_per_day')}</th>
            {shortMonthNames.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{say('Need')}</th>
            {group.months.map((month, at) => (
              <td key={shortMonthNames[at]}>{reader.number(month.need_L_per_day, 'L_per_day', 2)}</td>
            ))}
          </tr>
          <tr>
            <th scope="row">{say('Timer')}</th>
            {group.months.map((month, at) => (
              <td
                key={shortMonthNames[at]}
                data-tone={month.timer_L_per_day !== null && month.timer_L_per_day < month.need_L_per_day ? 'stop' : undefined}
              >
                {month.timer_L_per_day === null ? say('off') : reader.number(month.timer_L_per_day, 'L_per_day', 2)}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </div>
  );
}
