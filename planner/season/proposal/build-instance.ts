import { dayNumber, type IsoDate, yearOf } from '../../calendar.ts';
import { InputError } from '../../errors.ts';
import { frostFindings } from '../frost-findings.ts';
import type {
  FixedSpan,
  PlantingOption,
  PlantingUnit,
  SeasonCrop,
  SeasonInstance,
  StandingLoad,
  WeekDemand,
} from '../optimise/instance.ts';
import type { PlanPlanting } from '../plan.ts';
import { type PlantingDates, plantingDates } from '../planting-dates.ts';
import { gapOfFamily_years, mayReturn } from '../rotation.ts';
import type { CropFigures, Order } from './crop-figures.ts';
import type { FarmSeason, PresentPlanting, SeasonBed } from './farm-season.ts';
import { optionOfDates, withinSeason } from './option-of-dates.ts';
import { mondayDate, mondayOfWeek, type WeekGrid, weekFrom, weekGrid, weekOfDay } from './week-grid.ts';

/** A piece of a bed that is planted alone. */
export type UnitPiece = {
  readonly bedId: string;
  readonly fromShare: number;
  readonly toShare: number;
  readonly area_m2: number;
};

export type BuiltSeason = {
  readonly instance: SeasonInstance;
  readonly grid: WeekGrid;
  /** The piece of each unit, in the instance's order. */
  readonly pieces: readonly UnitPiece[];
  /** The dates of each crop's options, in the instance's order. */
  readonly dates: readonly (readonly PlantingDates[])[];
  /** Crops of which nothing can be proposed, with the reason. */
  readonly leftOut: readonly { readonly cropId: string; readonly because: string }[];
};

const TOUCHING = 1e-9;

/** What a season to be optimised is whatever stands in its beds: its weeks, crops with their options, and limits. */
export type SeasonFrame = Pick<BuiltSeason, 'grid' | 'dates' | 'leftOut'> & {
  readonly instance: Omit<SeasonInstance, 'units' | 'standing'>;
};

/** A farm's season without its beds and plantings. */
export type SeasonTerms = Omit<FarmSeason, 'beds' | 'plantings'>;

/** The weeks, crops and limits of a season, which beds and plantings do not change. */
export function seasonFrame(terms: SeasonTerms): SeasonFrame {
  const grid = weekGrid(terms.rules.start, terms.rules.end);
  const families = familiesOf(terms);
  const leftOut: { cropId: string; because: string }[] = [];
  const dates: PlantingDates[][] = [];
  const crops = terms.crops.map((crop): SeasonCrop => {
    const { options, optionDates, because } = optionsOfCrop(terms, grid, crop);
    if (because !== '') leftOut.push({ cropId: crop.needs.cropId, because });
    dates.push(optionDates);
    return {
      name: crop.needs.cropName,
      family: families.indexOf(crop.needs.family),
      shelf_weeks: crop.shelf_weeks,
      overhead_minor: crop.overhead_minor,
      steadiness_minor: 0,
      options,
      demand: demandByWeek(grid, crop.orders),
    };
  });
  const all = (value: number) => Array.from({ length: grid.weeks }, () => value);
  return {
    grid,
    dates,
    leftOut,
    instance: {
      weeks: grid.weeks,
      families: families.map((name) => ({
        name,
        inSeason: gapOf(terms, name) === 0 ? 'free' : terms.rules.mayRepeatCrop ? 'one-crop' : 'once',
      })),
      crops,
      wage_minor_per_h: terms.wage_minor_per_h,
      labourCap_h: all(terms.labour_h_per_week),
      overtimeMost_h: terms.overtimeMost_h,
      overtimePremium_minor_per_h: terms.overtimePremium_minor_per_h,
      waterCap_L: terms.water_L_per_week.map(all),
      benchCap_m2: all(terms.bench_m2),
      mostCrops: terms.mostCrops ?? crops.length,
    },
  };
}

const familiesOf = (terms: SeasonTerms): readonly string[] => [...new Set(terms.crops.map(({ needs }) => needs.family))];

