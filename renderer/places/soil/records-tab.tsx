import { type ReactNode, useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, date, money, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { ApplicationDialog } from './application-dialog.tsx';
import { exportAddress } from './export-address.ts';
import type { LogRow } from './soil-types.ts';
import { useToday } from './use-today.ts';

const states = [
  { value: 'done', text: say('Given') },
  { value: 'planned', text: say('Planned') },
  { value: 'skipped', text: say('Skipped') },
] as const;

const columns: readonly Column<LogRow>[] = [
  date('date', say('Date'), { width: 112 }),
  choice('state', say('State'), states, { width: 90 }),
  text('code', say('Bed'), { width: 84 }),
  text('material', say('Material'), { width: 210 }),
  quantity('amount_kg', say('Amount'), { width: 96, total: 'sum' }),
  money('cost_minor', say('Cost'), { width: 90, total: 'sum' }),
  text('method', say('How'), { width: 170 }),
  date('incorporatedDate', say('Worked in'), { width: 112 }),
  text('who', say('By'), { width: 80 }),
  text('reason', say('Reason'), { width: 150 }),
  text('lot', say('Lot'), { width: 100 }),
  text('supplier', say('From'), { width: 130 }),
  text('organicUse', say('Organic use'), { width: 104, shown: false }),
  text('source', say('Source of the analysis'), { width: 260, shown: false }),
  text('note', say('Note'), { shown: false }),
];
const rowId = (row: LogRow): string => row.applicationBedId;

/** What was put on beds, when, how much and by whom; intervals of raw manure; files for an inspection. */
export function RecordsTab({ tabs }: { readonly tabs: ReactNode }) {
  const log = useRead(api.applications.log, undefined);
  const today = useToday();
  const [entering, setEntering] = useState(false);
  const enter = (
    <Button weight="main" icon="add" onClick={() => setEntering(true)}>
      {say('Enter an application')}
    </Button>
  );
  return (
    <Page
      title={say('Soil')}
      lead={say('Every material put on a bed, kept for the inspection that asks.')}
      tabs={tabs}
      actions={
        <>
          {enter}
          <a className="button" href={exportAddress('applications')} download>
            {say('Export applications')}
          </a>
          <a className="button" href={exportAddress('compost')} download>
            {say('Export compost')}
          </a>
        </>
      }
    >
      <Intervals />
      <Shown reading={log}>
        {(rows) => (
          <Grid
            name="Applications"
            rows={rows}
            columns={columns}
            rowId={rowId}
            empty={
              <Empty title={say('Nothing on record yet')} action={enter}>
                {say('Doses recorded as given appear here, and what you enter by hand.')}
              </Empty>
            }
          />
        )}
      </Shown>
      <p className="small soft">
        {say(
          'This log helps you keep the facts. Whether they satisfy a law or a certificate is for your certifier, your state’s produce-safety programme or the agency to say; read the current rule.',
        )}
      </p>
      {entering && today !== null ? <ApplicationDialog today={today} onClose={() => setEntering(false)} /> : null}
    </Page>
  );
}

function Intervals() {
  const reader = useReader();
  const intervals = useRead(api.applications.intervals, undefined);
  if (intervals.state !== 'ready' || intervals.data.length === 0) return null;
  const short = intervals.data.filter((each) => each.spare_days < 0 || !each.incorporated);
  return (
    <section className="panel stack" aria-label={say('Raw manure and harvest')}>
      <h2>{say('Raw manure and harvest')}</h2>
      <Cautions ids={['raw-manure']} folded={short.length === 0} />
      <table className="lines">
        <caption>
          {say(
            'Days between working in and the planned harvest (120 where the edible part touches soil, else 90; 7 CFR 205.203(c)(1))',
          )}
        </caption>
        <thead>
          <tr>
            <th scope="col">{say('Bed')}</th>
            <th scope="col">{say('Given')}</th>
            <th scope="col">{say('Crop')}</th>
            <th scope="col">{say('Earliest harvest')}</th>
            <th scope="col">{say('Planned harvest')}</th>
            <th scope="col">{say('Reading')}</th>
          </tr>
        </thead>
        <tbody>
          {intervals.data.slice(0, 60).map((each) => (
            <tr key={`${each.bedId} ${each.plantingId} ${each.date} ${each.what}`}>
              <td>{each.code}</td>
              <td>
                {each.what}, {reader.date(each.date)}
              </td>
              <td>{each.crop}</td>
              <td>{each.incorporated ? reader.date(each.firstHarvest) : say('none: not worked in')}</td>
              <td>{reader.date(each.plannedHarvest)}</td>
              <td>
                <span className="state-mark" data-tone={each.spare_days < 0 || !each.incorporated ? 'stop' : 'good'}>
                  {!each.incorporated
                    ? say('no interval makes it fit')
                    : each.spare_days < 0
                      ? say('{spare} days too soon', { spare: -each.spare_days })
                      : say('{spare} days to spare', { spare: each.spare_days })}
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
