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
import { ApplicationDialog } from './application-dialog.tsx';
import { exportAddress } from './export-address.ts';
import type { LogRow } from './soil-types.ts';
import { useToday } from './use-today.ts';

const states = [
  { value: 'done', text: 'Given' },
  { value: 'planned', text: 'Planned' },
  { value: 'skipped', text: 'Skipped' },
] as const;

const columns: readonly Column<LogRow>[] = [
  date('date', 'Date', { width: 112 }),
  choice('state', 'State', states, { width: 90 }),
  text('code', 'Bed', { width: 84 }),
  text('material', 'Material', { width: 210 }),
  quantity('amount_kg', 'Amount', { width: 96, total: 'sum' }),
  money('cost_minor', 'Cost', { width: 90, total: 'sum' }),
  text('method', 'How', { width: 170 }),
  date('incorporatedDate', 'Worked in', { width: 112 }),
  text('who', 'By', { width: 80 }),
  text('reason', 'Reason', { width: 150 }),
  text('lot', 'Lot', { width: 100 }),
  text('supplier', 'From', { width: 130 }),
  text('organicUse', 'Organic use', { width: 104, shown: false }),
  text('source', 'Source of the analysis', { width: 260, shown: false }),
  text('note', 'Note', { shown: false }),
];
const rowId = (row: LogRow): string => row.applicationBedId;

/** What was put on beds, when, how much and by whom; intervals of raw manure; files for an inspection. */
export function RecordsTab({ tabs }: { readonly tabs: ReactNode }) {
  const log = useRead(api.applications.log, undefined);
  const today = useToday();
  const [entering, setEntering] = useState(false);
  const enter = (
    <Button weight="main" icon="add" onClick={() => setEntering(true)}>
      Enter an application
    </Button>
  );
  return (
    <Page
      title="Soil"
      lead="Every material put on a bed, kept for the inspection that asks."
      tabs={tabs}
      actions={
        <>
          {enter}
          <a className="button" href={exportAddress('applications')} download>
            Export applications
          </a>
          <a className="button" href={exportAddress('compost')} download>
            Export compost
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
              <Empty title="Nothing on record yet" action={enter}>
                Doses recorded as given appear here, and what you enter by hand.
              </Empty>
            }
          />
        )}
      </Shown>
      <p className="small soft">
        This log helps you keep the facts. Whether they satisfy a law or a certificate is for your certifier, your state’s
        produce-safety programme or the agency to say; read the current rule.
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
    <section className="panel stack" aria-label="Raw manure and harvest">
      <h2>Raw manure and harvest</h2>
      <Cautions ids={['raw-manure']} folded={short.length === 0} />
      <table className="lines">
        <caption>
          Days between working in and the planned harvest (120 where the edible part touches soil, else 90; 7 CFR 205.203(c)(1))
        </caption>
        <thead>
          <tr>
            <th scope="col">Bed</th>
            <th scope="col">Given</th>
            <th scope="col">Crop</th>
            <th scope="col">Earliest harvest</th>
            <th scope="col">Planned harvest</th>
            <th scope="col">Reading</th>
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
              <td>{each.incorporated ? reader.date(each.firstHarvest) : 'none: not worked in'}</td>
              <td>{reader.date(each.plannedHarvest)}</td>
              <td>
                <span className="state-mark" data-tone={each.spare_days < 0 || !each.incorporated ? 'stop' : 'good'}>
                  {!each.incorporated
                    ? 'no interval makes it fit'
                    : each.spare_days < 0
                      ? `${-each.spare_days} days too soon`
                      : `${each.spare_days} days to spare`}
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
