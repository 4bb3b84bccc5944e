import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { MoneyField } from '../../fields/money-field.tsx';
import { type Column, choice, count, date, flag, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { TabHead } from '../orders/tab-head.ts';
import { AddRecord } from './add-record.tsx';
import { fileOf } from './file-address.ts';
import { recordKinds } from './record-kinds.ts';

type Row = OutputOf<typeof api.records.log>['rows'][number];

const idOf = (row: Row): string => row.logId;
const columns: readonly Column<Row>[] = [
  date('date', 'Date', { width: 110 }),
  text('time', 'Time', { width: 70 }),
  choice('kind', 'What', recordKinds, { width: 160 }),
  text('observed', 'Seen or done', { width: 300 }),
  text('place', 'Place', { width: 120 }),
  text('who', 'Who', { width: 80 }),
  count('late_days', 'Entered late', { width: 110, hint: 'Days after it happened' }),
  text('reviewedBy', 'Reviewed by', { width: 110 }),
  date('keepUntil', 'Keep until', { width: 110 }),
  flag('corrected', 'Corrected', { width: 95, hint: 'A later entry corrects this one' }),
];

const regimes = {
  none: 'no records regime',
  organic: 'organic records',
  'produce-safety': 'produce-safety records',
  both: 'organic and produce-safety records',
} as const;

/** Logs that are appended and never written over, with their exports and the yearly review of sales. */
export function RecordsTab({ tabs, season }: TabHead) {
  const log = useRead(api.records.log, undefined);
  const review = useChange(api.records.review);
  const [adding, setAdding] = useState(false);
  const [selected, setSelected] = useState<readonly string[]>([]);
  const [reviewer, setReviewer] = useState('');
  const span = { from: season.startDate, to: season.endDate };
  return (
    <Page
      title="Costs"
      lead="Entries are appended: a correction is a new entry that names the old one. Nothing is written over."
      tabs={tabs}
      actions={
        <>
          <a className="button" href={fileOf('harvest-records.csv', span)}>
            Harvests
          </a>
          <a className="button" href={fileOf('sale-records.csv', span)}>
            Sales
          </a>
          <a className="button" href={fileOf('log-records.csv')}>
            Log
          </a>
          <Button weight="main" icon="add" onClick={() => setAdding(true)}>
            Add a record
          </Button>
        </>
      }
    >
      <Shown reading={log}>
        {(found) => (
          <>
            <p className="soft small">
              This farm keeps {regimes[found.regime]}; records younger than {found.years} years are never offered for deletion.
              Change it at Farm.
            </p>
            <Grid
              name="Records"
              rows={found.rows}
              columns={columns}
              rowId={idOf}
              onSelect={setSelected}
              tools={
                selected.length === 0 ? undefined : (
                  <span className="row">
                    <input
                      type="text"
                      aria-label="Reviewed by"
                      placeholder="Reviewed by"
                      value={reviewer}
                      onChange={(event) => setReviewer(event.target.value)}
                    />
                    <Button
                      disabled={reviewer.trim() === ''}
                      onClick={() => {
                        for (const logId of selected) void review.run({ logId, reviewedBy: reviewer }, 'Marked as reviewed.');
                      }}
                    >
                      Mark as reviewed
                    </Button>
                  </span>
                )
              }
              empty={
                <Empty title="No records yet">
                  Cleaning, training, inspections, visitors: write what was seen, with who and when.
                </Empty>
              }
            />
            {adding ? (
              <AddRecord
                rows={found.rows.map((row) => ({ logId: row.logId, text: `${row.date} ${row.observed}` }))}
                onClose={() => setAdding(false)}
              />
            ) : null}
          </>
        )}
      </Shown>
      <Exemption />
      <p className="soft small">
        This log helps you keep the facts. Whether they satisfy a law or a certificate is for your certifier, your state's
        produce-safety programme or the agency to say; read the current rule.
      </p>
    </Page>
  );
}

function Exemption() {
  const reader = useReader();
  const [limit, setLimit] = useState<number | null>(null);
  const found = useRead(api.records.exemption, { limit_minor: limit ?? 0 });
  return (
    <section className="panel stack" aria-label="Yearly review of sales">
      <h2>Sales to qualified end-users, mean of the last years</h2>
      <MoneyField
        label="Limit, adjusted for inflation"
        value={limit}
        onChange={setLimit}
        hint="21 CFR 112.5: read the agency's current figure"
      />
      <Shown reading={found}>
        {({ years, figures }) =>
          figures === null ? (
            <p className="soft">No full year of sales yet.</p>
          ) : (
            <dl className="facts">
              <dt>Years</dt>
              <dd>{years.map((each) => each.year).join(', ')}</dd>
              <dt>To qualified end-users</dt>
              <dd>{reader.money(Math.round(figures.meanQualified_minor))} a year</dd>
              <dt>To others</dt>
              <dd>{reader.money(Math.round(figures.meanOthers_minor))} a year</dd>
              <dt>All</dt>
              <dd>
                {reader.money(Math.round(figures.meanAll_minor))}
                {limit === null ? '' : figures.underLimit ? ', under the limit entered' : ', not under the limit entered'}
              </dd>
              <dt>More to qualified than to others</dt>
              <dd>{figures.mostlyQualified ? 'yes' : 'no'}</dd>
            </dl>
          )
        }
      </Shown>
      <p className="soft small">Arithmetic only: whether the farm is exempt is for the agency to say.</p>
    </section>
  );
}
