import { useState } from 'react';
import type { AwayResult } from '../../../api/jobs/water/days-away.ts';
import { useQueryValue } from '../../app/address.ts';
import { JobBar } from '../../app/job-bar.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useJob } from '../../client/use-job.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { type Column, choice, count, share, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { monthChoices } from '../../words/months.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { type Overview, useDemandChoice } from './demand-data.ts';
import { DemandFrame } from './demand-frame.tsx';

type AwayRow = AwayResult['beds'][number];

const becauseChoices = [
  { value: 'own-store', text: say('its own store is used up') },
  { value: 'line-empty', text: say('the tank of its line is empty') },
  { value: 'line-too-weak', text: say('its line gives too little') },
  { value: 'holds-out', text: say('holds out') },
  { value: 'no-crop', text: say('no crop stands on it') },
];

const columns: readonly Column<AwayRow>[] = [
  text('code', say('Bed'), { width: 80 }),
  count('days', say('Days it lasts'), { width: 130, hint: say('At the confidence chosen') }),
  count('median_days', say('In half of them'), { width: 140 }),
  share('firstShare', say('First to go short'), {
    width: 160,
    hint: say('Share of the departures in which no bed failed before it'),
  }),
  choice('because', say('What gives out'), becauseChoices, { width: 220 }),
];
const rowId = (row: AwayRow): string => row.bedId;
const confidences = ['0.5', '0.8', '0.9', '0.95', '1'].map((value) => ({
  value,
  text: value === '1' ? say('every time in the record') : say('{value} times of 100', { value: Math.round(Number(value) * 100) }),
}));

/** How long the farm can be left. */
export function AwayTab() {
  return <DemandFrame withYear={false}>{(_, overview) => <AwayBody overview={overview} />}</DemandFrame>;
}

const LOOK_AHEAD_DAYS = 30;

function AwayBody({ overview }: { readonly overview: Overview }) {
  const reader = useReader();
  const { seasonId } = useDemandChoice();
  const [, setBed] = useQueryValue('bed');
  const [month, setMonth] = useState('7');
  const [confidence, setConfidence] = useState('0.9');
  const handle = useJob<AwayResult>(({ days }) => say('The farm can be left for {days}.', { days: reader.print(days, 'd', 2) }));
  const begin = () =>
    client.waterDemand.startDaysAway.mutate({
      seasonId,
      month: Number(month),
      confidence: Number(confidence),
      limit_days: LOOK_AHEAD_DAYS,
    });
  const found = handle.job.state === 'done' ? handle.job.result : undefined;
  return (
    <>
      <div className="row">
        <ChoiceField label={say('Leaving in')} value={month} choices={monthChoices} onChange={setMonth} />
        <ChoiceField label={say('It must go well')} value={confidence} choices={confidences} onChange={setConfidence} />
      </div>
      <JobBar handle={handle} label={say('Try departures')} onStart={() => void handle.start(begin)} />
      {found === undefined ? (
        <p className="soft">
          {say(
            'Departures on every third day of the month are tried in each of {years} years of weather, with all beds and tanks full. A line gives back each day what its beds lack, as long as its tank holds.',
            { years: overview.record?.years.length ?? 0 },
          )}
        </p>
      ) : (
        <AwayResultView found={found} onOpen={setBed} />
      )}
      <Cautions ids={['estimate-limits', 'standing-water-children']} />
    </>
  );
}

function AwayResultView({ found, onOpen }: { readonly found: AwayResult; readonly onOpen: (bedId: string) => void }) {
  const reader = useReader();
  const first = found.beds.toSorted((a, b) => b.firstShare - a.firstShare)[0];
  return (
    <>
      <dl className="figures">
        <div>
          <dt>{say('Days away, whole farm')}</dt>
          <dd>
            <Figure of={found.working} digits={2} />
          </dd>
        </div>
        <div>
          <dt>{say('In half of the departures')}</dt>
          <dd>{reader.print(found.median_days, 'd', 2)}</dd>
        </div>
        <div>
          <dt>{say('Worst, in {worstYear}', { worstYear: found.worstYear })}</dt>
          <dd>{reader.print(found.worst_days, 'd', 2)}</dd>
        </div>
        {first === undefined || first.firstShare === 0 ? null : (
          <div>
            <dt>{say('First to go short')}</dt>
            <dd>
              {first.code}
              <span className="small soft"> {becauseChoices.find((each) => each.value === first.because)?.text}</span>
            </dd>
          </div>
        )}
      </dl>
      <dl className="figures">
        {found.supplies.map((supply) => (
          <div key={supply.lineId ?? 'none'}>
            <dt>{say('{supply}, {beds} beds', { supply: supply.name, beds: supply.beds })}</dt>
            <dd>
              {supply.days >= found.limit_days
                ? say('{limit} days or more', { limit: found.limit_days })
                : reader.print(supply.days, 'd', 2)}
              <span className="small soft">
                {supply.first === ''
                  ? ''
                  : say(' · {first} first; in half of the departures {median}', {
                      first: supply.first,
                      median: reader.print(supply.median_days, 'd', 2),
                    })}
              </span>
            </dd>
          </div>
        ))}
      </dl>
      <Grid name="Days each bed lasts" rows={found.beds} columns={columns} rowId={rowId} onOpen={(row) => onOpen(row.bedId)} />
    </>
  );
}