/** A farm's season as a season to be optimised, with what stands anyway taken as given. */
export function buildInstance(farm: FarmSeason, frame: SeasonFrame = seasonFrame(farm)): BuiltSeason {
  const { grid, dates, leftOut } = frame;
  const families = familiesOf(farm);
  const standing = farm.plantings.filter(({ isFree }) => !isFree);
  const standingOn = byBed(standing);
  const pieces = farm.beds.flatMap((bed) => piecesOfBed(bed, standingOn.get(bed.id) ?? []));
  const parts = partsOf(pieces);
  const bedById = new Map(farm.beds.map((bed) => [bed.id, bed]));
  return {
    grid,
    pieces,
    dates,
    leftOut,
    instance: {
      ...frame.instance,
      units: pieces.map((piece, at) =>
        unitOf(farm, grid, families, standingOn.get(piece.bedId) ?? [], bedById.get(piece.bedId), piece, parts[at] ?? 0),
      ),
      standing: loadOf(farm, grid, standing, farm.zoneNames.length, bedById),
    },
  };
}

/** The present plan as it stands, as a season with nothing left to propose: for its margin, hours, water and orders. */
export function presentInstance(
  farm: FarmSeason,
  { grid, instance }: Pick<SeasonFrame, 'grid' | 'instance'>,
  plantings: readonly PresentPlanting[],
): SeasonInstance {
  const bedById = new Map(farm.beds.map((bed) => [bed.id, bed]));
  return { ...instance, units: [], standing: loadOf(farm, grid, plantings, farm.zoneNames.length, bedById) };
}

const gapOf = (farm: Pick<FarmSeason, 'rules'>, family: string): number =>
  gapOfFamily_years(family, new Map(Object.entries(farm.rules.gapYears)));

/** Every week in which the crop can go in and be free again within the season, that frost and today leave open. */
function optionsOfCrop(farm: SeasonTerms, grid: WeekGrid, crop: CropFigures) {
  const options: PlantingOption[] = [];
  const optionDates: PlantingDates[] = [];
  let frosty = 0;
  let because = crop.orders.length === 0 ? 'Nobody has asked for it this season.' : '';
  const earliest = Math.max(weekFrom(grid, dayNumber(farm.today)), weekFrom(grid, dayNumber(farm.rules.start)));
  for (let week = earliest; week < grid.weeks; week++) {
    const dates = datesFrom(farm, crop, mondayDate(grid, week));
    if (dates === null || dayNumber(dates.free) > mondayOfWeek(grid, grid.weeks)) continue;
    if (dates.sow !== null && dates.sow < farm.today) continue;
    if (mayFreeze(farm, crop, dates)) {
      frosty += 1;
      continue;
    }
    options.push(optionOfDates(crop, dates, grid, farm.caution, farm.waterUse));
    optionDates.push(dates);
  }
  if (because === '' && options.length === 0)
    because = frosty > 0 ? 'Frost leaves no week for it in this season.' : 'It cannot ripen and be cleared within the season.';
  return { options, optionDates, because };
}

function datesFrom(farm: SeasonTerms, crop: CropFigures, inBed: IsoDate): PlantingDates | null {
  try {
    return plantingDates({ timing: crop.timing, anchor: { at: 'in-bed', date: inBed }, clock: farm.clock });
  } catch (error) {
    // From a late date a crop may never ripen on the clock: no option, and no fault of the reader's.
    if (error instanceof InputError && error.faults.every(({ code }) => code === 'never-ripe')) return null;
    throw error;
  }
}

function mayFreeze(farm: SeasonTerms, crop: CropFigures, dates: PlantingDates): boolean {
  const planting: PlanPlanting = { id: '', crop: crop.needs, raised: crop.timing.method === 'transplant', ...dates, spans: [] };
  return frostFindings(planting, new Map(), farm.rules).length > 0;
}

/** What can be sold in each week: standing orders together, then markets from dear to cheap. A week that an order only touches counts in full. */
function demandByWeek(grid: WeekGrid, orders: readonly Order[]): WeekDemand[] {
  return Array.from({ length: grid.weeks }, (_, week) => {
    const from = mondayOfWeek(grid, week);
    const here = orders.filter((order) => dayNumber(order.from) < from + 7 && dayNumber(order.to) >= from);
    const fixed = here.filter(({ kind }) => kind === 'standing');
    const contract = fixed.reduce((sum, { perWeek }) => sum + perWeek, 0);
    const mean = (pick: (order: Order) => number) =>
      contract > 0 ? fixed.reduce((sum, order) => sum + order.perWeek * pick(order), 0) / contract : 0;
    return {
      week,
      contract,
      contractPrice_minor: mean(({ price_minor }) => price_minor),
      penalty_minor: mean(({ penalty_minor }) => penalty_minor),
      tiers: here
        .filter(({ kind }) => kind === 'market')
        .sort((a, b) => b.price_minor - a.price_minor)
        .map(({ perWeek, price_minor }) => ({ cap: perWeek, price_minor })),
    };
  }).filter(({ contract, tiers }) => contract > 0 || tiers.length > 0);
}

