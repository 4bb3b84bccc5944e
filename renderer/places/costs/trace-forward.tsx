import { useState } from 'react';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { fileOf } from './file-address.ts';

type Kind = 'lot' | 'batch' | 'bed';

/** From an input lot, a compost batch or a bed to what was harvested after and who got it. */
export function ForwardPart() {
  const starts = useRead(api.records.starts, undefined);
  const [chosen, setChosen] = useState('');
  const [kind, id] = split(chosen);
  return (
    <section className="panel stack">
      <h2>Forward to buyers</h2>
      <Shown reading={starts}>
        {(all) => (
          <label className="field">
            <span className="soft small">From</span>
            <select value={chosen} onChange={(event) => setChosen(event.target.value)}>
              <option value="">Choose an input lot, a batch or a bed</option>
              <optgroup label="Input and seed lots">
                {all.lots.map((each) => (
                  <option key={each.id} value={`lot ${each.id}`}>
                    {each.code}, {each.name}
                  </option>
                ))}
              </optgroup>
              <optgroup label="Compost batches">
                {all.batches.map((each) => (
                  <option key={each.id} value={`batch ${each.id}`}>
                    {each.code}
                  </option>
                ))}
              </optgroup>
              <optgroup label="Beds">
                {all.beds.map((each) => (
                  <option key={each.id} value={`bed ${each.id}`}>
                    {each.code}
                  </option>
                ))}
              </optgroup>
            </select>
          </label>
        )}
      </Shown>
      {kind === undefined || id === '' ? null : <ForwardList kind={kind} id={id} />}
    </section>
  );
}

function split(chosen: string): readonly [Kind | undefined, string] {
  const at = chosen.indexOf(' ');
  const kind = chosen.slice(0, at);
  return kind === 'lot' || kind === 'batch' || kind === 'bed' ? [kind, chosen.slice(at + 1)] : [undefined, ''];
}

const SHOWN = 40;

function ForwardList({ kind, id }: { readonly kind: Kind; readonly id: string }) {
  const reader = useReader();
  const found = useRead(api.records.traceForward, { kind, id });
  return (
    <Shown reading={found}>
      {(forward) => (
        <div className="stack">
          <p>
            {forward.lots.length} lots, {forward.sales.length} lines of sales
            {forward.beds.length === 0 ? '' : `, beds ${forward.beds.map((each) => each.bed).join(', ')}`}.{' '}
            <a href={fileOf('trace-forward.csv', { kind, id })}>CSV of all</a>
          </p>
          <ul>
            {forward.lots.slice(0, SHOWN).map((row) => (
              <li key={row.lot}>
                {row.lot} {row.crop}, {reader.number(row.amount, '', 4)} {row.unit}
                {row.left > 0.005 ? `, ${reader.number(row.left, '', 3)} not sold` : ''}
              </li>
            ))}
          </ul>
          {forward.lots.length > SHOWN ? <p className="soft small">and {forward.lots.length - SHOWN} more in the CSV.</p> : null}
        </div>
      )}
    </Shown>
  );
}
