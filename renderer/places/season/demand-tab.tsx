import { type ReactNode, useMemo, useState } from 'react';
import { type IsoDate, isoWeek } from '../../../planner/calendar.ts';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { HeatMap } from '../../charts/heat-map.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, choice, count, derived, money, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { AddDemand } from './add-demand.tsx';
import { balanceGrid, cropsOfBalance, soldIn } from './balance-rows.ts';
import { SeasonChoice, useSeasonId } from './season-choice.tsx';

export type DemandData = OutputOf<typeof api.demand.list>;
type WantedRow = DemandData['wanted'][number];

const kinds = [
  { value: 'standing', text: say('Standing order') },
  { value: 'market', text: say('What the market takes') },
] as const;

const columnsWith = (onRemove: (row: WantedRow) => void): readonly Column<WantedRow>[] => [
  text('cropName', say('Crop'), { width: 160 }),
  text('outletName', say('Outlet'), { width: 150 }),
  choice('kind', say('Kind'), kinds, { edit: true }),
  derived('date', 'fromDate', say('From'), (row) => row.fromDate),
  derived('date', 'toDate', say('To'), (row) => row.toDate),
  count('amountPerWeek', say('A week'), { edit: true }),
  text('unit', say('Unit'), { width: 70 }),
  money('price_minor', say('Price'), { edit: true }),
  derived('text', 'remove', '', () => '', {
    width: 60,
    draw: (row) => (
      <Button
        weight="quiet"
        icon="bin"
        name={say('Remove {cropName} for {outletName}', { cropName: row.cropName, outletName: row.outletName })}
        onClick={() => onRemove(row)}
      />
    ),
  }),
];
const rowId = (row: WantedRow): string => row.id;

/** What is wanted each week against what the plan should give. */
export function DemandTab({ tabs }: { readonly tabs: ReactNode }) {
  const [seasonId] = useSeasonId();
  const demand = useRead(api.demand.list, { seasonId });
  return <Shown reading={demand}>{(data) => <DemandOf data={data} tabs={tabs} />}</Shown>;
}

function DemandOf({ data, tabs }: { readonly data: DemandData; readonly tabs: ReactNode }) {
  const reader = useReader();
  const [chosen, setChosen] = useQueryValue('crop');
  const [adding, setAdding] = useState(false);
  const set = useChange(api.demand.set);
  const remove = useChange(api.demand.remove);
  const { run: runRemove } = remove;
  const columns = useMemo(
    () => columnsWith((row) => void runRemove({ demandIds: [row.id] }, say('Removed. Undo brings it back.'))),
    [runRemove],
  );
  const crops = useMemo(() => cropsOfBalance(data.balance), [data.balance]);
  const crop = crops.find((each) => each.key === chosen) ?? crops[0];
  const rows = data.balance.filter((row) => `${row.cropId}/${row.unit}` === crop?.key);
  const grid = useMemo(() => balanceGrid(data.balance, reader), [data.balance, reader]);
  return (
    <Page
      title={say('Season')}
      tabs={tabs}
      lead={say('What boxes, stalls and kitchens want each week, against what the plan should give.')}
      actions={
        <>
          <SeasonChoice seasonId={data.season.id} />
          <Button weight="main" icon="add" onClick={() => setAdding(true)}>
            {say('Add demand')}
          </Button>
        </>
      }
    >
      {crop === undefined ? null : (
        <section className="stack">
          <label className="row small">
            {say('Crop')}
            <select className="plain-select" value={crop.key} onChange={(event) => setChosen(event.target.value)}>
              {crops.map((each) => (
                <option key={each.key} value={each.key}>
                  {each.name} ({soldIn(each.unit, reader)})
                  {each.short > 0
                    ? say(' · short {short}', { short: reader.number(each.short, each.unit === 'kg' ? 'kg' : '', 2) })
                    : ''}
                </option>
              ))}
            </select>
          </label>
          <Chart
            title={say('{crop}: expected harvest against demand, {unit} a week', {
              crop: crop.name,
              unit: soldIn(crop.unit, reader),
            })}
            rows={rows}
            x={{ name: say('Week of'), text: (row) => reader.date(row.week) }}
            unit={crop.unit === 'kg' ? 'kg' : ''}
            series={[
              { name: say('Expected'), as: 'bar', read: (row) => row.typical },
              { name: say('Wanted'), as: 'line', read: (row) => row.wanted },
            ]}
            bands={[{ name: say('low to high yield'), low: (row) => row.low, high: (row) => row.high }]}
            note={
              data.notKnown === 0
                ? undefined
                : say('{notKnown} plantings are left out: their yield is not known.', { notKnown: data.notKnown })
            }
          />
          <HeatMap
            title={say('Short by crop and week, as a share of what is wanted')}
            rows={grid.rows}
            columns={grid.weeks.map((week) => String(isoWeek(week as IsoDate).week))}
            ways={[say('Crop'), say('Week')]}
            unit="share"
            value={(row, column) => grid.value(row, column)}
          />
        </section>
      )}
      <Grid
        name="Demand"
        rows={data.wanted}
        columns={columns}
        rowId={rowId}
        onOpen={(row) => setChosen(`${row.cropId}/${row.unit}`)}
        onEdit={(edits) =>
          set.run(
            { edits: edits.map((edit) => ({ demandId: edit.row.id, values: { [edit.key]: edit.value } })) },
            say('Changed the demand.'),
          )
        }
        failure={set.failure}
        empty={
          <Empty title={say('No demand yet')}>
            {say('Add what each outlet takes a week; the chart then shows where the plan is short.')}
          </Empty>
        }
      />
      {adding ? <AddDemand data={data} onClose={() => setAdding(false)} /> : null}
      {remove.failure === undefined ? null : <p className="failed">{remove.failure.message}</p>}
    </Page>
  );
}
