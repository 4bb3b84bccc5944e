import { useMemo, useState } from 'react';
import { daysAway, explainDaysAway } from '../../../planner/irrigation/reservoir.ts';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, count, date, derived, quantity } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { AfterStop } from './after-stop.tsx';
import type { LineData } from './line-data.ts';
import { LineFrame } from './line-frame.tsx';
import { SupplyDialog } from './supply-dialog.tsx';

type Reservoir = OutputOf<typeof api.waterLines.reservoir>;
type YearRow = Reservoir['years'][number];

/** The reservoir through every year of record, refills to come, and what happens when the pump stops. */
export function ReservoirTab() {
  return <LineFrame>{(data) => <ReservoirBody data={data} />}</LineFrame>;
}

const yearId = (row: YearRow): string => String(row.year);

const columns: readonly Column<YearRow>[] = [
  derived('text', 'year', say('Year'), (row) => String(row.year), { width: 80 }),
  quantity('need_L', say('Taken by the programme')),
  quantity('caught_L', say('Caught from the roof')),
  quantity('overflow_L', say('Ran over')),
  count('refills', say('Refills by hand'), { width: 120 }),
  derived('count', 'shortest', say('Shortest, unattended'), (row) => row.shortest_days, {
    width: 150,
    hint: say('Days from full until a run falls short when nobody fills it'),
  }),
  date('shortestFrom', say('Leaving on'), { width: 120 }),
];

function ReservoirBody({ data }: { readonly data: LineData }) {
  const [open, setOpen] = useState(false);
  const reservoir = useRead(api.waterLines.reservoir, { lineId: data.line.id });
  return (
    <div className="stack">
      <div className="row no-print">
        <Button icon="edit" onClick={() => setOpen(true)}>
          {say('Change the supply')}
        </Button>
      </div>
      <Shown reading={reservoir}>{(answer) => <Answer data={data} answer={answer} onEdit={() => setOpen(true)} />}</Shown>
      {open ? <SupplyDialog data={data} onClose={() => setOpen(false)} /> : null}
    </div>
  );
}

