import type { IsoDate } from '../../planner/calendar.ts';
import { type KnownFacts, numberOf } from '../../planner/crops/crop-facts.ts';
import { requiredFact } from '../../planner/crops/required-fact.ts';
import { refuse } from '../../planner/errors.ts';
import type { GrowthClock } from '../../planner/season/growth-clock.ts';
import { type Timing, timingOf } from '../../planner/season/maturity.ts';
import { type PlantingDates, type PlantingDatesInput, plantingDates } from '../../planner/season/planting-dates.ts';
import type { LoadedSeason } from './load-season.ts';
import type { GrowEntry } from './planting-entry.ts';
import { heatRuleOf } from './season-clocks.ts';

export type GrowPlan = {
  readonly timing: Timing;
  readonly datesInput: PlantingDatesInput;
  readonly dates: PlantingDates;
};

/**
 * Dates of a planting as it was entered: by days of growing light, or by heat where the crop's heat sum is known.
 * @throws InputError at the field that lacks a figure
 */
export function growPlan(loaded: LoadedSeason, entry: GrowEntry, date: IsoDate = entry.anchor.date): GrowPlan {
  const facts = loaded.shelf.facts(entry.cropId, entry.varietyId);
  const name = loaded.shelf.crop(entry.cropId).name;
  const known = timingOf(facts, entry.method, name);
  const timing = entry.window_days === null ? known : { ...known, window_days: entry.window_days };
  const anchor = { at: entry.anchor.at, date };
  const datesInput: PlantingDatesInput =
    entry.datesBy === 'heat'
      ? { timing, anchor, ...byHeat(loaded, facts, name) }
      : { timing, anchor, clock: entry.datesBy === 'hand' ? loaded.clocks.plain : loaded.clocks.byLight };
  return { timing, datesInput, dates: plantingDates(datesInput) };
}

function byHeat(loaded: LoadedSeason, facts: KnownFacts, name: string): { readonly clock: GrowthClock; readonly need: number } {
  const need = requiredFact(facts, 'gdd_to_harvest_C_days', name, 'datesBy');
  requiredFact(facts, 'gdd_base_C', name, 'datesBy');
  const rule = heatRuleOf(facts);
  const clock = rule === null ? null : loaded.clocks.normals(rule);
  if (clock === null)
    return refuse('datesBy', 'not-known', 'Dates by heat need a year of daily weather: read in a record, or plan by days.');
  return { clock, need };
}

/** Spacing as the crop's facts give it, for an entry that begins: the bed spacing if known, else row and in-row. */
export function usualSpacing(facts: KnownFacts): {
  readonly layout: 'staggered' | 'rows';
  readonly inRow_m: number | null;
  readonly row_m: number | null;
} {
  const intensive = numberOf(facts, 'intensive_m');
  if (intensive !== null) return { layout: 'staggered', inRow_m: intensive, row_m: intensive };
  return { layout: 'rows', inRow_m: numberOf(facts, 'in_row_m'), row_m: numberOf(facts, 'row_m') };
}
