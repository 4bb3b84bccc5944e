import { newId } from '../../db/file/new-id.ts';
import type { NewPlanting, NewSpan } from '../../db/repositories/plantings.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { numberOf, wordsOf } from '../../planner/crops/crop-facts.ts';
import { requiredFact } from '../../planner/crops/required-fact.ts';
import { checkPlan } from '../../planner/season/check-plan.ts';
import type { PlanPlanting } from '../../planner/season/plan.ts';
import { seedNeed } from '../../planner/season/seed-need.ts';
import { type CountedSpan, countPlants } from './count-plants.ts';
import { growPlan } from './grow-plan.ts';
import type { LoadedSeason } from './load-season.ts';
import type { GrowEntry, SpanEntry, SuccessionEntry } from './planting-entry.ts';
import { intervalDates } from './succession-dates.ts';

export type MadePlantings = {
  readonly rows: readonly NewPlanting[];
  readonly spans: readonly NewSpan[];
  readonly unplaced: number;
};

/** Sown over need, and emergence outdoors, where the grower has not said. Common practice, no source. */
export const OVERAGE_SHARE = 0.1;
export const FIELD_EMERGENCE_SHARE = 0.8;

/** Cells to sow for a raised planting; null when sown in place or when germination is not known. */
export function cellsFor(loaded: LoadedSeason, entry: GrowEntry, plants: number): number | null {
  if (entry.method !== 'transplant') return null;
  const germination_share = numberOf(loaded.shelf.facts(entry.cropId, entry.varietyId), 'germination_share');
  if (germination_share === null || plants === 0) return null;
  const need = seedNeed({
    plants,
    germination_share,
    emergence_share: 1,
    seedsPerHole: entry.seedsPerHole,
    overage_share: OVERAGE_SHARE,
  });
  return need.stations;
}

/** Rows of a planting, or of each planting of a succession. All pieces of bed of a single planting belong to it. */
export function newPlantings(
  loaded: LoadedSeason,
  entry: GrowEntry,
  pieces: readonly SpanEntry[],
  succession: SuccessionEntry | null,
): MadePlantings {
  if (succession === null) {
    const made = onePlanting(loaded, entry, entry.anchor.date, countPlants(loaded.loadedBeds, pieces, entry), 1);
    return { rows: [made.row], spans: made.spans, unplaced: pieces.length === 0 ? 1 : 0 };
  }
  const counted = countPlants(loaded.loadedBeds, pieces, entry);
  const standing: PlanPlanting[] = [...loaded.plantings];
  const rows: NewPlanting[] = [];
  const spans: NewSpan[] = [];
  let unplaced = 0;
  intervalDates(loaded, entry, succession).forEach((date, at) => {
    const free = counted.find((piece) => fits(loaded, standing, entry, date, piece));
    if (free === undefined) unplaced += 1;
    const made = onePlanting(loaded, entry, date, free === undefined ? [] : [free], at + 1);
    rows.push(made.row);
    spans.push(...made.spans);
    standing.push(made.plan);
  });
  return { rows, spans, unplaced };
}

function fits(
  loaded: LoadedSeason,
  standing: readonly PlanPlanting[],
  entry: GrowEntry,
  date: IsoDate,
  piece: CountedSpan,
): boolean {
  const { plan } = onePlanting(loaded, entry, date, [piece], 1);
  const here = standing.filter((each) => each.spans.some((span) => span.bedId === piece.bedId));
  const findings = checkPlan({ beds: loaded.beds, plantings: [...here, plan], rules: loaded.rules });
  return !findings.some(
    (each) =>
      (each.plantingId === plan.id || each.otherId === plan.id) &&
      (each.code === 'overlap' || each.code === 'rotation-years' || each.code === 'rotation-season'),
  );
}

function onePlanting(loaded: LoadedSeason, entry: GrowEntry, date: IsoDate, pieces: readonly CountedSpan[], number: number) {
  const { dates } = growPlan(loaded, entry, date);
  const facts = loaded.shelf.facts(entry.cropId, entry.varietyId);
  const id = newId<string>();
  const plants = pieces.reduce((sum, piece) => sum + piece.plants, 0);
  const area_m2 = pieces.reduce((sum, piece) => sum + piece.area_m2, 0);
  const yieldOf = (perArea: number | null): number | null => (perArea === null || area_m2 === 0 ? null : perArea * area_m2);
  const typical = numberOf(facts, 'yield_typical_per_m2');
  const row: NewPlanting = {
    id,
    seasonId: loaded.season.id,
    cropId: entry.cropId,
    varietyId: entry.varietyId,
    number,
    method: entry.method,
    datesBy: entry.datesBy,
    sowDate: dates.sow,
    potOnDate: dates.potOn,
    inBedDate: dates.inBed,
    firstHarvestDate: dates.firstHarvest,
    lastHarvestDate: dates.lastHarvest,
    clearDate: dates.free,
    layout: entry.layout,
    inRow_m: entry.inRow_m,
    row_m: entry.row_m,
    margin_m: entry.margin_m ?? entry.inRow_m / 2,
    plants,
    seedsPerHole: entry.seedsPerHole,
    cells: cellsFor(loaded, entry, plants),
    yieldUnit: wordsOf(facts, 'yield_unit') ?? 'kg',
    yieldLow: yieldOf(numberOf(facts, 'yield_low_per_m2') ?? typical),
    yieldTypical: yieldOf(typical),
    yieldHigh: yieldOf(numberOf(facts, 'yield_high_per_m2') ?? typical),
  };
  const plan: PlanPlanting = {
    id,
    crop: loaded.shelf.needs(entry.cropId, entry.varietyId),
    raised: entry.method === 'transplant',
    ...dates,
    spans: pieces.map((piece) => ({ ...piece, mostPlants: piece.plants })),
  };
  return { row, plan, spans: spanRows(id, pieces) };
}

export const spanRows = (plantingId: string, pieces: readonly CountedSpan[]): readonly NewSpan[] =>
  pieces.map(({ bedId, fromShare, toShare, plants }) => ({
    id: newId<string>(),
    plantingId,
    bedId,
    fromShare,
    toShare,
    plants,
  }));

/** Refuses a crop that lacks what planting needs, before anything is made. @throws InputError */
export function requirePlantable(loaded: LoadedSeason, entry: GrowEntry): void {
  const name = loaded.shelf.crop(entry.cropId).name;
  requiredFact(loaded.shelf.facts(entry.cropId, entry.varietyId), 'maturity_min_days', name, 'cropId');
}
