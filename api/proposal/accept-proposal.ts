import { newId } from '../../db/file/new-id.ts';
import {
  addPlantings,
  changePlanting,
  type NewPlanting,
  type NewSpan,
  type PlantingRecord,
  removePlantings,
  replaceSpans,
  spansOfSeason,
} from '../../db/repositories/plantings.ts';
import { InputError } from '../../planner/errors.ts';
import { checkPlan, isAccepted } from '../../planner/season/check-plan.ts';
import { comparePlans, freeSpans, type PlanMove, type ProposedPlanting } from '../../planner/season/proposal/compare-plans.ts';
import type { CropFigures } from '../../planner/season/proposal/crop-figures.ts';
import type { Ctx } from '../procedure.ts';
import { type CountedSpan, countPlants } from '../season/count-plants.ts';
import { usualSpacing } from '../season/grow-plan.ts';
import { cellsFor, spanRows } from '../season/new-plantings.ts';
import type { GrowEntry } from '../season/planting-entry.ts';
import { planWithBeds } from './kept-proposal.ts';
import type { LoadedProposal } from './load-farm-season.ts';

export type Accepted = { readonly added: number; readonly changed: number; readonly removed: number };

const USUAL_SPACING_M = 0.3;

/**
 * Writes a proposal over the chosen beds: what was free to change there goes, moves or is changed, and what is new is added.
 * A planting that only moves keeps its row with its variety, notes and series.
 * @throws InputError when the plan has changed since so that it no longer fits
 */
export function acceptProposal(
  ctx: Ctx,
  given: LoadedProposal,
  proposed: readonly ProposedPlanting[],
  bedIds: ReadonlySet<string>,
): Accepted {
  const { farm, loaded } = given;
  refuseClashes(given, proposed, bedIds);
  const chosen = proposed.filter(({ bedId }) => bedIds.has(bedId));
  const present = freeSpans(farm.plantings).filter(({ bedId }) => bedIds.has(bedId));
  const moves = comparePlans(present, chosen);
  const records = new Map(loaded.records.map((record) => [record.id, record]));
  const allSpans = Map.groupBy(spansOfSeason(ctx.db, loaded.season.id), (span) => span.plantingId);
  const touched = [...new Set(present.map(({ plantingId }) => plantingId))];
  const stillElsewhere = new Set(touched.filter((id) => (allSpans.get(id) ?? []).some(({ bedId }) => !bedIds.has(bedId))));

  const rows: NewPlanting[] = [];
  const spans: NewSpan[] = [];
  const reused = new Set<string>();
  let changed = 0;
  const likeOf = (move: PlanMove) =>
    move.kind === 'stays' || move.kind === 'shifts' || move.kind === 'moves' ? records.get(move.present.plantingId) : undefined;
  const counted = countedPlants(given, moves, likeOf);
  for (const move of moves) {
    if (move.kind === 'goes') continue;
    const like = likeOf(move);
    const made = rowOf(given, move.proposed, like, counted.get(move.proposed.key) ?? []);
    if (like !== undefined && !stillElsewhere.has(like.id) && !reused.has(like.id)) {
      reused.add(like.id);
      if (!changePlanting(ctx.db, like.id, like.revision, made.row))
        throw new Error('A planting changed within one transaction.');
      replaceSpans(ctx.db, like.id, spanRows(like.id, made.spans));
      changed += 1;
    } else {
      const id = newId<string>();
      rows.push({ ...(like === undefined ? {} : copied(like)), ...made.row, id });
      spans.push(...spanRows(id, made.spans));
    }
  }
  for (const id of stillElsewhere)
    replaceSpans(
      ctx.db,
      id,
      (allSpans.get(id) ?? []).filter(({ bedId }) => !bedIds.has(bedId)),
    );
  const removed = removePlantings(
    ctx.db,
    touched.filter((id) => !stillElsewhere.has(id) && !reused.has(id)),
  );
  addPlantings(ctx.db, rows, spans);
  return { added: rows.length, changed, removed };
}

/** Exact plants of every proposed planting. All of one spacing are counted together, so that equal beds are counted once. */
function countedPlants(
  { loaded }: LoadedProposal,
  moves: readonly PlanMove[],
  likeOf: (move: PlanMove) => PlantingRecord | undefined,
): ReadonlyMap<string, readonly CountedSpan[]> {
  const fresh = moves.flatMap((move) =>
    move.kind === 'goes' ? [] : [{ proposed: move.proposed, spacing: spacingFor(loaded, move.proposed.cropId, likeOf(move)) }],
  );
  const counted = new Map<string, readonly CountedSpan[]>();
  for (const alike of Map.groupBy(fresh, ({ spacing }) => JSON.stringify(spacing)).values()) {
    const [first] = alike;
    if (first === undefined) continue;
    const pieces = alike.map(({ proposed: { bedId, fromShare, toShare } }) => ({ bedId, fromShare, toShare }));
    countPlants(loaded.loadedBeds, pieces, first.spacing).forEach((span, at) => {
      const key = alike[at]?.proposed.key;
      if (key !== undefined) counted.set(key, [span]);
    });
  }
  return counted;
}

