import { useState } from 'react';
import type { StressResult } from '../../../api/jobs/water/stress-years.ts';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { JobBar } from '../../app/job-bar.tsx';
import { HeatMap } from '../../charts/heat-map.tsx';
import { client } from '../../client/api.ts';
import { useJob } from '../../client/use-job.ts';
import { type Column, count, quantity, share, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { type Overview, useDemandChoice } from './demand-data.ts';
import { DemandFrame } from './demand-frame.tsx';
import { IntervalPart } from './interval-part.tsx';
import { type StressRow, stressRows, worstFirst } from './stress-rows.ts';
import { WaterChoicesDialog } from './water-choices-dialog.tsx';

const columns: readonly Column<StressRow>[] = [
  text('code', say('Bed'), { width: 80 }),
  share('worstMonth_share', say('Chance, worst month'), {
    width: 190,
    hint: say('Share of the years of record with a day short of water'),
  }),
  count('days', say('Days a year'), { width: 120, hint: say('Mean of the years of record') }),
  text('worst', say('Worst year'), { width: 150 }),
  share('met_share', say('Use met')),
  quantity('given_L_per_year', say('Given'), { width: 140, digits: 2 }),
  quantity('lost_L_per_year', say('Lost'), { width: 140, digits: 2 }),
];
/** The map's columns are narrow: months by number. */
const monthNumbers = Array.from({ length: 12 }, (_, at) => String(at + 1));
const rowId = (row: StressRow): string => row.bedId;

/** Longest intervals, and every year of record run through the plan. */
export function StressTab() {
  return <DemandFrame withYear={false}>{(_, overview) => <StressBody overview={overview} />}</DemandFrame>;
}

/** At most this many rows of the map: the worst beds. */
const MOST_ROWS = 60;

function StressBody({ overview }: { readonly overview: Overview }) {
  const { seasonId } = useDemandChoice();
  const [, setBed] = useQueryValue('bed');
  const [choosing, setChoosing] = useState(false);
  const handle = useJob<StressResult>((result) =>
    say('{beds, plural, one {One bed} other {# beds}} run through {years, plural, one {one year} other {# years}}.', {
      beds: result.beds.length,
      years: result.years.length,
    }),
  );
  const found = handle.job.state === 'done' ? handle.job.result : undefined;
  const worst = found === undefined ? [] : worstFirst(found).slice(0, MOST_ROWS);
  return (
    <>
      <div className="row">
        <Button onClick={() => setChoosing(true)}>{say('Exposure, walls, confidence…')}</Button>
      </div>
      {choosing ? <WaterChoicesDialog choices={overview.choices} onClose={() => setChoosing(false)} /> : null}
      <IntervalPart />
      <section className="panel stack">
        <h2>{say('Every year of record')}</h2>
        <p className="soft">
          {say(
            'The plan is run through each whole year of the weather record, watered as it is now. A year begins with full beds.',
          )}
        </p>
        <JobBar
          handle={handle}
          label={say('Run all years')}
          onStart={() => void handle.start(() => client.waterDemand.startStress.mutate({ seasonId }))}
        />
        {found === undefined ? null : worst.length === 0 ? (
          <p>{say('No bed goes short of water in any of {years} years.', { years: found.years.length })}</p>
        ) : (
          <HeatMap
            title={say('Chance that a bed goes short, by month ({years} years of record)', { years: found.years.length })}
            rows={worst.map((bed) => bed.code)}
            columns={monthNumbers}
            ways={[say('Bed'), say('Month')]}
            unit="share"
            height={Math.max(120, 70 + worst.length * 15)}
            value={(row, column) => worst[row]?.chance[column] ?? null}
          />
        )}
        {found === undefined ? null : (
          <Grid
            name="Stress by bed"
            rows={stressRows(found)}
            columns={columns}
            rowId={rowId}
            onOpen={(row) => setBed(row.bedId)}
          />
        )}
      </section>
    </>
  );
}
