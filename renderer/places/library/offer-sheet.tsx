import { useState } from 'react';
import { isHeavyPackage } from '../../../planner/orders/handling-cautions.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { CountField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { OfferRow } from './offer-columns.ts';
import { PriceHistory } from './price-history.tsx';

type Break = { readonly at: number; readonly fromPackages: number | null; readonly price_minor: number | null };

/** One offer: its price breaks, and what it cost on earlier days. */
export function OfferSheet({ offer, onClose }: { readonly offer: OfferRow; readonly onClose: () => void }) {
  const details = useRead(api.suppliers.offer, { offerId: offer.id });
  const reader = useReader();
  return (
    <Sheet title={`${offer.material}, ${offer.name}`} onClose={onClose}>
      <dl className="facts">
        <dt>{say('Supplier')}</dt>
        <dd>{offer.supplier}</dd>
        <dt>{say('Holds')}</dt>
        <dd>{reader.print(offer.packageAmount, tradeUnit(offer.baseUnit))}</dd>
        <dt>{say('Price')}</dt>
        <dd>
          {say('{price} on {pricedDate}', { price: reader.money(offer.price_minor), pricedDate: reader.date(offer.pricedDate) })}
        </dd>
      </dl>
      {isHeavyPackage(offer.packageWeight_kg) ? <Caution id="saturated-weight-lifting" folded /> : null}
      <Shown reading={details}>
        {({ breaks, prices }) => (
          <>
            <BreaksForm key={breaks.map((each) => each.id).join()} offer={offer} breaks={breaks} />
            <section className="stack">
              <h3>{say('Earlier prices')}</h3>
              {prices.length === 0 ? <p className="soft">{say('None kept yet. A new price keeps the one before it.')}</p> : null}
              {prices.length === 0 ? null : (
                <PriceHistory earlier={prices} now={{ date: offer.pricedDate, price_minor: offer.price_minor }} />
              )}
              <dl className="facts">
                {prices.map((each) => (
                  <div key={each.id} className="keys-line">
                    <dt>{reader.date(each.date)}</dt>
                    <dd>{reader.money(each.price_minor)}</dd>
                  </div>
                ))}
              </dl>
            </section>
          </>
        )}
      </Shown>
    </Sheet>
  );
}

function BreaksForm({
  offer,
  breaks,
}: {
  readonly offer: OfferRow;
  readonly breaks: OutputOf<typeof api.suppliers.offer>['breaks'];
}) {
  const save = useChange(api.suppliers.setBreaks);
  const [rows, setRows] = useState<readonly Break[]>(() => breaks.map((each, at) => ({ at, ...each })));
  const set = (at: number, change: Partial<Break>) => setRows(rows.map((row) => (row.at === at ? { ...row, ...change } : row)));
  const whole = rows.every((row) => row.fromPackages !== null && row.price_minor !== null);
  const submit = () =>
    void save.run(
      {
        offerId: offer.id,
        breaks: rows.map((row) => ({ fromPackages: row.fromPackages ?? 0, price_minor: row.price_minor ?? 0 })),
      },
      say('Saved the price breaks.'),
    );
  return (
    <Form label={say('Price breaks')} failure={save.failure} onSave={submit} paths={rows.map((_, at) => `breaks.${at}`)}>
      <h3>{say('Price breaks')}</h3>
      <p className="small soft">{say('From this many packages on, every package costs this.')}</p>
      {rows.map((row, at) => (
        <div className="form-pair" key={row.at}>
          <CountField
            label={say('From packages')}
            path={`breaks.${at}.fromPackages`}
            value={row.fromPackages}
            onChange={(fromPackages) => set(row.at, { fromPackages })}
          />
          <MoneyField
            label={say('Price of one')}
            path={`breaks.${at}.price_minor`}
            value={row.price_minor}
            onChange={(price_minor) => set(row.at, { price_minor })}
          />
          <Button
            weight="quiet"
            icon="bin"
            name={say('Take out break {at}', { at: at + 1 })}
            onClick={() => setRows(rows.filter((each) => each.at !== row.at))}
          />
        </div>
      ))}
      <div className="row">
        <Button
          icon="add"
          onClick={() =>
            setRows([...rows, { at: Math.max(-1, ...rows.map((row) => row.at)) + 1, fromPackages: null, price_minor: null }])
          }
        >
          {say('Add a break')}
        </Button>
        <Button type="submit" weight="main" disabled={save.busy || !whole}>
          {say('Save breaks')}
        </Button>
      </div>
    </Form>
  );
}
