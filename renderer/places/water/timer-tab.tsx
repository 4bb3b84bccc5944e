import { useMemo } from 'react';
import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import { monthLoads } from '../../../planner/irrigation/programme-water.ts';
import { explainRunTime, type RunWish, runOfMinutes, runTime } from '../../../planner/irrigation/run-time.ts';
import { stagger } from '../../../planner/irrigation/timer-programme.ts';
import { Button } from '../../app/button.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type Column, choice, count, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { monthChoices, monthNames } from '../../words/months.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { LineData } from './line-data.ts';
import { LineFrame } from './line-frame.tsx';
import { LineNeed } from './line-need.tsx';
import { solved } from './line-solve.ts';

/** Minutes of a run, and the timer's programme through the year. */
export function TimerTab() {
  return <LineFrame>{(data) => <TimerBody data={data} />}</LineFrame>;
}

type TimerRow = {
  readonly id: string;
  readonly month: string;
  readonly zone: number;
  readonly every_days: number;
  readonly start: string;
  readonly run_min: number;
  readonly water_L: number;
};

const rowId = (row: TimerRow): string => row.id;

const columns: readonly Column<TimerRow>[] = [
  choice('month', say('Month'), monthChoices, { edit: true, width: 120 }),
  count('zone', say('Zone'), { edit: true, width: 70 }),
  count('every_days', say('Every so many days'), { edit: true, width: 150 }),
  text('start', say('Starts at'), { edit: true, width: 90 }),
  quantity('run_min', say('Runs'), { edit: true }),
  quantity('water_L', say('Water of a run')),
];

/** What each outlet of a zone is to get in a run, with its flow as the valves stand or as designed. */
export function wishesOf(data: LineData, report: LineReport, zone: number, which: 'now' | 'design'): readonly RunWish[] {
  const facts = new Map(data.facts.map((fact) => [fact.outletId, fact]));
  return report.outlets
    .filter((outlet) => outlet.zone === zone)
    .map((outlet) => ({
      id: outlet.id,
      flow_L_per_h: which === 'now' ? outlet.low.flow_L_per_h : outlet.design_L_per_h,
      wanted_L: facts.get(outlet.id)?.wanted_L ?? 0,
      holds_L: facts.get(outlet.id)?.holds_L ?? null,
    }));
}

