import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, derived, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { BedNeed } from './bed-types.ts';
import { Heaps } from './heaps.tsx';
import { MaterialNeeds } from './material-needs.tsx';
import { MixByBuckets } from './mix-by-buckets.tsx';

const kinds = [
  { value: 'first-fill', text: 'First fill' },
  { value: 'top-up', text: 'Top-up' },
] as const;
const bases = [
  { value: 'recipe', text: 'Recipe' },
  { value: 'measured', text: 'Measured drop' },
  { value: 'expected', text: 'Expected settling' },
] as const;

const columns: readonly Column<BedNeed>[] = [
  text('code', 'Bed', { width: 84 }),
  choice('kind', 'For', kinds, { width: 100 }),
  text('material', 'Material', { width: 240 }),
  choice('basis', 'After', bases, { width: 140, hint: 'Settling is common practice, no source: measure in spring' }),
  quantity('drop_m', 'Drop', { width: 84 }),
  quantity('loose_L', 'Loose', { total: 'sum', width: 100 }),
  derived('quantity', 'fromStockLoose_L', 'Own, in stock', (row) => row.fromStock_L, { total: 'sum', width: 120 }),
  derived('quantity', 'wantedLoose_L', 'To get', (row) => row.wanted_L, { total: 'sum', width: 100 }),
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
    void record.run({ bedIds, date: today }, `Recorded the fill of ${bedIds.length} beds.`);
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
                Record as filled
              </Button>
            }
            empty={<Empty title="Nothing is wanted">Every bed is full. Measure the drop in spring; top-ups appear here.</Empty>}
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
