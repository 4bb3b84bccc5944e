import type { FarmDb } from '../../db/file/open-farm.ts';
import { type ProposalRecord, proposalOfId } from '../../db/repositories/proposals.ts';
import { evaluatePlan } from '../../planner/season/optimise/evaluate.ts';
import { presentInstance, type SeasonFrame } from '../../planner/season/proposal/build-instance.ts';
import { comparePlans, freeSpans, type PlanMove, type ProposedPlanting } from '../../planner/season/proposal/compare-plans.ts';
import type { FarmSeason, PresentPlanting } from '../../planner/season/proposal/farm-season.ts';
import { bedWeeksOf_m2, figuresOfPlan, type PlanFigures } from '../../planner/season/proposal/figures-of-plan.ts';
import { Refusal } from '../errors.ts';
import type { ProposeResult } from '../jobs/season/propose.ts';

/** What is kept of a proposal in the farm file. */
export type KeptResult = ProposeResult & {
  readonly weeks: readonly string[];
  readonly zoneNames: readonly string[];
  readonly crops: readonly { readonly cropId: string; readonly name: string; readonly unit: string }[];
};

export type KeptProposal = { readonly record: ProposalRecord; readonly result: KeptResult };

/** @throws Refusal when it is gone */
export function keptProposal(db: FarmDb, proposalId: string): KeptProposal {
  const record = proposalOfId(db, proposalId);
  if (record === undefined) throw new Refusal({ code: 'not-found', what: 'proposal' });
  // The column holds what this program wrote there and nothing else.
  return { record, result: record.result as KeptResult };
}

/** The present plan's figures by the same measures as a proposal's. */
export function presentFigures(farm: FarmSeason, frame: SeasonFrame, plantings: readonly PresentPlanting[]): PlanFigures {
  const instance = presentInstance(farm, frame, plantings);
  return figuresOfPlan(instance, evaluatePlan(instance, []), bedWeeksOf_m2(plantings, farm.beds));
}

/** What the present plan would be with a proposal taken over on the chosen beds alone. */
export function planWithBeds(
  farm: FarmSeason,
  proposed: readonly ProposedPlanting[],
  bedIds: ReadonlySet<string>,
): PresentPlanting[] {
  const kept = farm.plantings.flatMap((planting): PresentPlanting[] => {
    if (!planting.isFree) return [planting];
    const spans = planting.spans.filter(({ bedId }) => !bedIds.has(bedId));
    return spans.length === 0 ? [] : [{ ...planting, spans }];
  });
  const cropOf = new Map(farm.crops.map((crop) => [crop.needs.cropId, crop]));
  const taken = proposed.flatMap((each): PresentPlanting[] => {
    const crop = cropOf.get(each.cropId);
    if (crop === undefined || !bedIds.has(each.bedId)) return [];
    const { bedId, fromShare, toShare } = each;
    return [
      {
        id: each.key,
        crop: crop.needs,
        raised: crop.timing.method === 'transplant',
        ...each.dates,
        spans: [{ bedId, fromShare, toShare, plants: 0, mostPlants: null }],
        isFree: true,
      },
    ];
  });
  return [...kept, ...taken];
}

/** What a proposal does to the present plan on the beds it knows. */
export const movesOf = (farm: FarmSeason, proposed: readonly ProposedPlanting[]): readonly PlanMove[] =>
  comparePlans(freeSpans(farm.plantings), proposed);