function TimerBody({ data }: { readonly data: LineData }) {
  const lineId = data.line.id;
  const reader = useReader();
  const setTimers = useChange(api.waterLines.setTimers);
  const propose = useChange(api.waterLines.proposeTimers);
  const { report, fault } = useMemo(() => solved(data.plan), [data.plan]);
  const codes = useMemo(() => new Map(data.facts.map((fact) => [fact.outletId, fact.code])), [data.facts]);
  if (report === null) return <p className="failed">{fault}</p>;
  const codeOf = (id: string | null): string => (id === null ? '' : (codes.get(id) ?? ''));
  const flowOf = (zone: number): number => report.zones.find((each) => each.zone === zone)?.now?.total_L_per_h ?? 0;
  const rows: readonly TimerRow[] = data.timers.map((timer) => ({
    id: timer.id,
    month: String(timer.month),
    zone: timer.zone,
    every_days: timer.every_days,
    start: timer.start,
    run_min: timer.run_min,
    water_L: runOfMinutes([{ id: 'zone', flow_L_per_h: flowOf(timer.zone), wanted_L: 0, holds_L: null }], timer.run_min).total_L,
  }));
  const save = (next: readonly TimerRow[]): Promise<unknown> =>
    setTimers.run({
      lineId,
      timers: next.map(({ month, zone, every_days, start, run_min }) => ({
        month: Number(month),
        zone,
        every_days,
        start,
        run_min,
      })),
    });
  const edit = (edits: readonly Edit<TimerRow>[]): Promise<unknown> =>
    save(
      rows.map((row) => ({
        ...row,
        ...Object.fromEntries(edits.flatMap((each) => (each.row.id === row.id ? [[each.key, each.value]] : []))),
      })),
    );
  const last = rows.at(-1);
  const limit_W = data.power?.limit_W ?? null;
  const pump_W = (data.plan.pump?.power_W ?? 0) * (data.plan.pump?.count ?? 1);
  return (
    <div className="stack">
      {report.zones.map((zone) => (
        <ZoneRun key={zone.zone} data={data} report={report} zone={zone.zone} codeOf={codeOf} several={report.zones.length > 1} />
      ))}
      {limit_W === null || pump_W <= limit_W ? null : (
        <p className="failed">
          {say('The pump takes {pump}, more than the {limit} that the power gives at once.', {
            pump: reader.print(pump_W, 'W'),
            limit: reader.print(limit_W, 'W'),
          })}
        </p>
      )}
      <LineNeed lineId={lineId} />
      <section className="stack">
        <h2>{say('Programme')}</h2>
        <p className="soft small">
          {say(
            'The water of a run is at the flow of the valves as they stand, reservoir full. “By the beds’ need” takes each month’s interval from the thirstiest bed through every spell of the weather record, and minutes enough for the slowest outlet.',
          )}
        </p>
        <Grid
          name="Timer programme"
          rows={rows}
          columns={columns}
          rowId={rowId}
          onEdit={edit}
          failure={setTimers.failure ?? propose.failure}
          tools={
            <div className="row">
              <Button
                disabled={propose.busy}
                onClick={() =>
                  void propose.run({ lineId, start: rows[0]?.start ?? '05:30' }, say('The programme follows the beds’ need.'))
                }
              >
                {say('By the beds’ need')}
              </Button>
              <Button
                icon="add"
                onClick={() =>
                  void save([
                    ...rows,
                    {
                      id: 'new',
                      month: String(Math.min(12, Number(last?.month ?? '3') + 1)),
                      zone: last?.zone ?? 1,
                      every_days: last?.every_days ?? 2,
                      start: last?.start ?? '05:30',
                      run_min: last?.run_min ?? 10,
                      water_L: 0,
                    },
                  ])
                }
              >
                {say('A month more')}
              </Button>
              {rows.length > 0 ? (
                <Button weight="quiet" onClick={() => void save(rows.slice(0, -1))}>
                  {say('Take the last one away')}
                </Button>
              ) : null}
            </div>
          }
        />
      </section>
      <MonthTable data={data} report={report} />
      <ZoneStarts data={data} limit_W={limit_W} pump_W={pump_W} />
      <Cautions ids={['mosquitoes', 'standing-water-children', 'estimate-limits']} folded />
    </div>
  );
}

