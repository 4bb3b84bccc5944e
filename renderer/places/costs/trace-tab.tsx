import { useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
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
    <Page title={say('Costs')} lead={say('One step back, one step forward, each as a sheet that can be sorted.')} tabs={tabs}>
      <div className="trace-columns">
        <section className="panel stack">
          <h2>{say('Back from a lot')}</h2>
          <TextField
            label={say('Lot code, or a part of it')}
            value={part}
            onChange={setPart}
            placeholder={say('LETTU-2026164-B14')}
          />
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
        {say(
          "This log helps you keep the facts. Whether they satisfy a law or a certificate is for your certifier, your state's produce-safety programme or the agency to say; read the current rule.",
        )}
      </p>
    </Page>
  );
}

type Back = OutputOf<typeof api.records.traceBack>;

function BackPart({ code }: { readonly code: string }) {
  const found = useRead(api.records.traceBack, { code });
  return (
    <section className="panel stack" aria-label={say('Lot {code}', { code })}>
      <header className="row spread">
        <h2>{say('Lot {code}', { code })}</h2>
        <a className="button" href={fileOf('trace-back.csv', { lot: code })}>
          {say('CSV')}
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
      <dt>{say('Harvested')}</dt>
      <dd>
        {back.harvests.map((row) => (
          <p key={row.harvestId}>
            {say('{date}: {amount} of {crop} {number} {variety} from {bed}{more}, in the bed since {inBed}{more2}', {
              date: reader.date(row.date),
              amount: amountText(row.amount, row.unit, reader),
              crop: row.crop,
              number: row.number,
              variety: row.variety ?? '',
              bed: row.bed ?? say('no single bed'),
              more: row.picker === '' ? '' : say(', by {picker}', { picker: row.picker }),
              inBed: reader.date(row.inBed),
              more2: row.seedLot === null ? '' : say(', seed lot {seedLot}', { seedLot: row.seedLot }),
            })}
          </p>
        ))}
      </dd>
      <dt>{say('Beds')}</dt>
      <dd>{back.beds.join(', ') || '–'}</dd>
      <dt>{say('Put on since {since}', { since: reader.date(back.since) })}</dt>
      <dd>
        {back.inputs.length + back.tea.length === 0 ? say('nothing entered') : null}
        {back.inputs.map((row) => (
          <p key={`${row.date} ${row.bed} ${row.material}`}>
            {say('{date}: {material}, {amount} on {bed}{more}{more2}', {
              date: reader.date(row.date),
              material: row.material,
              amount: reader.print(row.amount_kg, 'kg'),
              bed: row.bed,
              more: row.lot === null ? '' : say(', lot {lot}', { lot: row.lot }),
              more2: row.who === '' ? '' : say(', by {who}', { who: row.who }),
            })}
          </p>
        ))}
        {back.tea.map((row) => (
          <p key={`${row.date} ${row.tea} ${row.bed}`}>
            {say('{date}: tea {tea} of compost {compost} on {bed}, water {water}', {
              date: reader.date(row.date),
              tea: row.tea,
              compost: row.compost ?? say('unknown'),
              bed: row.bed,
              water: row.water,
            })}
          </p>
        ))}
      </dd>
      <dt>{say('Water')}</dt>
      <dd>
        {back.water.lines.length === 0 ? say('by hand, or no line entered') : null}
        {[
          ...new Set(
            back.water.lines.map((row) =>
              say('{line}, from {source} water, {kind}', { line: row.line, source: row.source, kind: row.kind }),
            ),
          ),
        ].map((line) => (
          <p key={line}>{line}</p>
        ))}
      </dd>
      <dt>{say('Went to')}</dt>
      <dd>
        {back.sales.length === 0 ? say('not sold yet') : null}
        {back.sales.map((row) => (
          <p key={`${row.date} ${row.outlet} ${row.documentNumber} ${row.amount}`}>
            {say('{date}: {amount} {outcome} to {outlet}{more} {documentNumber}', {
              date: reader.date(row.date),
              amount: amountText(row.amount, row.unit, reader),
              outcome: row.outcome,
              outlet: row.outlet,
              more: row.buyer === '' ? '' : `, ${row.buyer}`,
              documentNumber: row.documentNumber,
            })}
          </p>
        ))}
      </dd>
    </dl>
  );
}
