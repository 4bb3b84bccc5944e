import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Failed } from '../../app/states.tsx';
import { api, client } from '../../client/api.ts';
import { type Failure, failureOf } from '../../client/failure.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';

type Reading = OutputOf<typeof api.orders.checkOffers>;

const SHOWN = 40;

/** Brings a supplier's price list in from CSV: what would change is shown first; nothing is taken in while a row is wrong. */
export function ImportOffers({ onClose }: { readonly onClose: () => void }) {
  const reader = useReader();
  const take = useChange(api.orders.importOffers);
  const [text, setText] = useState('');
  const [found, setFound] = useState<Reading>();
  const [refused, setRefused] = useState<Failure>();
  const check = async (read: string): Promise<void> => {
    setText(read);
    setRefused(undefined);
    try {
      setFound(await client.orders.checkOffers.query({ text: read }));
    } catch (error) {
      setRefused(failureOf(error));
    }
  };
  const save = async (): Promise<void> => {
    const done = await take.run({ text }, `Took in ${found?.offers.length ?? 0} prices.`);
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title="Import prices" onClose={onClose} wide>
      <p className="soft">
        A CSV file with the columns supplier, material, package, holds, price, and where wanted minimum and date. A package holds
        a quantity with its unit, such as 50 lb or 2 ft3; a price has a point and no thousands sign.
      </p>
      <label className="field">
        <span>CSV file</span>
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file !== undefined) void file.text().then(check);
          }}
        />
      </label>
      {refused === undefined ? null : <Failed message={refused.message} failure={refused} />}
      {take.failure === undefined ? null : <Failed message={take.failure.message} failure={take.failure} />}
      {found === undefined ? null : (
        <>
          {found.faults.length === 0 ? null : (
            <div className="failed" role="alert">
              <p>Nothing can be taken in while these are not mended:</p>
              <ul>
                {found.faults.slice(0, SHOWN).map((fault) => (
                  <li key={`${fault.line} ${fault.column}`}>
                    Line {fault.line}, {fault.column}: {fault.message}
                  </li>
                ))}
              </ul>
            </div>
          )}
          <table className="plain-table">
            <thead>
              <tr>
                <th scope="col">Supplier</th>
                <th scope="col">Material</th>
                <th scope="col">Package</th>
                <th scope="col" className="number">
                  Holds
                </th>
                <th scope="col" className="number">
                  Price
                </th>
                <th scope="col" className="number">
                  Until now
                </th>
              </tr>
            </thead>
            <tbody>
              {found.offers.slice(0, SHOWN).map((offer) => (
                <tr key={offer.line}>
                  <td>{offer.supplier}</td>
                  <td>{offer.material}</td>
                  <td>{offer.name}</td>
                  <td className="number">{reader.print(offer.packageAmount, offer.baseUnit)}</td>
                  <td className="number">{reader.money(offer.price_minor)}</td>
                  <td className="number">{offer.priceBefore_minor === null ? 'new' : reader.money(offer.priceBefore_minor)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {found.offers.length > SHOWN ? <p className="soft small">and {found.offers.length - SHOWN} more.</p> : null}
          <Button
            weight="main"
            disabled={take.busy || found.faults.length > 0 || found.offers.length === 0}
            onClick={() => void save()}
          >
            Take in {found.offers.length} prices
          </Button>
        </>
      )}
    </Dialog>
  );
}
