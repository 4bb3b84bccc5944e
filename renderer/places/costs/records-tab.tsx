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
import { say } from '../../words/say.ts';
import type { TabHead } from '../orders/tab-head.ts';
import { AddRecord } from './add-record.tsx';
import { fileOf } from './file-address.ts';
import { recordKinds } from './record-kinds.ts';

type Row = OutputOf<typeof api.records.log>['rows'][number];

const idOf = (row: Row): string => row.logId;
const columns: readonly Column<Row>[] = [
  date('date', say('Date'), { width: 110 }),
  text('time', say('Time'), { width: 70 }),
  choice('kind', say('What'), recordKinds, { width: 160 }),
  text('observed', say('Seen or done'), { width: 300 }),
  text('place', say('Place'), { width: 120 }),
  text('who', say('Who'), { width: 80 }),
  count('late_days', say('Entered late'), { width: 110, hint: say('Days after it happened') }),
  text('reviewedBy', say('Reviewed by'), { width: 110 }),
  date('keepUntil', say('Keep until'), { width: 110 }),
  flag('corrected', say('Corrected'), { width: 95, hint: say('A later entry corrects this one') }),
];

const regimes = {
  none: say('no records regime'),
  organic: say('organic records'),
  'produce-safety': say('produce-safety records'),
  both: say('organic and produce-safety records'),
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
      title={say('Costs')}
      lead={say('Entries are appended: a correction is a new entry that names the old one. Nothing is written over.')}
      tabs={tabs}
      actions={
        <>
          <a className="button" href={fileOf('harvest-records.csv', span)}>
            {say('Harvests')}
          </a>
          <a className="button" href={fileOf('sale-records.csv', span)}>
            {say('Sales')}
          </a>
          <a className="button" href={fileOf('log-records.csv')}>
            {say('Log')}
          </a>
          <Button weight="main" icon="add" onClick={() => setAdding(true)}>
            {say('Add a record')}
          </Button>
        </>
      }
    >
      <Shown reading={log}>
        {(found) => (
          <>
            <p className="soft small">
              {say(
                'This farm keeps {regimes}; records younger than {years} years are never offered for deletion. Change it at Farm.',
                { regimes: regimes[found.regime], years: found.years },
              )}
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
                      aria-label={say('Reviewed by')}
                      placeholder={say('Reviewed by')}
                      value={reviewer}
                      onChange={(event) => setReviewer(event.target.value)}
                    />
                    <Button
                      disabled={reviewer.trim() === ''}
                      onClick={() => {
                        for (const logId of selected)
                          void review.run({ logId, reviewedBy: reviewer }, say('Marked as reviewed.'));
                      }}
                    >
                      {say('Mark as reviewed')}
                    </Button>
                  </span>
                )
              }
              empty={
                <Empty title={say('No records yet')}>
                  {say('Cleaning, training, inspections, visitors: write what was seen, with who and when.')}
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
        {say(
          "This log helps you keep the facts. Whether they satisfy a law or a certificate is for your certifier, your state's produce-safety programme or the agency to say; read the current rule.",
        )}
      </p>
    </Page>
  );
}

function Exemption() {
  const reader = useReader();
  const [limit, setLimit] = useState<number | null>(null);
  const found = useRead(api.records.exemption, { limit_minor: limit ?? 0 });
  return (
    <section className="panel stack" aria-label={say('Yearly review of sales')}>
      <h2>{say('Sales to qualified end-users, mean of the last years')}</h2>
      <MoneyField
        label={say('Limit, adjusted for inflation')}
        value={limit}
        onChange={setLimit}
        hint={say("21 CFR 112.5: read the agency's current figure")}
      />
      <Shown reading={found}>
        {({ years, figures }) =>
          figures === null ? (
            <p className="soft">{say('No full year of sales yet.')}</p>
          ) : (
            <dl className="facts">
              <dt>{say('Years')}</dt>
              <dd>{years.map((each) => each.year).join(', ')}</dd>
              <dt>{say('To qualified end-users')}</dt>
              <dd>{say('{meanQualified} a year', { meanQualified: reader.money(Math.round(figures.meanQualified_minor)) })}</dd>
              <dt>{say('To others')}</dt>
              <dd>{say('{meanOthers} a year', { meanOthers: reader.money(Math.round(figures.meanOthers_minor)) })}</dd>
              <dt>{say('All')}</dt>
              <dd>
                {reader.money(Math.round(figures.meanAll_minor))}
                {limit === null
                  ? ''
                  : figures.underLimit
                    ? say(', under the limit entered')
                    : say(', not under the limit entered')}
              </dd>
              <dt>{say('More to qualified than to others')}</dt>
              <dd>{figures.mostlyQualified ? say('yes') : say('no')}</dd>
            </dl>
          )
        }
      </Shown>
      <p className="soft small">{say('Arithmetic only: whether the farm is exempt is for the agency to say.')}</p>
    </section>
  );
}
