import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { isStalePrice } from '../../../planner/orders/stale-price.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { SupplierList } from './list-text.ts';
import { PackagesOf } from './packages-of.tsx';

/** One supplier's part of the list: tick while buying, then order what was ticked. One page of print. */
export function SupplierPart({ list, seasonId }: { readonly list: SupplierList; readonly seasonId: string }) {
  const reader = useReader();
  const tick = useChange(api.orders.tick);
  const setPackages = useChange(api.orders.setPackages);
  const order = useChange(api.orders.order);
  const today = useRead(api.soilTests.today, undefined);
  const [documentNumber, setDocument] = useState('');
  const ticked = list.rows.filter((row) => row.ticked).length;
  const buy = () => {
    if (today.state !== 'ready') return;
    void order.run(
      { seasonId, supplierId: list.supplierId, date: today.data.today, documentNumber },
      say('Ordered {ticked} lines from {list}. Receive them at Purchases.', { ticked, list: list.name }),
    );
  };
  return (
    <section className="panel stack supplier-part" aria-label={list.name}>
      <header className="row spread">
        <div>
          <h2>{list.name}</h2>
          <p className="soft small">
            {[
              list.contact,
              list.pickUp ? say('to be picked up') : '',
              list.orderBy === null ? '' : say('order by {orderBy}', { orderBy: reader.date(list.orderBy) }),
            ]
              .filter((part) => part !== '')
              .join(' · ')}
          </p>
        </div>
        <strong className="number">{reader.money(list.total_minor)}</strong>
      </header>
      {today.state === 'ready' && list.orderBy !== null && list.orderBy < today.data.today ? (
        <p className="state-mark" data-tone="warn">
          {say('Something of it is wanted sooner than it can come: order now.')}
        </p>
      ) : null}
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{say('Got')}</th>
            <th scope="col">{say('Material and package')}</th>
            <th scope="col" className="number">
              {say('Packages')}
            </th>
            <th scope="col" className="number">
              {say('Price')}
            </th>
            <th scope="col" className="number">
              {say('Total')}
            </th>
          </tr>
        </thead>
        <tbody>
          {list.rows.map((row) => (
            <tr key={row.shoppingLineId} data-done={row.ticked ? '' : undefined}>
              <td>
                <input
                  type="checkbox"
                  checked={row.ticked}
                  aria-label={say('Got {material}, {offer}', { material: row.material, offer: row.offer })}
                  onChange={(event) => void tick.run({ shoppingLineId: row.shoppingLineId, ticked: event.target.checked })}
                />
              </td>
              <td>
                {row.material}: {row.offer}{' '}
                <Figure
                  value={row.amount}
                  unit={row.baseUnit === 'count' ? '' : tradeUnit(row.baseUnit)}
                  name={`${row.material}, ${row.offer}`}
                  explain={() => client.orders.explainLine.query({ seasonId, shoppingLineId: row.shoppingLineId })}
                />
                <div className="soft small">{reader.datesIn(sayKnown(row.reason))}</div>
                {today.state === 'ready' && isStalePrice(row.pricedDate as IsoDate, today.data.today) ? (
                  <span className="state-mark" data-tone="warn">
                    {say('price of {pricedDate}: ask again', { pricedDate: reader.date(row.pricedDate) })}
                  </span>
                ) : null}
              </td>
              <td className="number">
                <PackagesOf
                  label={say('Packages of {material}, {offer}', { material: row.material, offer: row.offer })}
                  packages={row.packages}
                  onChange={(packages) => setPackages.run({ lines: [{ shoppingLineId: row.shoppingLineId, packages }] })}
                />
              </td>
              <td className="number">{reader.money(row.price_minor)}</td>
              <td className="number">{reader.money(row.total_minor)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td colSpan={4}>{say('Delivery')}</td>
            <td className="number">{reader.money(list.delivery_minor)}</td>
          </tr>
          <tr>
            <td colSpan={4}>{say('Tax')}</td>
            <td className="number">{reader.money(list.tax_minor)}</td>
          </tr>
        </tfoot>
      </table>
      <p className="small">{loadText(list, reader)}</p>
      {list.underMinimum_minor > 0 ? (
        <p className="state-mark" data-tone="warn">
          {say('{underMinimum} short of the least order this supplier takes.', {
            underMinimum: reader.money(list.underMinimum_minor),
          })}
        </p>
      ) : null}
      <Cautions ids={list.rows.flatMap((row) => row.cautions)} folded />
      <div className="row no-print">
        <input
          type="text"
          placeholder={say('Order or invoice number')}
          aria-label={say('Order number at {list}', { list: list.name })}
          value={documentNumber}
          onChange={(event) => setDocument(event.target.value)}
        />
        <Button weight="main" disabled={ticked === 0 || order.busy} onClick={buy}>
          {ticked === list.rows.length ? say('Order all of it') : say('Order the {ticked} ticked', { ticked })}
        </Button>
        {order.failure === undefined ? null : <span role="alert">{order.failure.message}</span>}
      </div>
    </section>
  );
}

/** What is to be carried, in how many journeys, and what of it is not known. */
function loadText({ load }: SupplierList, reader: ReturnType<typeof useReader>): string {
  const parts = [
    say('Load {weight}, {volume}.', {
      weight: reader.print(load.weight_kg, 'kg', 2),
      volume: reader.print(load.volume_L, 'L', 2),
    }),
  ];
  if (load.trips === null) parts.push(say('Enter your vehicle at Farm to see the journeys.'));
  else if (load.by === 'volume')
    parts.push(say('{trips, plural, one {# journey} other {# journeys}} with your vehicle, by volume.', { trips: load.trips }));
  else
    parts.push(say('{trips, plural, one {# journey} other {# journeys}} with your vehicle, by weight.', { trips: load.trips }));
  if (load.unknown > 0)
    parts.push(
      say('Weight or volume of {unknown, plural, one {# line is} other {# lines is}} not known.', { unknown: load.unknown }),
    );
  return parts.join(' ');
}
