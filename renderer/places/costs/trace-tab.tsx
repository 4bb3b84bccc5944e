import { useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { TextField } from '../../fields/text-field.tsx';
import type { TabHead } from '../orders/tab-head.ts';
import { amountText } from './amount-text.ts';
import { fileOf } from './file-address.ts';
import { ForwardPart } from './trace-forward.tsx';

/** From a sold lot back to bed, planting, inputs and water; from an input lot, a batch or a bed forward to sales. */
export function TraceTab({ tabs }: TabHead) {
  const [lot, setLot] = useQueryValue('lot');
  const [part, setPart] = useState('');
  const lots = useRead(api.records.lotsLike, { part });
  return (
    <Page title="Costs" lead="One step back, one step forward, each as a sheet that can be sorted." tabs={tabs}>
      <div className="trace-columns">
        <section className="panel stack">
          <h2>Back from a lot</h2>
          <TextField label="Lot code, or a part of it" value={part} onChange={setPart} placeholder="LETTU-2026164-B14" />
          <Shown reading={lots}>
            {(found) => (
              <ul className="lot-list">
                {found.slice(0, 12).map((each) => (
                  <li key={each.code}>
                    <button
                      type="button"
                      className="button"
                      data-weight="quiet"
                      onClick={() => setLot(each.code)}
                      aria-pressed={lot === each.code}
                    >
                      {each.code} {each.crop}
                    </button>
                  </li>
                ))}
              </ul>
            )}
          </Shown>
        </section>
        <ForwardPart />
      </div>
      {lot === undefined ? null : <BackPart code={lot} />}
      <p className="soft small">
        This log helps you keep the facts. Whether they satisfy a law or a certificate is for your certifier, your state's
        produce-safety programme or the agency to say; read the current rule.
      </p>
    </Page>
  );
}

type Back = OutputOf<typeof api.records.traceBack>;

function BackPart({ code }: { readonly code: string }) {
  const found = useRead(api.records.traceBack, { code });
  return (
    <section className="panel stack" aria-label={`Lot ${code}`}>
      <header className="row spread">
        <h2>Lot {code}</h2>
        <a className="button" href={fileOf('trace-back.csv', { lot: code })}>
          CSV
        </a>
      </header>
      <Shown reading={found}>{(back) => <BackList back={back} />}</Shown>
    </section>
  );
}

function BackList({ back }: { readonly back: Back }) {
  const reader = useReader();
  return (
    <dl className="facts">
      <dt>Harvested</dt>
      <dd>
        {back.harvests.map((row) => (
          <p key={row.harvestId}>
            {reader.date(row.date)}: {amountText(row.amount, row.unit, reader)} of {row.crop} {row.number} {row.variety ?? ''}{' '}
            from {row.bed ?? 'no single bed'}
            {row.picker === '' ? '' : `, by ${row.picker}`}, in the bed since {reader.date(row.inBed)}
            {row.seedLot === null ? '' : `, seed lot ${row.seedLot}`}
          </p>
        ))}
      </dd>
      <dt>Beds</dt>
      <dd>{back.beds.join(', ') || '–'}</dd>
      <dt>Put on since {reader.date(back.since)}</dt>
      <dd>
        {back.inputs.length + back.tea.length === 0 ? 'nothing entered' : null}
        {back.inputs.map((row) => (
          <p key={`${row.date} ${row.bed} ${row.material}`}>
            {reader.date(row.date)}: {row.material}, {reader.print(row.amount_kg, 'kg')} on {row.bed}
            {row.lot === null ? '' : `, lot ${row.lot}`}
            {row.who === '' ? '' : `, by ${row.who}`}
          </p>
        ))}
        {back.tea.map((row) => (
          <p key={`${row.date} ${row.tea} ${row.bed}`}>
            {reader.date(row.date)}: tea {row.tea} of compost {row.compost ?? 'unknown'} on {row.bed}, water {row.water}
          </p>
        ))}
      </dd>
      <dt>Water</dt>
      <dd>
        {back.water.lines.length === 0 ? 'by hand, or no line entered' : null}
        {[...new Set(back.water.lines.map((row) => `${row.line}, from ${row.source} water, ${row.kind}`))].map((line) => (
          <p key={line}>{line}</p>
        ))}
      </dd>
      <dt>Went to</dt>
      <dd>
        {back.sales.length === 0 ? 'not sold yet' : null}
        {back.sales.map((row) => (
          <p key={`${row.date} ${row.outlet} ${row.documentNumber} ${row.amount}`}>
            {reader.date(row.date)}: {amountText(row.amount, row.unit, reader)} {row.outcome} to {row.outlet}
            {row.buyer === '' ? '' : `, ${row.buyer}`} {row.documentNumber}
          </p>
        ))}
      </dd>
    </dl>
  );
}
