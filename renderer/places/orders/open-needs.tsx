import type { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
import { sayKnown } from '../../words/known.ts';
import { say, sayWith } from '../../words/say.ts';

type OpenNeed = OutputOf<typeof api.orders.needs>['open'][number];

const whatToDo = {
  material: say('no such material yet: add one at Library, Materials, of the kind seed or start, and choose its crop'),
  density: say('its density as handled is not known: enter it at Library, Materials'),
  'tray-mix': say('the mix that trays are filled with is not in the library: choose it at Farm, Measures'),
  'seeds-per-gram': say('kept by weight: enter how many make a gram at Library, Materials'),
} as const;

/** What is needed and cannot be bought until something is entered for it. */
export function OpenNeeds({ open }: { readonly open: readonly OpenNeed[] }) {
  const reader = useReader();
  if (open.length === 0) return null;
  return (
    <details className="panel" open={open.some((each) => each.lacks !== 'material')}>
      <summary>
        {say('{open, plural, one {One need is} other {# needs are}} not in the list yet: something must be entered first', {
          open: open.length,
        })}
      </summary>
      <ul>
        {open.map((each) => (
          <li key={each.key}>
            {sayWith('{name}, {amount} <b>({reason}): {lacks}.</b>', {
              name: each.name,
              amount: reader.print(each.amount, each.unit, each.unit === 'count' ? 3 : undefined),
              reason: reader.datesIn(sayKnown(each.reason)),
              lacks: whatToDo[each.lacks],
              b: (words) => <span className="soft">{words}</span>,
            })}
          </li>
        ))}
      </ul>
    </details>
  );
}
