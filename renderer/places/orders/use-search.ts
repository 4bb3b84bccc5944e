import type { LeastCost } from '../../../planner/orders/least-cost.ts';
import { api } from '../../client/api.ts';
import type { Failure } from '../../client/failure.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useJob } from '../../client/use-job.ts';
import type { InputOf } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

export type Search = {
  readonly running: boolean;
  readonly doing: string;
  /** The best list so far while it runs, then the answer. */
  readonly found: LeastCost | undefined;
  readonly finished: boolean;
  readonly stopped: boolean;
  readonly failure: Failure | undefined;
  readonly start: (wishes: InputOf<typeof api.orders.optimise>) => Promise<void>;
  readonly stop: () => void;
};

/** The search for the cheapest list, as the page sees it. */
export function useSearch(): Search {
  const reader = useReader();
  const begin = useChange(api.orders.optimise);
  const { job, start, stop } = useJob<LeastCost>(({ plan }) =>
    plan.state === 'no-solution'
      ? say('No list was found: the offers and limits leave none.')
      : say('The cheapest list costs {total}, from {suppliers, plural, one {one supplier} other {# suppliers}}.', {
          total: reader.money(plan.bill.total_minor),
          suppliers: plan.bill.suppliers.length,
        }),
  );
  return {
    running: job.state === 'running',
    doing: job.state === 'running' ? job.doing : '',
    found: job.state === 'running' ? job.best : job.state === 'done' ? job.result : undefined,
    finished: job.state === 'done',
    stopped: job.state === 'done' && job.stopped,
    failure: job.state === 'failed' ? job.failure : begin.failure,
    start: (wishes) => start(() => begin.run(wishes)),
    stop,
  };
}