/** Plantings by the beds they stand on, each once for a bed. */
function byBed(plantings: readonly PresentPlanting[]): ReadonlyMap<string, readonly PresentPlanting[]> {
  const found = new Map<string, PresentPlanting[]>();
  for (const planting of plantings)
    for (const bedId of new Set(planting.spans.map((span) => span.bedId))) {
      const here = found.get(bedId);
      if (here === undefined) found.set(bedId, [planting]);
      else here.push(planting);
    }
  return found;
}

/** Which part of its bed each piece is, from 0. */
function partsOf(pieces: readonly UnitPiece[]): readonly number[] {
  const seen = new Map<string, number>();
  return pieces.map(({ bedId }) => {
    const part = seen.get(bedId) ?? 0;
    seen.set(bedId, part + 1);
    return part;
  });
}

/** A bed cut where it is split and where plantings that stand anyway begin and end. */
function piecesOfBed(bed: SeasonBed, standing: readonly PresentPlanting[]): UnitPiece[] {
  const cuts = new Set([0, 1, ...bed.splitAt]);
  for (const planting of standing)
    for (const span of planting.spans) if (span.bedId === bed.id) for (const at of [span.fromShare, span.toShare]) cuts.add(at);
  const at = [...cuts].filter((cut) => cut >= 0 && cut <= 1).sort((a, b) => a - b);
  return at.flatMap((fromShare, k) => {
    const toShare = at[k + 1];
    if (toShare === undefined || toShare - fromShare < 1e-6) return [];
    return [{ bedId: bed.id, fromShare, toShare, area_m2: bed.area_m2 * (toShare - fromShare) }];
  });
}

function unitOf(
  farm: FarmSeason,
  grid: WeekGrid,
  families: readonly string[],
  standing: readonly PresentPlanting[],
  bed: SeasonBed | undefined,
  piece: UnitPiece,
  part: number,
): PlantingUnit {
  if (bed === undefined) throw new RangeError(`There is no bed ${piece.bedId}.`);
  const year = yearOf(farm.rules.start);
  return {
    id: `${bed.code} ${Math.round(piece.fromShare * 100)}-${Math.round(piece.toShare * 100)}`,
    bedId: bed.id,
    block: bed.block,
    position: bed.position,
    part,
    area_m2: piece.area_m2,
    zone: bed.zone,
    cropsFit: farm.crops.flatMap(({ needs }, c) => {
      const deep = needs.soilDepth_m === null || bed.soilDepth_m + TOUCHING >= needs.soilDepth_m;
      const bright = bed.sun === 'full' || (bed.sun === 'light-shade' && needs.bearsShade);
      return deep && bright && (!needs.needsTrellis || bed.hasTrellis) ? [c] : [];
    }),
    barredFamilies: families.flatMap((family, f) =>
      mayReturn(year, bed.lastYearOf[family] ?? null, gapOf(farm, family)) ? [] : [f],
    ),
    fixed: fixedSpans(
      grid,
      families,
      farm.crops.map(({ needs }) => needs.cropId),
      standing,
      bed,
      piece,
    ),
    seasonsSince: Object.fromEntries(
      families.flatMap((family, f) => {
        const last = bed.lastYearOf[family];
        return last === undefined ? [] : [[f, Math.max(1, year - last)]];
      }),
    ),
  };
}

