import { useReader } from '../../../client/reader.tsx';
import { say } from '../../../words/say.ts';
import type { ProposalView } from './proposal-types.ts';
import { remedyText, shortOrderText } from './short-words.ts';

/** Standing orders that the proposal does not meet, with the facts, and what would help. */
export function ShortOrders({ view }: { readonly view: ProposalView }) {
  const { result } = view;
  const reader = useReader();
  if (result.unmet.length === 0)
    return (
      <section className="panel">
        <h2>{say('Standing orders')}</h2>
        <p>{say('Every standing order is met.')}</p>
      </section>
    );
  const ruled = new Map(view.ruledOut.map((each) => [each.cropId, each]));
  const helps = result.remedies.filter(({ fallsBy }) => fallsBy >= 0.005);
  return (
    <section className="panel stack">
      <h2>{say('Standing orders that fall short')}</h2>
      {result.byChoice_share === null || result.byChoice_share < 0.01 ? null : (
        <p>
          {say(
            '{byChoice} % of the shortfall is left for the sake of the goal: there are beds, hours and water for it, but meeting it would cost more than it brings. The rest no plan can meet.',
            { byChoice: (result.byChoice_share * 100).toFixed(0) },
          )}
        </p>
      )}
      <div className="columns">
        <div>
          <h3>{say('What would help')}</h3>
          {result.remedies.length === 0 ? (
            <p className="soft">{say('This was not looked into, since the search was stopped before.')}</p>
          ) : null}
          {result.remedies.length > 0 && helps.length === 0 ? (
            <p>
              {say('None of these alone: more hours, more water, ten more beds, beds without a history, any bed for any crop.')}
            </p>
          ) : null}
          <ul>
            {helps.map(({ change, fallsBy }) => (
              <li key={change.kind}>{remedyText(change, fallsBy)}</li>
            ))}
          </ul>
          <p className="small soft">
            {say(
              'Each is tried alone, with the orders put before everything else and parts of beds allowed, so whole beds may do a little less.',
            )}
          </p>
        </div>
        <div>
          <h3>{say('Which, and for want of what')}</h3>
          <ul className="short-orders">
            {result.unmet.map((order) => (
              <li key={order.crop}>
                {shortOrderText(
                  order,
                  result.crops[order.crop],
                  result.weeks,
                  reader,
                  ruled.get(result.crops[order.crop]?.cropId ?? ''),
                )}
              </li>
            ))}
          </ul>
        </div>
      </div>
    </section>
  );
}
