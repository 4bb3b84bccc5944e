import { type ReactNode, useMemo, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, date, derived, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { exportAddress } from './export-address.ts';
import { HeapDialog } from './heap-dialog.tsx';
import { HeapSheet } from './heap-sheet.tsx';
import type { HeapRow, TeaRow } from './soil-types.ts';
import { heapMethodChoices } from './soil-words.ts';
import { TeaDialog } from './tea-dialog.tsx';
import { TeaSheet } from './tea-sheet.tsx';
import { useToday } from './use-today.ts';

const heapColumns: readonly Column<HeapRow>[] = [
  text('code', say('Heap'), { width: 100 }),
  date('startedDate', say('Started'), { width: 112 }),
  choice('method', say('Method'), heapMethodChoices, { width: 180 }),
  text('place', say('Place'), { width: 120 }),
  derived('quantity', 'cn', say('C:N at start'), (row) => row.mix?.carbonToNitrogen ?? null, { width: 100, digits: 2 }),
  derived('share', 'moisture_share', say('Moisture'), (row) => row.mix?.moistureShare ?? null, { width: 90 }),
  derived('count', 'days', say('Days hot'), (row) => row.rule?.daysInBand ?? null, {
    width: 90,
    hint: say('Days with a reading from 131 to 170 °F (55 to 77 °C)'),
  }),
  derived('count', 'turnings', say('Turnings'), (row) => row.rule?.turnings ?? null, { width: 90 }),
  derived(
    'text',
    'rule',
    say('Time and heat'),
    (row) => (row.rule === null ? say('no rule for this method') : row.rule.met ? 'reached' : say('not yet')),
    { width: 130 },
  ),
  date('lastReading', say('Last reading'), { width: 112 }),
];
const teaColumns = (moment: (at: string) => string): readonly Column<TeaRow>[] => [
  text('code', say('Tea'), { width: 100 }),
  derived('text', 'startedAt', say('Air on'), (row) => moment(row.startedAt), { width: 150 }),
  derived('text', 'useByAt', say('Use by'), (row) => moment(row.useByAt), { width: 150 }),
  text('compost', say('Of heap'), { width: 100 }),
  quantity('tank_L', say('Tank'), { width: 90 }),
  quantity('compost_kg', say('Compost in it'), { width: 110 }),
  derived('count', 'teaBeds', say('Beds'), (row) => row.beds.length, { width: 70 }),
  text('additives', say('Additives'), { width: 150 }),
  date('appliedDate', say('Applied'), { width: 112 }),
];
const heapId = (row: HeapRow): string => row.batchId;
const teaId = (row: TeaRow): string => row.teaId;

/** Heaps with their mix and temperature log, and compost tea from the beds to drench. */
export function CompostTab({ tabs }: { readonly tabs: ReactNode }) {
  const reader = useReader();
  const columnsOfTea = useMemo(() => teaColumns((at) => `${reader.date(at.slice(0, 10))} ${at.slice(11, 16)}`), [reader]);
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
      {say('Mix a heap')}
    </Button>
  );
  const brew = (
    <Button icon="add" onClick={() => setDoing('tea')}>
      {say('Plan a tea batch')}
    </Button>
  );
  return (
    <Page
      title={say('Soil')}
      lead={say('Mix to a C:N and moisture, log its heat, and size tea from the beds to drench.')}
      tabs={tabs}
      actions={
        <>
          {start}
          {brew}
          <a className="button" href={exportAddress('compost')} download>
            {say('Export')}
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
              <Empty title={say('No heap yet')} action={start}>
                {say('Put feedstocks together to a C:N of 25 to 35 and 45 to 60 % moisture; then log its temperature each day.')}
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
            columns={columnsOfTea}
            rowId={teaId}
            onOpen={(row) => {
              setHeap(undefined);
              setTea(row.teaId);
            }}
            empty={
              <Empty title={say('No tea batch yet')} action={brew}>
                {say('Choose the beds to drench; the batch, its tank and its latest hour of use follow.')}
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
