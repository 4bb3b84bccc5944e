import { useState } from 'react';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { say, sayWith } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { amountText, priceText } from './amount-text.ts';
import { Tornado } from './tornado.tsx';

const ties = [
  { value: '0', text: say('Yield and price are independent') },
  { value: '-0.5', text: say('A good yield lowers the price somewhat') },
  { value: '-1', text: say('A good yield lowers the price') },
] as const;

/** A crop's break-even, how likely it covers its cost, and what matters most. */
export function StandSheet(props: { readonly seasonId: string; readonly cropId: string; readonly onClose: () => void }) {
  const reader = useReader();
  const [tie, setTie] = useState<(typeof ties)[number]['value']>('0');
  const stand = useRead(api.costs.stand, { seasonId: props.seasonId, cropId: props.cropId, correlation: Number(tie) });
  return (
    <Sheet title={stand.state === 'ready' ? stand.data.crop : say('Crop')} onClose={props.onClose}>
      <Shown reading={stand}>
        {(found) => (
          <>
            <dl className="facts">
              <dt>{say('Sold')}</dt>
              <dd>{amountText(found.sold, found.unit, reader)}</dd>
              <dt>{say('Cost in all')}</dt>
              <dd>{reader.money(found.cost_minor)}</dd>
              <dt>{say('Break-even price')}</dt>
              <dd>
                {found.breakEvenPrice_minor === null
                  ? say('nothing to share the cost over')
                  : priceText(found.breakEvenPrice_minor, found.unit, reader)}
              </dd>
              <dt>{say('Over direct cost alone')}</dt>
              <dd>{found.shortRunPrice_minor === null ? '–' : priceText(found.shortRunPrice_minor, found.unit, reader)}</dd>
              <dt>{say('Break-even yield')}</dt>
              <dd>
                {found.breakEvenYield.state === 'found'
                  ? say('{amount} at {price}', {
                      amount: amountText(found.breakEvenYield.amount, found.unit, reader),
                      price: priceText(found.price_minor, found.unit, reader),
                    })
                  : say('none: {because}', { because: found.breakEvenYield.because })}
              </dd>
            </dl>
            <section className="stack">
              <h3>{say('Chance of covering its cost')}</h3>
              <p>
                {sayWith('{figure} of seasons like this one; the margin lies between {p10} and {p90} in eight of ten.', {
                  figure: <Figure of={found.chanceWorking} digits={2} />,
                  p10: reader.money(Math.round(found.chance.p10_minor)),
                  p90: reader.money(Math.round(found.chance.p90_minor)),
                })}
              </p>
              <ChoiceField label={say('Yield and price')} value={tie} choices={ties} onChange={setTie} />
            </section>
            <section className="stack">
              <Tornado bars={found.tornado} />
            </section>
            <section className="stack">
              <h3>{say('Margin by yield and price')}</h3>
              <RangingTable found={found} />
              <p className="soft small">
                {say(
                  'Low, usual and high of your plan and of the prices you sold at. Packing and the wages of picking follow the yield; the other costs stay.',
                )}
              </p>
            </section>
          </>
        )}
      </Shown>
    </Sheet>
  );
}

const ends = ['low', 'usual', 'high'] as const;

function RangingTable({ found }: { readonly found: OutputOf<typeof api.costs.stand> }) {
  const reader = useReader();
  const { amounts, prices_minor, net_minor } = found.ranging;
  return (
    <table className="ranging">
      <thead>
        <tr>
          <th scope="col">{say('Sold')}</th>
          {ends.map((end, at) => (
            <th scope="col" key={end}>
              {priceText(prices_minor[at] ?? 0, found.unit, reader)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {ends.map((row, at) => (
          <tr key={row}>
            <th scope="row">{amountText(amounts[at] ?? 0, found.unit, reader)}</th>
            {ends.map((end, n) => {
              const net = net_minor[at]?.[n] ?? 0;
              return (
                <td key={end} data-loss={net < 0 ? '' : undefined}>
                  {reader.money(Math.round(net))}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