/** The checker of the board has the last word on the plan as it would be. */
function refuseClashes(
  { farm, loaded }: LoadedProposal,
  proposed: readonly ProposedPlanting[],
  bedIds: ReadonlySet<string>,
): void {
  const plantings = planWithBeds(farm, proposed, bedIds);
  const fresh = new Set(proposed.map(({ key }) => key));
  const findings = checkPlan({ beds: loaded.beds, plantings, rules: loaded.rules }).filter(
    (each) => fresh.has(each.plantingId) || (each.otherId !== null && fresh.has(each.otherId)),
  );
  if (isAccepted(findings)) return;
  const worst = findings.filter(({ weight }) => weight === 'clash' || weight === 'barred');
  throw new InputError(
    worst.slice(0, 20).map(({ code, message }) => ({
      path: 'bedIds',
      code,
      message: `The plan has changed since this proposal was made: ${message} Make a new proposal, or leave this bed out.`,
    })),
  );
}

function rowOf(
  { loaded, farm }: LoadedProposal,
  each: ProposedPlanting,
  like: PlantingRecord | undefined,
  spans: readonly CountedSpan[],
) {
  const crop = farm.crops.find(({ needs }) => needs.cropId === each.cropId);
  if (crop === undefined)
    throw new InputError([{ path: 'bedIds', code: 'no-such-crop', message: 'A crop of this proposal is not planned any more.' }]);
  const spacing = spacingFor(loaded, each.cropId, like);
  const { plants, area_m2 } = sums(spans);
  const { dates } = each;
  const entry: GrowEntry = {
    cropId: each.cropId,
    varietyId: like?.varietyId ?? null,
    method: crop.timing.method,
    anchor: { at: 'in-bed', date: dates.inBed },
    datesBy: 'days',
    window_days: null,
    ...spacing,
    seedsPerHole: like?.seedsPerHole ?? 1,
    cellsPerTray: null,
  };
  return {
    spans,
    row: {
      ...plannedRow(loaded.season.id, each, crop, area_m2),
      ...spacingColumns(spacing),
      price_minor: like?.price_minor ?? bestPrice_minor(crop),
      plants,
      cells: cellsFor(loaded, entry, plants),
    },
  };
}

const sums = (spans: readonly CountedSpan[]) => ({
  plants: spans.reduce((sum, span) => sum + span.plants, 0),
  area_m2: spans.reduce((sum, span) => sum + span.area_m2, 0),
});

function plannedRow(seasonId: string, { cropId, dates }: ProposedPlanting, crop: CropFigures, area_m2: number) {
  return {
    seasonId,
    cropId,
    method: crop.timing.method,
    datesBy: 'days' as const,
    sowDate: dates.sow,
    potOnDate: dates.potOn,
    inBedDate: dates.inBed,
    firstHarvestDate: dates.firstHarvest,
    lastHarvestDate: dates.lastHarvest,
    clearDate: dates.free,
    yieldUnit: crop.unit,
    yieldLow: crop.yield_per_m2.low * area_m2,
    yieldTypical: crop.yield_per_m2.typical * area_m2,
    yieldHigh: crop.yield_per_m2.high * area_m2,
  };
}

function spacingFor(loaded: LoadedProposal['loaded'], cropId: string, like: PlantingRecord | undefined) {
  if (like !== undefined) return { layout: like.layout, inRow_m: like.inRow_m, row_m: like.row_m, margin_m: like.margin_m };
  const usual = usualSpacing(loaded.shelf.facts(cropId));
  const inRow_m = usual.inRow_m ?? USUAL_SPACING_M;
  return { layout: usual.layout, inRow_m, row_m: usual.row_m ?? inRow_m, margin_m: inRow_m / 2 };
}

const spacingColumns = ({ layout, inRow_m, row_m, margin_m }: ReturnType<typeof spacingFor>) => ({
  layout,
  inRow_m,
  row_m,
  margin_m,
});

/** The dearest price anyone pays for it this season; null where nobody has asked. */
const bestPrice_minor = ({ orders }: CropFigures): number | null =>
  orders.length === 0 ? null : Math.round(Math.max(...orders.map(({ price_minor }) => price_minor)));

/** What a further planting takes over from the one it was modelled on. */
const copied = ({ varietyId, seedsPerHole, price_minor, seedOrganic, touchesSoil, notes, successionId }: PlantingRecord) => ({
  varietyId,
  seedsPerHole,
  price_minor,
  seedOrganic,
  touchesSoil,
  notes,
  successionId,
});
