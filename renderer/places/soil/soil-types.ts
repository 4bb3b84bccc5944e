import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';

export type SoilTestRow = OutputOf<typeof api.soilTests.list>[number];
export type BudgetRow = OutputOf<typeof api.feeding.budget>[number];
export type PhRow = OutputOf<typeof api.feeding.ph>[number];
export type FeedingPlanView = OutputOf<typeof api.feeding.plan>;
export type FeedingChoice = FeedingPlanView['materials'][number];
export type DoseRow = OutputOf<typeof api.applications.planned>[number];
export type LogRow = OutputOf<typeof api.applications.log>[number];
export type HeapRow = OutputOf<typeof api.compost.batches>[number];
export type TeaRow = OutputOf<typeof api.compost.tea>[number];
export type Feedstock = OutputOf<typeof api.compost.feedstocks>[number];
