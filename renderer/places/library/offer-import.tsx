import { useState } from 'react';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api, client } from '../../client/api.ts';
import { type Failure, failureOf } from '../../client/failure.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

type Look = OutputOf<typeof api.suppliers.lookIntoOffers>;

/** A supplier's price list from CSV: looked into whole, each wrong line named, old prices kept beside the new. */
export function OfferImport({ onClose }: { readonly onClose: () => void }) {
  const reader = useReader();
  const bring = useChange(api.suppliers.importOffers);
  const [csv, setCsv] = useState('');
  const [look, setLook] = useState<Look>();
  const [refused, setRefused] = useState<Failure>();
  const open = async (text: string): Promise<void> => {
    setCsv(text);
    setLook(undefined);
    setRefused(undefined);
    if (text.trim() === '') return;
    try {
      setLook(await client.suppliers.lookIntoOffers.query({ csv: text }));
    } catch (error) {
      setRefused(failureOf(error));
    }
  };
  const save = async (): Promise<void> => {
    const done = await bring.run({ csv }, say('{rows} offers brought in.', { rows: look?.rows.length ?? 0 }));
    if (done !== undefined) onClose();
  };
  const failures = [refused, bring.failure].filter((each) => each !== undefined);
  return (
    <Dialog title={say('Bring in a price list from CSV')} onClose={onClose} wide>
      <p className="soft">
        {say(
          'One package a line. Columns: supplier, material, package, holds, price; and where you have them minimum, lead days, weight, priced. “Holds” is a quantity as written: 2 cu ft, 50 lb, 100.',
        )}
      </p>
      <label className="field">
        <span>{say('CSV file')}</span>
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file !== undefined) void file.text().then(open);
          }}
        />
      </label>
      <label className="field">
        <span>{say('or paste it here')}</span>
        <textarea rows={4} value={csv} onChange={(event) => void open(event.target.value)} />
      </label>
      {failures.map((each) => (
        <p className="failed" role="alert" key={each.message}>
          {each.message}
        </p>
      ))}
      {look === undefined ? null : (
        <div className="stack">
          {look.unread.length === 0 ? null : (
            <p className="soft">{say('Columns not read: {unread}.', { unread: look.unread.join(', ') })}</p>
          )}
          {look.faults.length === 0 ? null : (
            <div className="failed" role="alert">
              <p>{say('Nothing is brought in while these are not mended:')}</p>
              <ul>
                {look.faults.slice(0, 40).map((fault) => (
                  <li key={`${fault.line} ${fault.column} ${fault.message}`}>
                    {say('Line {line}, {column}: {message}', { line: fault.line, column: fault.column, message: fault.message })}
                  </li>
                ))}
              </ul>
            </div>
          )}
          <table className="lines">
            <thead>
              <tr>
                <th scope="col">{say('Supplier')}</th>
                <th scope="col">{say('Material')}</th>
                <th scope="col">{say('Package')}</th>
                <th scope="col">{say('Holds')}</th>
                <th scope="col">{say('Price')}</th>
                <th scope="col">{say('Until now')}</th>
              </tr>
            </thead>
            <tbody>
              {look.rows.slice(0, 50).map((row) => (
                <tr key={row.line}>
                  <td>{row.supplier}</td>
                  <td>{row.material}</td>
                  <td>{row.name}</td>
                  <td>{reader.print(row.packageAmount, tradeUnit(row.baseUnit))}</td>
                  <td>{reader.money(row.price_minor)}</td>
                  <td>{row.present === null ? say('new') : reader.money(row.present.price_minor)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <div className="row">
            <Button
              weight="main"
              disabled={bring.busy || look.faults.length > 0 || look.rows.length === 0}
              onClick={() => void save()}
            >
              {say('Bring in {rows} offers', { rows: look.rows.length })}
            </Button>
            <Button onClick={onClose}>{say('Cancel')}</Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}
