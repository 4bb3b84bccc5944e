import type { api } from '../../client/api.ts';
import type { InputOf } from '../../client/use-read.ts';
import type { FeedingPlanView } from './soil-types.ts';

export type WishPart = Partial<FeedingPlanView['plan']>;

/** The feeding plan with some wishes changed, as it is sent. */
export function wishesWith(plan: FeedingPlanView['plan'], part: WishPart): InputOf<typeof api.feeding.setPlan> {
  const next = { ...plan, ...part };
  return { ...next, materialIds: [...next.materialIds] };
}
