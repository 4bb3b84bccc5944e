import { type ReactNode, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { type Column, derived, quantity, share, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say, sayWith } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { YieldRow } from './harvest-types.ts';

const three = (value: number | null): number | null => (value === null ? null : Number(value.toPrecision(3)));

const columns: readonly Column<YieldRow>[] = [
  derived(
    'text',
    'crop',
    say('Planting'),
    (row) => `${row.crop}${row.number > 1 ? say(' no. {number}', { number: row.number }) : ''}`,
    { width: 170 },
  ),
  text('beds', say('Beds'), { width: 110 }),
  derived('count', 'harvested', say('Harvested'), (row) => three(row.harvested)),
  derived('count', 'expected', say('Expected'), (row) => three(row.expected)),
  text('unit', say('Unit'), { width: 80 }),
  share('reachedShare', say('Reached')),
  derived('text', 'standing', say('Stands'), (row) => row.standing, { width: 120 }),
  quantity('area_m2', say('Area'), { total: 'sum' }),
  derived('count', 'perPlant', say('A plant'), (row) => three(row.perPlant)),
  derived('count', 'ownPerM2', say('Own record a m²'), (row) => three(row.ownPerM2), { shown: false }),
  derived('count', 'missingWeeks', say('Weeks missed'), (row) => row.missingWeeks),
  quantity('culls_kg', say('Culls'), { total: 'sum' }),
];

const rowId = (row: YieldRow): string => row.plantingId;

/** Yields of a season against expectation and the farm's own record. */
export function YieldsTab({ tabs }: { readonly tabs: ReactNode }) {
  const seasons = useRead(api.seasons.list, undefined);
  return <Shown reading={seasons}>{(list) => <YieldsOfSeason tabs={tabs} seasons={list} />}</Shown>;
}

function YieldsOfSeason({
  tabs,
  seasons,
}: {
  readonly tabs: ReactNode;
  readonly seasons: readonly { readonly id: string; readonly name: string; readonly state: string }[];
}) {
  const [asked, setSeason] = useQueryValue('season');
  const [plantingId, setPlanting] = useQueryValue('planting');
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const latest = seasons.findLast((each) => each.state !== 'planning') ?? seasons.at(-1);
  const seasonId = seasons.some((each) => each.id === asked) ? (asked ?? '') : (latest?.id ?? '');
  const yields = useRead(api.harvest.yields, { seasonId });
  const learn = useChange(api.harvest.learn);
  const rows = yields.state === 'ready' ? yields.data : [];
  const open = rows.find((row) => row.plantingId === plantingId);
  const cropIds = [...new Set(rows.filter((row) => chosen.includes(row.plantingId)).map((row) => row.cropId))];
  return (
    <Page
      title={say('Harvest')}
      lead={say('What each planting gave against what was expected of it.')}
      tabs={tabs}
      actions={
        <ChoiceField
          label={say('Season')}
          value={seasonId}
          choices={seasons.map((each) => ({ value: each.id, text: each.name }))}
          onChange={setSeason}
        />
      }
      sheet={open === undefined ? null : <YieldSheet row={open} seasonId={seasonId} onClose={() => setPlanting(undefined)} />}
    >
      <Shown reading={yields}>
        {(ready) => (
          <Grid
            name="Yields"
            rows={ready}
            columns={columns}
            rowId={rowId}
            onOpen={(row) => setPlanting(row.plantingId)}
            onSelect={setChosen}
            failure={learn.failure}
            tools={
              <Button
                disabled={cropIds.length === 0 || learn.busy}
                onClick={() =>
                  void learn.run(
                    { seasonId, cropIds },
                    say('Learned the yields of {cropIds} crops for the next plan.', { cropIds: cropIds.length }),
                  )
                }
              >
                {cropIds.length === 0
                  ? say('Choose plantings to learn from')
                  : say('Learn yields of {cropIds} crops', { cropIds: cropIds.length })}
              </Button>
            }
            empty={
              <Empty title={say('No plantings in this season')}>
                {say('Yields stand here once there is something to harvest.')}
              </Empty>
            }
          />
        )}
      </Shown>
    </Page>
  );
}

function YieldSheet({
  row,
  seasonId,
  onClose,
}: {
  readonly row: YieldRow;
  readonly seasonId: string;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const name = `${row.crop}${row.number > 1 ? say(' no. {number}', { number: row.number }) : ''}`;
  return (
    <Sheet title={`${name}, ${row.beds}`} onClose={onClose}>
      <p>
        {sayWith('Reached {more}: {three} of {three2} {unit}.', {
          more:
            row.reachedShare === null ? (
              say('not known: nothing is expected of it')
            ) : (
              <Figure
                value={row.reachedShare}
                unit="share"
                name={say('Yield against expectation')}
                explain={() => client.harvest.explainYield.query({ seasonId, plantingId: row.plantingId })}
              />
            ),
          three: three(row.harvested),
          three2: three(row.expected) ?? say('not known'),
          unit: row.unit,
        })}
      </p>
      {row.weeks.length === 0 ? (
        <p className="soft">{say('Nothing was harvested yet.')}</p>
      ) : (
        <Chart
          title={say('Harvest by week, {unit}', { unit: row.unit })}
          rows={row.weeks}
          x={{ name: say('Week of'), text: (week) => reader.date(week.monday) }}
          unit=""
          series={[{ name: say('Harvested'), as: 'bar', read: (week) => week.amount }]}
        />
      )}
    </Sheet>
  );
}
