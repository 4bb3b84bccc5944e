import { dateOfDay, dayNumber } from '../calendar.ts';
import { checkPlan } from './check-plan.ts';
import type { GrowthClock } from './growth-clock.ts';
import { dayReaching } from './growth-clock.ts';
import type { Timing } from './maturity.ts';
import type { Gap } from './occupancy.ts';
import type { CropNeeds, Finding, PlanBed, PlanPlanting, PlanRules } from './plan.ts';
import { type PlantingDates, plantingDates } from './planting-dates.ts';

export type Candidate = { readonly crop: CropNeeds; readonly timing: Timing; readonly stillWanted: number };

export type Suggestion = {
  readonly cropId: string;
  readonly dates: PlantingDates;
  readonly days: number;
  readonly stillWanted: number;
  readonly findings: readonly Finding[];
};

export type GapInput = {
  readonly bed: PlanBed;
  readonly fromShare: number;
  readonly toShare: number;
  readonly gap: Gap;
  readonly candidates: readonly Candidate[];
  readonly rules: PlanRules;
  readonly clock: GrowthClock;
  /** What else stands in the bed this season, for rotation within it. */
  readonly others: readonly PlanPlanting[];
};

/** How many days the search for a frost-free start may wait within the gap. */
const STEP_DAYS = 7;

/**
 * Crops that fit into a gap of a bed: in the bed at its first day, or as many weeks later as frost asks, and free again
 * before its end, with nothing against them that clashes or is barred. First what is still wanted most, then what fills
 * the gap best, then by name.
 */
export function whatFits(input: GapInput): readonly Suggestion[] {
  const found = input.candidates.flatMap((candidate): Suggestion[] => {
    for (let start = input.gap.from_day; start < input.gap.to_day; start += STEP_DAYS) {
      const ripe = dayReaching(input.clock, start, candidate.timing.toHarvest.likely_days);
      if (ripe === null || ripe + candidate.timing.window_days + candidate.timing.turnover_days > input.gap.to_day) return [];
      const dates = plantingDates({
        timing: candidate.timing,
        anchor: { at: 'in-bed', date: dateOfDay(start) },
        clock: input.clock,
      });
      const findings = findingsOf(input, candidate, dates);
      if (findings.some((each) => each.weight === 'clash' || each.weight === 'barred')) return [];
      if (findings.some((each) => each.code === 'frost-spring' || each.code === 'too-cool')) continue;
      const days = dayNumber(dates.free) - dayNumber(dates.inBed);
      return [{ cropId: candidate.crop.cropId, dates, days, stillWanted: candidate.stillWanted, findings }];
    }
    return [];
  });
  return found.sort((a, b) => b.stillWanted - a.stillWanted || b.days - a.days || (a.cropId < b.cropId ? -1 : 1));
}

const SUGGESTED = 'suggested' as const;

function findingsOf(input: GapInput, candidate: Candidate, dates: PlantingDates): readonly Finding[] {
  const span = { bedId: input.bed.id, fromShare: input.fromShare, toShare: input.toShare, plants: 0, mostPlants: null };
  const planting: PlanPlanting = {
    id: SUGGESTED,
    crop: candidate.crop,
    raised: candidate.timing.method === 'transplant',
    ...dates,
    spans: [span],
  };
  const findings = checkPlan({ beds: [input.bed], plantings: [...input.others, planting], rules: input.rules });
  return findings.filter((each) => each.plantingId === SUGGESTED || each.otherId === SUGGESTED);
}
