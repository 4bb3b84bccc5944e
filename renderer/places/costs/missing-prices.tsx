import { useState } from 'react';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { say } from '../../words/say.ts';

type Missing = OutputOf<typeof api.costs.view>['unpriced'][number];

/** What is in the season's costs without a price that anyone knows, with the place to enter it. */
export function MissingPrices({ missing }: { readonly missing: readonly Missing[] }) {
  if (missing.length === 0) return null;
  return (
    <section className="panel stack" aria-label={say('Missing prices')}>
      <p className="state-mark" data-tone="warn">
        {say(
          'No price known for {things, plural, one {# thing} other {# things}} in these costs. They are at least what they say, margins at most.',
          { things: missing.reduce((sum, each) => sum + each.things, 0) },
        )}
      </p>
      {missing.map((each) => (
        <PriceOf key={each.materialId} missing={each} />
      ))}
    </section>
  );
}

function PriceOf({ missing }: { readonly missing: Missing }) {
  const reader = useReader();
  const price = useChange(api.costs.priceUnknown);
  const { amount, offer_minor, material } = missing;
  const [total, setTotal] = useState<number | null>(
    offer_minor === null || amount === null ? null : Math.round(offer_minor * amount),
  );
  if (amount === null) return <p>{say('{material}: its density is not known, enter it at Library, Materials.', { material })}</p>;
  return (
    <Form
      label={say('Price of {material}', { material })}
      failure={price.failure}
      paths={['price_minor']}
      onSave={() =>
        void price.run(
          { materialId: missing.materialId, price_minor: (total ?? Number.NaN) / amount },
          say('{material} has its price.', { material }),
        )
      }
    >
      <div className="row">
        <MoneyField
          label={say('What {amount} of {material} cost', { amount: reader.print(amount, tradeUnit(missing.baseUnit)), material })}
          path="price_minor"
          value={total}
          onChange={setTotal}
          needed
          hint={
            offer_minor === null
              ? say('0 where it cost nothing; what else of it has no price is valued alike')
              : say('At the lowest price on offer; what else of it has no price is valued alike')
          }
        />
        <Button type="submit" disabled={price.busy}>
          {say('Enter the price')}
        </Button>
      </div>
    </Form>
  );
}
