import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';

export type Choices = OutputOf<typeof api.harvest.choices>;
export type PlantingChoice = Choices['plantings'][number];
export type HarvestLogRow = OutputOf<typeof api.harvest.log>['rows'][number];
export type LotRow = OutputOf<typeof api.harvest.lots>[number];
export type SaleRow = OutputOf<typeof api.sales.log>[number];
export type HoursRow = OutputOf<typeof api.labour.log>[number];
export type YieldRow = OutputOf<typeof api.harvest.yields>[number];
export type StandingRow = OutputOf<typeof api.sales.standing>[number];
export type PriceRow = OutputOf<typeof api.sales.prices>[number];