function fixedSpans(
  grid: WeekGrid,
  families: readonly string[],
  cropIds: readonly string[],
  standing: readonly PresentPlanting[],
  bed: SeasonBed,
  piece: UnitPiece,
): FixedSpan[] {
  const spans: FixedSpan[] = [];
  const add = (from_day: number, to_day: number, family: number | null, crop: number | null) => {
    const fromWeek = Math.max(0, weekOfDay(grid, from_day));
    const toWeek = Math.min(grid.weeks, weekFrom(grid, to_day));
    if (toWeek > fromWeek) spans.push({ fromWeek, toWeek, family, crop });
  };
  for (const planting of standing) {
    const here = planting.spans.some(
      (span) =>
        span.bedId === bed.id && Math.min(span.toShare, piece.toShare) - Math.max(span.fromShare, piece.fromShare) > TOUCHING,
    );
    const family = families.indexOf(planting.crop.family);
    const crop = cropIds.indexOf(planting.crop.cropId);
    if (here) add(dayNumber(planting.inBed), dayNumber(planting.free), family < 0 ? null : family, crop < 0 ? null : crop);
  }
  if (bed.built !== null) add(grid.firstMonday, dayNumber(bed.built), null, null);
  if (bed.retired !== null) add(dayNumber(bed.retired), mondayOfWeek(grid, grid.weeks), null, null);
  return withoutOverlap(spans);
}

/** Spans in order; where whole weeks touch, the later begins when the earlier ends. */
function withoutOverlap(spans: readonly FixedSpan[]): FixedSpan[] {
  const result: FixedSpan[] = [];
  for (const span of [...spans].sort((a, b) => a.fromWeek - b.fromWeek || a.toWeek - b.toWeek)) {
    const fromWeek = Math.max(span.fromWeek, result.at(-1)?.toWeek ?? 0);
    if (span.toWeek > fromWeek) result.push({ ...span, fromWeek });
  }
  return result;
}

/** What plantings that stand anyway bring and take by week. Crops without figures take a bed and nothing else. */
function loadOf(
  farm: FarmSeason,
  grid: WeekGrid,
  plantings: readonly PresentPlanting[],
  zones: number,
  bedById: ReadonlyMap<string, SeasonBed>,
): StandingLoad {
  const zero = () => new Array<number>(grid.weeks).fill(0);
  const harvest = farm.crops.map(zero);
  const labour_h = zero();
  const water_L = Array.from({ length: zones }, zero);
  const bench_m2 = zero();
  const grown = new Set<number>();
  let cost_minor = 0;
  const add = (list: number[] | undefined, week: number, amount: number) => {
    if (list !== undefined && week >= 0 && week < grid.weeks) list[week] = (list[week] ?? 0) + amount;
  };
  // one crop on the same dates in many beds is one option
  const wholes = new Map<string, PlantingOption>();
  const wholeOf = (c: number, crop: CropFigures, planting: PresentPlanting): PlantingOption => {
    const key = `${c} ${planting.sow} ${planting.inBed} ${planting.firstHarvest} ${planting.lastHarvest} ${planting.free}`;
    const whole = wholes.get(key) ?? optionOfDates(crop, planting, grid, farm.caution, farm.waterUse);
    wholes.set(key, whole);
    return whole;
  };
  const places = new Map(farm.crops.map(({ needs }, c) => [needs.cropId, c] as const).reverse());
  for (const planting of plantings) {
    const c = places.get(planting.crop.cropId) ?? -1;
    const crop = farm.crops[c];
    if (crop === undefined) continue;
    const whole = wholeOf(c, crop, planting);
    const option = withinSeason(whole, grid.weeks);
    if (option === null) continue;
    grown.add(c);
    for (const span of planting.spans) {
      const bed = bedById.get(span.bedId);
      if (bed === undefined) continue;
      const area_m2 = bed.area_m2 * (span.toShare - span.fromShare);
      option.harvest_per_m2.forEach((amount, k) => {
        const week = option.startWeek + k;
        const hours = area_m2 * (option.labour_h_per_m2[k] ?? 0);
        add(harvest[c], week, area_m2 * amount);
        add(labour_h, week, hours);
        add(water_L[bed.zone], week, area_m2 * (option.water_L_per_m2[k] ?? 0));
      });
      whole.bench_m2_per_m2.forEach((space, k) => {
        add(bench_m2, whole.startWeek - whole.bench_m2_per_m2.length + k, area_m2 * space);
      });
      cost_minor += area_m2 * option.cost_minor_per_m2;
    }
  }
  return { harvest, labour_h, water_L, bench_m2, cropsGrown: [...grown].sort((a, b) => a - b), cost_minor };
}