function ZoneRun(props: {
  readonly data: LineData;
  readonly report: LineReport;
  readonly zone: number;
  readonly codeOf: (id: string | null) => string;
  readonly several: boolean;
}) {
  const reader = useReader();
  const { data, report, zone, codeOf } = props;
  const designWishes = wishesOf(data, report, zone, 'design');
  const now = runTime(wishesOf(data, report, zone, 'now'));
  const design = runTime(designWishes);
  const inZone = new Set(designWishes.map((wish) => wish.id));
  const unknown = data.facts.filter((fact) => inZone.has(fact.outletId) && fact.wantedFrom === 'unknown').length;
  const spilling = now.rows.filter((row) => row.over_L > 0);
  if (designWishes.every((wish) => wish.wanted_L === 0))
    return (
      <section className="panel line-panel">
        <h2>{say('One run{more}', { more: props.several ? say(', zone {zone}', { zone }) : '' })}</h2>
        <p className="soft">
          {say(
            'No fill is known for these outlets, so no minutes can be told. Enter the water of one fill at the outlets on the tab Line, or take the programme from the beds’ need below.',
          )}
        </p>
      </section>
    );
  return (
    <section className="panel line-panel">
      <h2>{say('One run{more}', { more: props.several ? say(', zone {zone}', { zone }) : '' })}</h2>
      <dl className="figures">
        <div>
          <dt>{say('Minutes, valves set')}</dt>
          <dd>
            <Figure
              value={design.run_min}
              unit="min"
              name={say('Minutes of a run, valves set')}
              digits={2}
              explain={() => explainRunTime(designWishes)}
            />
          </dd>
        </div>
        <div>
          <dt>{say('Minutes as they stand')}</dt>
          <dd>{reader.print(now.run_min, 'min', 2)}</dd>
        </div>
        <div>
          <dt>{say('Water of that run, valves set')}</dt>
          <dd>{reader.print(design.total_L, 'L', 2)}</dd>
        </div>
        <div>
          <dt>{say('More than wanted, as they stand')}</dt>
          <dd>{reader.print(now.beyond_L, 'L', 2)}</dd>
        </div>
      </dl>
      {now.decides === null ? null : (
        <p className="soft small">
          {say('{code} is the slowest as the valves stand{more}.', {
            code: codeOf(now.decides),
            more: design.decides === null ? '' : say(', {code} with the valves set', { code: codeOf(design.decides) }),
          })}
        </p>
      )}
      {spilling.length === 0 ? (
        <p className="soft small">{say('No basin runs over in such a run.')}</p>
      ) : (
        <p>
          {say(
            '{spilling, plural, one {# basin runs} other {# basins run}} over before the slowest bed is filled, {code} first: {over} in all. Set the valves.',
            { spilling: spilling.length, code: codeOf(spilling[0]?.id ?? null), over: reader.print(now.over_L, 'L', 2) },
          )}
        </p>
      )}
      {now.unserved.length === 0 ? null : (
        <p>{say('Nothing reaches {unserved} as the valves stand.', { unserved: now.unserved.map(codeOf).join(', ') })}</p>
      )}
      {unknown === 0 ? null : (
        <p className="soft small">
          {say(
            '{unknown, plural, one {# outlet has} other {# outlets have}} no fill yet. Enter the water of one fill at the outlet, on the tab Line.',
            { unknown },
          )}
        </p>
      )}
    </section>
  );
}

/** Runs, pumping and water of a mean day in each month of the programme. */
function MonthTable({ data, report }: { readonly data: LineData; readonly report: LineReport }) {
  const reader = useReader();
  const loads = monthLoads(
    data.timers,
    report.zones.map((zone) => ({ zone: zone.zone, total_L_per_h: zone.now?.total_L_per_h ?? 0 })),
  );
  if (loads.length === 0) return null;
  return (
    <table className="plain-table">
      <caption className="soft small">{say('A mean day of each month')}</caption>
      <thead>
        <tr>
          <th scope="col">{say('Month')}</th>
          <th scope="col" className="number">
            {say('Runs')}
          </th>
          <th scope="col" className="number">
            {say('Pumping')}
          </th>
          <th scope="col" className="number">
            {say('Water')}
          </th>
        </tr>
      </thead>
      <tbody>
        {loads.map((load) => (
          <tr key={load.month}>
            <th scope="row">{monthNames[load.month - 1]}</th>
            <td className="number">{reader.print(load.runsPerDay, '', 2)}</td>
            <td className="number">{reader.print(load.pump_min_per_day, 'min', 2)}</td>
            <td className="number">{reader.print(load.water_L_per_day, 'L', 2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** When each zone starts so that the power carries them: one pump serves one zone after the other. */
function ZoneStarts({
  data,
  limit_W,
  pump_W,
}: {
  readonly data: LineData;
  readonly limit_W: number | null;
  readonly pump_W: number;
}) {
  const today = data.timers.filter((timer) => timer.month === Math.max(...data.timers.map((each) => each.month)));
  if (limit_W === null || today.length < 2 || pump_W > limit_W) return null;
  const slots = stagger(
    today.map((timer) => ({ id: `zone ${timer.zone}`, run_min: timer.run_min, power_W: pump_W })),
    limit_W,
  );
  return (
    <p className="soft small">
      {say('To stay under the power’s limit: {slots}.', {
        slots: slots
          .map((slot) =>
            say('{slot} from minute {start} to {end}', {
              slot: slot.id,
              start: Math.round(slot.start_min),
              end: Math.round(slot.end_min),
            }),
          )
          .join(', '),
      })}
    </p>
  );
}
