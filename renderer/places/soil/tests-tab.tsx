import { type ReactNode, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { exportAddress } from './export-address.ts';
import type { SoilTestRow } from './soil-types.ts';
import { testColumns } from './test-columns.tsx';
import { TestForm } from './test-form.tsx';
import { TestImport } from './test-import.tsx';
import { TestSheet } from './test-sheet.tsx';
import { useToday } from './use-today.ts';

const rowId = (row: SoilTestRow): string => row.testId;
type Doing = { readonly what: 'enter' | 'bring' } | { readonly what: 'change'; readonly test: SoilTestRow };

/** Laboratory sheets: entered or brought in, read by class, with the beds they speak for. */
export function TestsTab({ tabs }: { readonly tabs: ReactNode }) {
  const tests = useRead(api.soilTests.list, undefined);
  const today = useToday();
  const [testId, setTest] = useQueryValue('test');
  const [doing, setDoing] = useState<Doing>();
  const shown = tests.state === 'ready' ? tests.data.find((each) => each.testId === testId) : undefined;
  const close = () => setDoing(undefined);
  const enter = (
    <Button weight="main" icon="add" onClick={() => setDoing({ what: 'enter' })}>
      {say('Enter a test')}
    </Button>
  );
  return (
    <Page
      title={say('Soil')}
      lead={say('Laboratory sheets, each read on the scale of its own method.')}
      tabs={tabs}
      actions={
        <>
          {enter}
          <Button onClick={() => setDoing({ what: 'bring' })}>{say('Bring in CSV')}</Button>
          <a className="button" href={exportAddress('soil-tests')} download>
            {say('Export')}
          </a>
        </>
      }
      sheet={
        shown === undefined ? null : (
          <TestSheet
            key={shown.testId}
            test={shown}
            onEdit={() => setDoing({ what: 'change', test: shown })}
            onClose={() => setTest(undefined)}
          />
        )
      }
    >
      <Cautions ids={['lead-in-soil']} folded />
      <Shown reading={tests}>
        {(rows) => (
          <Grid
            name="Soil tests"
            rows={rows}
            columns={testColumns}
            rowId={rowId}
            onOpen={(row) => setTest(row.testId)}
            empty={
              <Empty title={say('No soil test yet')} action={enter}>
                {say('Enter a laboratory sheet, or bring in many at once from CSV. Beds with one sheet may share it.')}
              </Empty>
            }
          />
        )}
      </Shown>
      {doing?.what === 'bring' ? <TestImport onClose={close} /> : null}
      {doing?.what === 'enter' && today !== null ? <TestForm test={null} today={today as IsoDate} onClose={close} /> : null}
      {doing?.what === 'change' && today !== null ? (
        <TestForm test={doing.test} today={today as IsoDate} onClose={close} />
      ) : null}
    </Page>
  );
}
