import type { SeasonFrame } from '../../planner/season/proposal/build-instance.ts';
import { plannedYield_per_m2 } from '../../planner/season/proposal/crop-figures.ts';
import type { LoadedProposal } from './load-farm-season.ts';

/** What the proposal counts with, crop by crop, with where each figure came from. */
export function figureRows({ counted, farm }: LoadedProposal, frame: SeasonFrame) {
  return counted.map(({ figures, from, plantings }, c) => {
    const demand = frame.instance.crops[c]?.demand ?? [];
    return {
      cropId: figures.needs.cropId,
      name: figures.needs.cropName,
      family: figures.needs.family,
      unit: figures.unit,
      yield_per_m2: figures.yield_per_m2.typical,
      yieldLow_per_m2: figures.yield_per_m2.low,
      yieldHigh_per_m2: figures.yield_per_m2.high,
      planned_per_m2: plannedYield_per_m2(figures.yield_per_m2, farm.caution),
      yieldFrom: from.yield,
      plant_h_per_m2: figures.hours.plant_h_per_m2,
      care_h_per_m2_week: figures.hours.care_h_per_m2_week,
      harvest_h_per_unit: figures.hours.harvest_h_per_unit,
      hoursFrom: from.hours,
      direct_minor_per_m2: figures.direct_minor_per_m2,
      directFrom: from.direct,
      shelf_weeks: figures.shelf_weeks,
      plantings,
      startWeeks: frame.instance.crops[c]?.options.length ?? 0,
      ordered: demand.reduce((sum, week) => sum + week.contract, 0),
      marketMost: demand.reduce((sum, week) => sum + week.tiers.reduce((all, tier) => all + tier.cap, 0), 0),
      price_minor: Math.round(Math.max(0, ...demand.map((week) => week.tiers[0]?.price_minor ?? week.contractPrice_minor))),
    };
  });
}

export type FigureRow = ReturnType<typeof figureRows>[number];
