import { Chart } from '../../charts/chart.tsx';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import { type PricePoint, priceSteps } from './price-steps.ts';

/** What a package cost on each day a price was read, up to the price of now. */
export function PriceHistory({ earlier, now }: { readonly earlier: readonly PricePoint[]; readonly now: PricePoint }) {
  const reader = useReader();
  return (
    <Chart
      title={say('What a package cost')}
      rows={priceSteps(earlier, now)}
      x={{ name: say('Priced on'), text: (each) => reader.date(each.date) }}
      unit="minor"
      series={[{ name: say('Price'), as: 'line', read: (each) => each.price_minor }]}
      height={180}
    />
  );
}
