import type { LeastCost } from '../../../planner/orders/least-cost.ts';
import { api } from '../../client/api.ts';
import type { Failure } from '../../client/failure.ts';
import { useChange } from '../../client/use-change.ts';
import { useJob } from '../../client/use-job.ts';
import type { InputOf } from '../../client/use-read.ts';

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
  const begin = useChange(api.orders.optimise);
  const { job, start, stop } = useJob<LeastCost>();
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
