import type { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';

type OpenNeed = OutputOf<typeof api.orders.needs>['open'][number];

const whatToDo = {
  material: 'no such material yet: add one at Library, Materials, of the kind seed or start, and choose its crop',
  density: 'its density as handled is not known: enter it at Library, Materials',
  'seeds-per-gram': 'kept by weight: enter how many make a gram at Library, Materials',
} as const;

/** What is needed and cannot be bought until something is entered for it. */
export function OpenNeeds({ open }: { readonly open: readonly OpenNeed[] }) {
  const reader = useReader();
  if (open.length === 0) return null;
  return (
    <details className="panel" open={open.some((each) => each.lacks !== 'material')}>
      <summary>
        {open.length === 1 ? 'One need is' : `${open.length} needs are`} not in the list yet: something must be entered first
      </summary>
      <ul>
        {open.map((each) => (
          <li key={each.key}>
            {each.name}, {each.unit === 'count' ? reader.print(each.amount, 'count', 3) : reader.print(each.amount, each.unit)}{' '}
            <span className="soft">
              ({each.reason}): {whatToDo[each.lacks]}.
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
