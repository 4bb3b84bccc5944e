import { useState } from 'react';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { AddOffer } from '../library/add-offer.tsx';

/** What the season needs and nobody is known to sell: no list and no sum holds it until a price is entered. */
export function NoPrice({ seasonId }: { readonly seasonId: string }) {
  const unpriced = useRead(api.orders.unpriced, { seasonId });
  const reader = useReader();
  const [adding, setAdding] = useState<string>();
  if (unpriced.state !== 'ready' || unpriced.data.length === 0) return null;
  return (
    <section className="panel stack" aria-label={say('Needs without a price')}>
      <p className="state-mark" data-tone="warn">
        {say(
          'No price known for {needs, plural, one {# need} other {# needs}}. The list and the budget are at least what they say.',
          {
            needs: unpriced.data.reduce((sum, each) => sum + each.needs, 0),
          },
        )}
      </p>
      <ul>
        {unpriced.data.map((each) => (
          <li key={each.materialId}>
            {say('{material}, {amount}', {
              material: each.material,
              amount: reader.print(each.amount, tradeUnit(each.baseUnit)),
            })}{' '}
            <Button
              weight="quiet"
              name={say('Add an offer of {material}', { material: each.material })}
              onClick={() => setAdding(each.materialId)}
            >
              {say('Add an offer…')}
            </Button>
          </li>
        ))}
      </ul>
      <p className="soft small no-print">
        {say('Or allow a stand-in that is on offer, take another supplier, or leave the need out.')}
      </p>
      {adding === undefined ? null : <AddOffer materialId={adding} onClose={() => setAdding(undefined)} />}
    </section>
  );
}

/** A sum of the list or the budget, marked where a price is missing. */
export function useAtLeast(seasonId: string): (text: string) => string {
  const unpriced = useRead(api.orders.unpriced, { seasonId });
  return unpriced.state === 'ready' && unpriced.data.length > 0 ? (text) => say('at least {sum}', { sum: text }) : (text) => text;
}
