import type { Bought } from '../../../planner/orders/purchase-problem.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Failed } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import type { Failure } from '../../client/failure.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import type { Search } from './use-search.ts';
import { whyCheaper } from './why-cheaper.ts';

/** What the search found: total, how near the best possible it is, what it saves and what cannot be bought. */
export function SearchResult(props: {
  readonly search: Search;
  readonly onKeep: (bought: readonly Bought[]) => void;
  readonly busy: boolean;
  readonly failure: Failure | undefined;
}) {
  const { search } = props;
  const reader = useReader();
  const suppliers = useRead(api.suppliers.list, undefined);
  const materials = useRead(api.materials.list, undefined);
  const nameOf = (id: string): string =>
    suppliers.state === 'ready' ? (suppliers.data.find((each) => each.id === id)?.name ?? id) : id;
  if (search.failure !== undefined) return <Failed message={search.failure.message} failure={search.failure} />;
  const plan = search.found?.plan;
  if (plan === undefined) return search.running ? <p role="status">{search.doing}…</p> : null;
  if (plan.state === 'no-solution') return <Failed message={say('No list was found: the offers and limits leave none.')} />;
  const short = plan.served.filter((each) => each.short > 0);
  const materialOf = (needKey: string): string => {
    const [wanted] = JSON.parse(needKey) as readonly [readonly { readonly materialId: string }[], unknown];
    const id = wanted[0]?.materialId ?? '';
    return materials.state === 'ready' ? (materials.data.find((each) => each.id === id)?.name ?? id) : id;
  };
  const unitOf = (needKey: string): string => {
    const [wanted] = JSON.parse(needKey) as readonly [readonly { readonly materialId: string }[], unknown];
    const id = wanted[0]?.materialId ?? '';
    return materials.state === 'ready' ? tradeUnit(materials.data.find((each) => each.id === id)?.baseUnit ?? '') : '';
  };
  return (
    <div className="stack">
      <dl className="figures">
        <div>
          <dt>{search.running ? say('Best list so far') : say('Cheapest list')}</dt>
          <dd>{reader.money(plan.bill.total_minor)}</dd>
        </div>
        <div>
          <dt>{say('Against the best possible')}</dt>
          <dd>
            {plan.gapShare < 0.0005
              ? say('the best')
              : say('within {gapShare}', { gapShare: reader.print(plan.gapShare, 'share', 2) })}
          </dd>
        </div>
        <div>
          <dt>{say('Suppliers')}</dt>
          <dd>{plan.bill.suppliers.length}</dd>
        </div>
        {search.found?.single === null || search.found?.single === undefined ? null : (
          <div>
            <dt>{say('All from {supplierId}', { supplierId: nameOf(search.found.single.supplierId) })}</dt>
            <dd>{reader.money(search.found.single.total_minor)}</dd>
          </div>
        )}
      </dl>
      <ul className="small">
        {whyCheaper(search.found, plan.bill, nameOf, reader).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {short.length === 0 ? null : (
        <p className="state-mark" data-tone="warn">
          {say('Cannot be bought: {short}. No offer in force covers it.', {
            short: short
              .map((each) =>
                say('{short} of {material}', {
                  short: reader.print(each.short, unitOf(each.needId)),
                  material: materialOf(each.needId),
                }),
              )
              .join('; '),
          })}
        </p>
      )}
      {search.finished ? (
        <div className="row">
          <Button weight="main" disabled={props.busy} onClick={() => props.onKeep(plan.bought)}>
            {say('Keep this list')}
          </Button>
          <span className="soft small">{say('It takes the place of lines that were not bought yet.')}</span>
        </div>
      ) : null}
      {props.failure === undefined ? null : <Failed message={props.failure.message} failure={props.failure} />}
    </div>
  );
}
