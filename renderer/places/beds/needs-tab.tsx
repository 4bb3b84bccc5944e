import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, derived, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { BedNeed } from './bed-types.ts';
import { Heaps } from './heaps.tsx';
import { MaterialNeeds } from './material-needs.tsx';
import { MixByBuckets } from './mix-by-buckets.tsx';

const kinds = [
  { value: 'first-fill', text: say('First fill') },
  { value: 'top-up', text: say('Top-up') },
] as const;
const bases = [
  { value: 'recipe', text: say('Recipe') },
  { value: 'measured', text: say('Measured drop') },
  { value: 'expected', text: say('Expected settling') },
] as const;

const columns: readonly Column<BedNeed>[] = [
  text('code', say('Bed'), { width: 84 }),
  choice('kind', say('For'), kinds, { width: 100 }),
  text('material', say('Material'), { width: 240 }),
  choice('basis', say('After'), bases, { width: 140, hint: say('Settling is common practice, no source: measure in spring') }),
  quantity('drop_m', say('Drop'), { width: 84 }),
  quantity('loose_L', say('Loose'), { total: 'sum', width: 100 }),
  derived('quantity', 'fromStockLoose_L', say('Own, in stock'), (row) => row.fromStock_L, { total: 'sum', width: 120 }),
  derived('quantity', 'wantedLoose_L', say('To get'), (row) => row.wanted_L, { total: 'sum', width: 100 }),
];
const rowId = (row: BedNeed): string => `${row.bedId} ${row.kind} ${row.materialId}`;

/** What every bed wants this season: own soil and stock first, the rest is a need for Orders. */
export function NeedsTab({ today, onOpen }: { readonly today: IsoDate; readonly onOpen: (bedId: string) => void }) {
  const needs = useRead(api.beds.needs, undefined);
  const record = useChange(api.beds.recordFill);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const recordChosen = (rows: readonly BedNeed[]): void => {
    const keys = new Set(chosen);
    const bedIds = [...new Set(rows.filter((row) => keys.has(rowId(row))).map((row) => row.bedId as string))];
    void record.run({ bedIds, date: today }, say('Recorded the fill of {bedIds} beds.', { bedIds: bedIds.length }));
  };
  return (
    <div className="needs-place">
      <Shown reading={needs}>
        {(rows) => (
          <Grid
            name="Fill needs"
            rows={rows}
            columns={columns}
            rowId={rowId}
            onSelect={setChosen}
            onOpen={(row) => onOpen(row.bedId)}
            failure={record.failure}
            tools={
              <Button disabled={chosen.length === 0 || record.busy} onClick={() => recordChosen(rows)}>
                {say('Record as filled')}
              </Button>
            }
            empty={
              <Empty title={say('Nothing is wanted')}>
                {say('Every bed is full. Measure the drop in spring; top-ups appear here.')}
              </Empty>
            }
          />
        )}
      </Shown>
      <div className="columns">
        <MaterialNeeds />
        <MixByBuckets />
        <Heaps />
      </div>
    </div>
  );
}
