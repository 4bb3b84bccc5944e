import { useState } from 'react';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { fileOf } from './file-address.ts';

type Kind = 'lot' | 'batch' | 'bed';

/** From an input lot, a compost batch or a bed to what was harvested after and who got it. */
export function ForwardPart() {
  const starts = useRead(api.records.starts, undefined);
  const [chosen, setChosen] = useState('');
  const [kind, id] = split(chosen);
  return (
    <section className="panel stack">
      <h2>{say('Forward to buyers')}</h2>
      <Shown reading={starts}>
        {(all) => (
          <label className="field">
            <span className="soft small">{say('From')}</span>
            <select value={chosen} onChange={(event) => setChosen(event.target.value)}>
              <option value="">{say('Choose an input lot, a batch or a bed')}</option>
              <optgroup label={say('Input and seed lots')}>
                {all.lots.map((each) => (
                  <option key={each.id} value={say('lot {each}', { each: each.id })}>
                    {each.code}, {each.name}
                  </option>
                ))}
              </optgroup>
              <optgroup label={say('Compost batches')}>
                {all.batches.map((each) => (
                  <option key={each.id} value={say('batch {each}', { each: each.id })}>
                    {each.code}
                  </option>
                ))}
              </optgroup>
              <optgroup label={say('Beds')}>
                {all.beds.map((each) => (
                  <option key={each.id} value={say('bed {each}', { each: each.id })}>
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
            {say('{lots} lots, {sales} lines of sales{more}.', {
              lots: forward.lots.length,
              sales: forward.sales.length,
              more:
                forward.beds.length === 0 ? '' : say(', beds {beds}', { beds: forward.beds.map((each) => each.bed).join(', ') }),
            })}{' '}
            <a href={fileOf('trace-forward.csv', { kind, id })}>{say('CSV of all')}</a>
          </p>
          <ul>
            {forward.lots.slice(0, SHOWN).map((row) => (
              <li key={row.lot}>
                {row.lot} {row.crop}, {reader.number(row.amount, '', 4)} {row.unit}
                {row.left > 0.005 ? say(', {left} not sold', { left: reader.number(row.left, '', 3) }) : ''}
              </li>
            ))}
          </ul>
          {forward.lots.length > SHOWN ? (
            <p className="soft small">{say('and {lots} more in the CSV.', { lots: forward.lots.length - SHOWN })}</p>
          ) : null}
        </div>
      )}
    </Shown>
  );
}
