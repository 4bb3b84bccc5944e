import type { Working } from '../working.ts';
import { capitalRecovery_minor_per_year, explainCapitalRecovery } from './capital-recovery.ts';
import { type Asset, explainStraightLine, straightLine_minor_per_year } from './depreciation.ts';

/** How a part's price is spread over its years. One way for the whole farm: adding both would count depreciation twice. */
export type PartsMethod = 'straight-line' | 'capital-recovery';

/** Yearly cost of one part by the farm's method. @throws InputError naming the field */
export function yearlyCost_minor(asset: Asset, method: PartsMethod, interest_share_per_year: number): number {
  return method === 'straight-line'
    ? straightLine_minor_per_year(asset)
    : capitalRecovery_minor_per_year(asset, interest_share_per_year);
}

/** Working of {@link yearlyCost_minor}. @throws InputError naming the field */
export function explainYearlyCost(asset: Asset, method: PartsMethod, interest_share_per_year: number): Working {
  return method === 'straight-line' ? explainStraightLine(asset) : explainCapitalRecovery(asset, interest_share_per_year);
}

/** Yearly cost of a bed as the sum of its parts. @throws InputError naming the field */
export function yearlyCostOfParts_minor(parts: readonly Asset[], method: PartsMethod, interest_share_per_year: number): number {
  return parts.reduce((sum, part) => sum + yearlyCost_minor(part, method, interest_share_per_year), 0);
}
