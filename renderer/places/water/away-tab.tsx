import { useState } from 'react';
import type { AwayResult } from '../../../api/jobs/water/days-away.ts';
import { useQueryValue } from '../../app/address.ts';
import { Cautions } from '../../cautions/caution.tsx';
import { client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useJob } from '../../client/use-job.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { type Column, choice, count, share, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { Figure } from '../../working/figure.tsx';
import { monthChoices, type Overview, useDemandChoice } from './demand-data.ts';
import { DemandFrame } from './demand-frame.tsx';
import { JobBar } from './job-bar.tsx';

type AwayRow = AwayResult['beds'][number];

const becauseChoices = [
  { value: 'own-store', text: 'its own store is used up' },
  { value: 'line-empty', text: 'the tank of its line is empty' },
  { value: 'line-too-weak', text: 'its line gives too little' },
  { value: 'holds-out', text: 'holds out' },
  { value: 'no-crop', text: 'no crop stands on it' },
];

const columns: readonly Column<AwayRow>[] = [
  text('code', 'Bed', { width: 80 }),
  count('days', 'Days it lasts', { width: 130, hint: 'At the confidence chosen' }),
  count('median_days', 'In half of them', { width: 140 }),
  share('firstShare', 'First to go short', {
    width: 160,
    hint: 'Share of the departures in which no bed failed before it',
  }),
  choice('because', 'What gives out', becauseChoices, { width: 220 }),
];
const rowId = (row: AwayRow): string => row.bedId;
const confidences = ['0.5', '0.8', '0.9', '0.95', '1'].map((value) => ({
  value,
  text: value === '1' ? 'every time in the record' : `${Math.round(Number(value) * 100)} times of 100`,
}));

/** How long the farm can be left. */
export function AwayTab() {
  return <DemandFrame withYear={false}>{(_, overview) => <AwayBody overview={overview} />}</DemandFrame>;
}

const LOOK_AHEAD_DAYS = 30;

function AwayBody({ overview }: { readonly overview: Overview }) {
  const { seasonId } = useDemandChoice();
  const [, setBed] = useQueryValue('bed');
  const [month, setMonth] = useState('7');
  const [confidence, setConfidence] = useState('0.9');
  const handle = useJob<AwayResult>();
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
        <ChoiceField label="Leaving in" value={month} choices={monthChoices} onChange={setMonth} />
        <ChoiceField label="It must go well" value={confidence} choices={confidences} onChange={setConfidence} />
      </div>
      <JobBar handle={handle} label="Try departures" onStart={() => void handle.start(begin)} />
      {found === undefined ? (
        <p className="soft">
          Departures on every third day of the month are tried in each of {overview.record?.years.length ?? 0} years of weather,
          with all beds and tanks full. A line gives back each day what its beds lack, as long as its tank holds.
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
          <dt>Days away, whole farm</dt>
          <dd>
            <Figure of={found.working} digits={2} />
          </dd>
        </div>
        <div>
          <dt>In half of the departures</dt>
          <dd>{reader.print(found.median_days, 'd', 2)}</dd>
        </div>
        <div>
          <dt>Worst, in {found.worstYear}</dt>
          <dd>{reader.print(found.worst_days, 'd', 2)}</dd>
        </div>
        {first === undefined || first.firstShare === 0 ? null : (
          <div>
            <dt>First to go short</dt>
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
            <dt>
              {supply.name}, {supply.beds} beds
            </dt>
            <dd>
              {supply.days >= found.limit_days ? `${found.limit_days} days or more` : reader.print(supply.days, 'd', 2)}
              <span className="small soft">
                {supply.first === ''
                  ? ''
                  : ` · ${supply.first} first; in half of the departures ${reader.print(supply.median_days, 'd', 2)}`}
              </span>
            </dd>
          </div>
        ))}
      </dl>
      <Grid name="Days each bed lasts" rows={found.beds} columns={columns} rowId={rowId} onOpen={(row) => onOpen(row.bedId)} />
    </>
  );
}
