import type { PlantingRecord } from '../../db/repositories/plantings.ts';
import { dayNumber, type IsoDate } from '../../planner/calendar.ts';
import { type KnownFacts, numberOf } from '../../planner/crops/crop-facts.ts';
import { originOfFact } from '../../planner/crops/required-fact.ts';
import { explainHarvestRange, type HarvestRangeInput, harvestRange } from '../../planner/season/harvest-range.ts';
import { harvestByWeek, harvestForm } from '../../planner/season/harvest-spread.ts';
import type { DaysRange } from '../../planner/season/maturity.ts';
import { explainSeedNeed, seedMass_g, seedNeed } from '../../planner/season/seed-need.ts';
import { explainTrays, trayNeed, usualTray } from '../../planner/season/trays.ts';
import { effectiveDates } from './effective-dates.ts';
import type { LoadedSeason } from './load-season.ts';
import { FIELD_EMERGENCE_SHARE, OVERAGE_SHARE } from './new-plantings.ts';
import { heatRuleOf } from './season-clocks.ts';

/** Everything about one planting: dates with their range, seed, trays, harvest by week, plan beside what happened. */
export function plantingSheet(loaded: LoadedSeason, record: PlantingRecord) {
  const facts = loaded.shelf.facts(record.cropId, record.varietyId);
  const crop = loaded.shelf.crop(record.cropId);
  const dates = effectiveDates(record, loaded.clocks, facts);
  const rangeInput = rangeInputOf(loaded, facts, dates.inBed, dates.firstHarvest);
  const seed = seedOf(facts, record);
  const weeks =
    record.yieldTypical === null
      ? []
      : harvestByWeek({
          firstHarvest: dates.firstHarvest,
          lastHarvest: dates.lastHarvest,
          form: harvestForm(crop.cropGroup, dayNumber(dates.lastHarvest) - dayNumber(dates.firstHarvest)),
          total: {
            low: record.yieldLow ?? record.yieldTypical,
            typical: record.yieldTypical,
            high: record.yieldHigh ?? record.yieldTypical,
          },
        });
  return {
    plantingId: record.id,
    cropName: crop.name,
    family: crop.family,
    record,
    spans: loaded.spans.get(record.id) ?? [],
    dates,
    range: harvestRange(rangeInput),
    rangeWorking: explainHarvestRange(rangeInput),
    seed,
    weeks,
  };
}

function rangeInputOf(loaded: LoadedSeason, facts: KnownFacts, inBed: IsoDate, likely: IsoDate): HarvestRangeInput {
  const rule = heatRuleOf(facts);
  return {
    inBed,
    likely,
    toHarvest: rangeOfDays(facts, dayNumber(likely) - dayNumber(inBed)),
    normals: rule === null ? null : loaded.clocks.normals(rule),
    years: rule === null ? [] : loaded.clocks.years(rule),
  };
}

/** Early and late as the library's varieties lie about their middle, laid about the planting's own days. */
function rangeOfDays(facts: KnownFacts, likely_days: number): DaysRange {
  const early = numberOf(facts, 'maturity_min_days');
  const late = numberOf(facts, 'maturity_max_days');
  if (early === null || late === null) return { early_days: likely_days, likely_days, late_days: likely_days };
  const half = (late - early) / 2;
  return {
    early_days: Math.max(1, Math.round(likely_days - half)),
    likely_days,
    late_days: Math.round(likely_days + half),
  };
}

function seedOf(facts: KnownFacts, record: PlantingRecord) {
  const germination_share = numberOf(facts, 'germination_share');
  if (record.method === 'set' || germination_share === null || record.plants === 0) return null;
  const raised = record.method === 'transplant';
  const input = {
    plants: record.plants,
    germination_share,
    emergence_share: raised ? 1 : (numberOf(facts, 'field_emergence_share') ?? FIELD_EMERGENCE_SHARE),
    seedsPerHole: record.seedsPerHole,
    overage_share: OVERAGE_SHARE,
  };
  const need = seedNeed(input);
  const perGram = numberOf(facts, 'seeds_per_g');
  const cellsPerTray = numberOf(facts, 'cells_per_tray') ?? usualTray(record.cropId);
  const trayInput = { cells: need.stations, cellsPerTray };
  return {
    seeds: need.seeds,
    stations: need.stations,
    seed_g: perGram === null ? null : seedMass_g(need.seeds, perGram),
    seedWorking: explainSeedNeed(input, originOfFact(facts, 'germination_share')),
    trays: raised ? { cellsPerTray, ...trayNeed(trayInput), working: explainTrays(trayInput) } : null,
  };
}