function Answer({ data, answer, onEdit }: { readonly data: LineData; readonly answer: Reservoir; readonly onEdit: () => void }) {
  const reader = useReader();
  const plan = useChange(api.waterLines.planRefills);
  const { line } = data;
  const fill_L = data.facts.reduce((sum, fact) => sum + fact.wanted_L, 0);
  const round =
    line.reservoir_L === null || fill_L === 0
      ? null
      : {
          usable_L: line.reservoir_L * line.usableShare,
          beds: data.facts.length,
          fill_L: fill_L / data.facts.length,
          fillsPerDay: 1,
        };
  const worst = useMemo(
    () =>
      answer.years.reduce<YearRow | null>(
        (least, year) => (least === null || (year.shortest_days ?? 999) < (least.shortest_days ?? 999) ? year : least),
        null,
      ),
    [answer.years],
  );
  const [year, setYear] = useState<string>();
  const shown = answer.years.find((each) => String(each.year) === year) ?? worst;
  return (
    <div className="stack">
      <dl className="figures">
        <div>
          <dt>{line.supply === 'tap' ? say('A tap: nothing to run dry') : say('Usable when full')}</dt>
          <dd>{line.reservoir_L === null ? '–' : reader.print(line.reservoir_L * line.usableShare, 'L', 2)}</dd>
        </div>
        <div>
          <dt>{say('Whole fills of all beds')}</dt>
          <dd>
            {round === null ? (
              '–'
            ) : (
              <Figure
                value={daysAway(round).wholeFills}
                unit=""
                name={say('Whole fills of all beds')}
                explain={() => explainDaysAway(round)}
              />
            )}
          </dd>
        </div>
        <div>
          <dt>{say('Shortest spell of the record, unattended')}</dt>
          <dd>{worst === null || worst.shortest_days === null ? '–' : reader.print(worst.shortest_days, 'days')}</dd>
        </div>
      </dl>
      {answer.dryRun !== null && answer.dryRun.short_m > 0 ? (
        <p className="failed" role="alert">
          {say(
            'The lowest level is {short} below what keeps the pump’s inlet covered. Stop it at {stopLevel}, or lower the inlet: a pump that runs dry is soon gone.',
            { short: reader.print(answer.dryRun.short_m, 'm_short'), stopLevel: reader.print(answer.dryRun.stopLevel_m, 'm') },
          )}
        </p>
      ) : null}
      {answer.parting.length === 0 ? null : (
        <p className="failed" role="alert">
          {say('The line’s highest place stands too far over the water: its pressure falls so low that the water parts.')}
        </p>
      )}
      {line.supply === 'tap' ? null : line.reservoir_L === null ? (
        <Empty
          title={say('How much does the reservoir hold?')}
          action={<Button onClick={onEdit}>{say('Enter the supply')}</Button>}
        >
          {say('With its size and the timer’s programme every year of the weather record is run through it.')}
        </Empty>
      ) : !answer.hasProgramme ? (
        <Empty title={say('No timer programme yet')}>
          {say('Enter one on the tab Timer; the reservoir is then drawn down by it.')}
        </Empty>
      ) : answer.years.length === 0 ? (
        <Empty title={say('No weather record')}>{say('Give the farm a station with a rain record, on the tab Weather.')}</Empty>
      ) : (
        <>
          {shown === null ? null : (
            <Chart
              title={say('Water in the reservoir, weather of {year}, filled by hand whenever a run would fall short', {
                year: shown.year,
              })}
              rows={shown.days}
              x={{ name: say('Day'), text: (day) => reader.date(day.date, 'day') }}
              unit="L"
              series={[{ name: say('In the reservoir'), as: 'area', read: (day) => day.level_L }]}
              marks={[{ name: say('pump must stop'), value: line.reservoir_L * (1 - line.usableShare) }]}
            />
          )}
          <Grid
            name="Reservoir by year"
            rows={answer.years}
            columns={columns}
            rowId={yearId}
            onOpen={(row) => setYear(String(row.year))}
          />
        </>
      )}
      {line.supply === 'tap' || line.reservoir_L === null ? null : (
        <section className="panel line-panel">
          <h2>{say('Refills to come')}</h2>
          {answer.refills.length === 0 ? (
            <p className="soft">
              {say('None in the next {aheadDays} days by the programme{more}.', {
                aheadDays: answer.aheadDays,
                more: line.level_L === null ? say(', taking the reservoir as full') : '',
              })}
            </p>
          ) : (
            <ul>
              {answer.refills.map((refill) => (
                <li key={refill.date}>
                  {reader.date(refill.date)}: {reader.print(refill.refill_L, 'L', 2)}
                </li>
              ))}
            </ul>
          )}
          <p className="soft small">{say('Without any rain: the earliest that may be needed.')}</p>
          <Button
            disabled={plan.busy || answer.refills.length === 0}
            onClick={() => void plan.run({ lineId: line.id }, say('The refills are among the tasks of This week.'))}
          >
            {say('Put them on This week')}
          </Button>
        </section>
      )}
      <AfterStop data={data} answer={answer.afterStop} />
      <section className="panel line-panel">
        <h2>{say('Lid, light and screens')}</h2>
        <p className="soft">
          {say(
            'Keep the reservoir dark and covered: light grows algae that clog valves (common practice, no source). Screen every opening with mesh of 1/16 in (1.6 mm). A lid that a child cannot lift.',
          )}
        </p>
      </section>
      <Cautions
        ids={[
          'standing-water-children',
          'mosquitoes',
          ...(line.supplySource === 'public' ? ['backflow'] : ['hose-sanitation-and-drinking']),
          ...(line.roofArea_m2 === null ? [] : ['rain-water-on-food']),
        ]}
        folded
      />
    </div>
  );
}
