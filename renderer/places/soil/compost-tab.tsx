import { type ReactNode, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, date, derived, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { exportAddress } from './export-address.ts';
import { HeapDialog } from './heap-dialog.tsx';
import { HeapSheet } from './heap-sheet.tsx';
import type { HeapRow, TeaRow } from './soil-types.ts';
import { heapMethodChoices } from './soil-words.ts';
import { TeaDialog } from './tea-dialog.tsx';
import { TeaSheet } from './tea-sheet.tsx';
import { useToday } from './use-today.ts';

const heapColumns: readonly Column<HeapRow>[] = [
  text('code', 'Heap', { width: 100 }),
  date('startedDate', 'Started', { width: 112 }),
  choice('method', 'Method', heapMethodChoices, { width: 180 }),
  text('place', 'Place', { width: 120 }),
  derived('quantity', 'cn', 'C:N at start', (row) => row.mix?.carbonToNitrogen ?? null, { width: 100, digits: 2 }),
  derived('share', 'moisture_share', 'Moisture', (row) => row.mix?.moistureShare ?? null, { width: 90 }),
  derived('count', 'days', 'Days hot', (row) => row.rule?.daysInBand ?? null, {
    width: 90,
    hint: 'Days with a reading from 131 to 170 °F (55 to 77 °C)',
  }),
  derived('count', 'turnings', 'Turnings', (row) => row.rule?.turnings ?? null, { width: 90 }),
  derived(
    'text',
    'rule',
    'Time and heat',
    (row) => (row.rule === null ? 'no rule for this method' : row.rule.met ? 'reached' : 'not yet'),
    { width: 130 },
  ),
  date('lastReading', 'Last reading', { width: 112 }),
];
const teaColumns: readonly Column<TeaRow>[] = [
  text('code', 'Tea', { width: 100 }),
  derived('text', 'startedAt', 'Air on', (row) => row.startedAt.replace('T', ' '), { width: 150 }),
  derived('text', 'useByAt', 'Use by', (row) => row.useByAt.replace('T', ' '), { width: 150 }),
  text('compost', 'Of heap', { width: 100 }),
  quantity('tank_L', 'Tank', { width: 90 }),
  quantity('compost_kg', 'Compost in it', { width: 110 }),
  derived('count', 'teaBeds', 'Beds', (row) => row.beds.length, { width: 70 }),
  text('additives', 'Additives', { width: 150 }),
  date('appliedDate', 'Applied', { width: 112 }),
];
const heapId = (row: HeapRow): string => row.batchId;
const teaId = (row: TeaRow): string => row.teaId;

/** Heaps with their mix and temperature log, and compost tea from the beds to drench. */
export function CompostTab({ tabs }: { readonly tabs: ReactNode }) {
  const heaps = useRead(api.compost.batches, undefined);
  const teas = useRead(api.compost.tea, undefined);
  const today = useToday();
  const [heap, setHeap] = useQueryValue('heap');
  const [tea, setTea] = useQueryValue('tea');
  const [doing, setDoing] = useState<'heap' | 'tea'>();
  const openHeap = heaps.state === 'ready' ? heaps.data.find((each) => each.batchId === heap) : undefined;
  const openTea = teas.state === 'ready' ? teas.data.find((each) => each.teaId === tea) : undefined;
  const start = (
    <Button weight="main" icon="add" onClick={() => setDoing('heap')}>
      Mix a heap
    </Button>
  );
  const brew = (
    <Button icon="add" onClick={() => setDoing('tea')}>
      Plan a tea batch
    </Button>
  );
  return (
    <Page
      title="Soil"
      lead="Mix to a C:N and moisture, log the heat against 131 °F, and size tea from the beds to drench."
      tabs={tabs}
      actions={
        <>
          {start}
          {brew}
          <a className="button" href={exportAddress('compost')} download>
            Export
          </a>
        </>
      }
      sheet={
        openHeap !== undefined && today !== null ? (
          <HeapSheet key={openHeap.batchId} heap={openHeap} today={today} onClose={() => setHeap(undefined)} />
        ) : openTea !== undefined && today !== null ? (
          <TeaSheet key={openTea.teaId} tea={openTea} today={today} onClose={() => setTea(undefined)} />
        ) : null
      }
    >
      <Cautions ids={['compost-heat', 'compost-tea']} folded />
      <Shown reading={heaps}>
        {(rows) => (
          <Grid
            name="Compost heaps"
            rows={rows}
            columns={heapColumns}
            rowId={heapId}
            onOpen={(row) => {
              setTea(undefined);
              setHeap(row.batchId);
            }}
            empty={
              <Empty title="No heap yet" action={start}>
                Put feedstocks together to a C:N of 25 to 35 and 45 to 60 % moisture; then log its temperature each day.
              </Empty>
            }
          />
        )}
      </Shown>
      <Shown reading={teas}>
        {(rows) => (
          <Grid
            name="Compost tea"
            rows={rows}
            columns={teaColumns}
            rowId={teaId}
            onOpen={(row) => {
              setHeap(undefined);
              setTea(row.teaId);
            }}
            empty={
              <Empty title="No tea batch yet" action={brew}>
                Choose the beds to drench; the batch, its tank and its latest hour of use follow.
              </Empty>
            }
          />
        )}
      </Shown>
      {doing === 'heap' && today !== null ? <HeapDialog today={today} onClose={() => setDoing(undefined)} /> : null}
      {doing === 'tea' && today !== null ? (
        <TeaDialog today={today} heaps={heaps.state === 'ready' ? heaps.data : []} onClose={() => setDoing(undefined)} />
      ) : null}
    </Page>
  );
}
