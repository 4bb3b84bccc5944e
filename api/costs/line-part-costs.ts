import type { FarmDb } from '../../db/file/open-farm.ts';
import { linePartsBetween } from '../../db/repositories/cost-facts.ts';
import type { FarmRow } from '../../db/repositories/farm.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { explainShare } from '../../planner/costs/allocate.ts';
import { explainSeasonCharge, type LastingPart, seasonCharge_minor } from '../../planner/costs/part-charge.ts';
import { roundMoney, splitMoney } from '../../planner/money.ts';
import type { Working } from '../../planner/working.ts';
import type { FedBeds } from './line-charges.ts';

type Span = { readonly start: IsoDate; readonly end: IsoDate };

/** A part of a water line with what it costs in a season, in whole minor units. */
export type LinePartCost = ReturnType<typeof linePartsBetween>[number] & { readonly cost_minor: number };

/** Parts of all lines in a season: those of a line are added up, rounded once, and add up to that. */
export function linePartCosts(db: FarmDb, farm: FarmRow, season: Span): readonly LinePartCost[] {
  return [...Map.groupBy(linePartsBetween(db, season.start, season.end), (part) => part.lineId).values()].flatMap((parts) => {
    const costs = parts.map((part) =>
      seasonCharge_minor(lastingLinePart(part), season, farm.partsMethod, farm.interest_share_per_year),
    );
    const { parts_minor } = splitMoney(roundMoney(costs.reduce((sum, cost) => sum + cost, 0)), costs);
    return parts.map((part, at) => ({ ...part, cost_minor: parts_minor[at] ?? 0 }));
  });
}

/** A part of a line as something that lasts. Nothing is reckoned to be had for it when it comes out. */
export const lastingLinePart = (part: {
  readonly price_minor: number;
  readonly life_years: number;
  readonly from: string;
  readonly until: string | null;
}): LastingPart => ({
  purchase_minor: part.price_minor,
  salvage_minor: 0,
  life_years: part.life_years,
  from: part.from as IsoDate,
  until: part.until as IsoDate | null,
});

/** Working of what a part costs in a season. */
export const explainLinePart = (part: LinePartCost, farm: FarmRow, season: Span): Working =>
  explainSeasonCharge(part.material, lastingLinePart(part), season, farm.partsMethod, farm.interest_share_per_year);

/** Workings of what a bed bears of the parts of the lines that feed it, one a line; they add up to what stands in its row. */
export function explainLineShares(parts: readonly LinePartCost[], fed: FedBeds, bedId: string): readonly Working[] {
  return [...Map.groupBy(parts, (part) => part.lineId)].flatMap(([lineId, of]): readonly Working[] => {
    const beds = fed.get(lineId) ?? [];
    const total_minor = of.reduce((sum, part) => sum + part.cost_minor, 0);
    return beds.flatMap((bed, at): readonly Working[] =>
      bed.bedId !== bedId
        ? []
        : [
            {
              ...explainShare(
                total_minor,
                beds.map((each) => each.weight),
                at,
                '',
              ),
              title: `Parts of ${of[0]?.line ?? ''}`,
              notes: [
                `Shared among ${beds.length} beds by the water each is to get of the line.`,
                ...of.map((part) => `In it: ${part.material}, in since ${part.from}.`),
              ],
            },
          ],
    );
  });
}
