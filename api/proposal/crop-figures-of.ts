import type { RowsByKey } from '../../db/file/derived.ts';
import type {
  clearedPlantings,
  demandOfSeason,
  harvestByPlanting,
  minutesByPlanting,
  saleUnits,
} from '../../db/repositories/proposal-facts.ts';
import { plantsForArea, unboundedDensity_per_m2 } from '../../planner/beds/lattice.ts';
import { daysBetween, type IsoDate } from '../../planner/calendar.ts';
import { netOfUnit_kg } from '../../planner/costs/units-of-sale.ts';
import { type KnownFacts, numberOf, wordsOf } from '../../planner/crops/crop-facts.ts';
import { InputError } from '../../planner/errors.ts';
import { harvestForm, type YieldRange } from '../../planner/season/harvest-spread.ts';
import { type Method, timingOf } from '../../planner/season/maturity.ts';
import type { CropFigures, CropHours, Order } from '../../planner/season/proposal/crop-figures.ts';
import { learnedHours, USUAL_HOURS, type WorkedPlanting } from '../../planner/season/proposal/learned-hours.ts';
import { trayNeed, usualTray } from '../../planner/season/trays.ts';
import type { CropShelf } from '../season/crop-shelf.ts';
import { noOwnCropFigures, type OwnCropFigures } from './own-figures.ts';

/** Where a figure of the proposal came from. */
export type FigureFrom = 'own' | 'records' | 'library' | 'usual' | 'none';

export type CropCounted = {
  readonly figures: CropFigures;
  readonly from: { readonly yield: FigureFrom; readonly hours: FigureFrom; readonly direct: FigureFrom };
  readonly plantings: number;
};

type Cleared = readonly ReturnType<typeof clearedPlantings>[number][];

export type Records = {
  /** By crop. */
  readonly cleared: ReadonlyMap<string, Cleared>;
  /** By planting. */
  readonly harvests: RowsByKey<ReturnType<typeof harvestByPlanting>[number]>;
  /** By planting. */
  readonly minutes: RowsByKey<ReturnType<typeof minutesByPlanting>[number]>;
  readonly units: ReturnType<typeof saleUnits>;
  readonly area_m2: ReadonlyMap<string, number>;
  /** By crop: seed, inputs and packing of the season before, from Costs. */
  readonly direct_minor_per_m2: ReadonlyMap<string, number>;
};

/** What the proposal counts with for one crop, or why it cannot count with it. */
export function cropFigures(
  shelf: CropShelf,
  cropId: string,
  wanted: ReturnType<typeof demandOfSeason>,
  records: Records,
  own: OwnCropFigures = noOwnCropFigures,
  methodBefore: Method | null = null,
): CropCounted | { readonly because: string } {
  const { name, cropGroup } = shelf.crop(cropId);
  const facts = shelf.facts(cropId);
  if (own.leaveOut) return { because: 'You left it out of proposals.' };
  const orders = wanted.filter((each) => each.cropId === cropId);
  const unit = orders[0]?.unit ?? wordsOf(facts, 'yield_unit') ?? 'kg';
  const perUnit_kg = (of: string) => netOfUnit_kg(of, cropId, records.units);
  const into = (amount: number, from: string): number | null => {
    if (from === unit) return amount;
    const [a, b] = [perUnit_kg(from), perUnit_kg(unit)];
    return a === null || b === null || b <= 0 ? null : (amount * a) / b;
  };
  const past = records.cleared.get(cropId) ?? [];
  const yields = yieldOf(facts, own, past, records, into);
  if (yields === null)
    return { because: `Its yield in the unit it is asked for (${unit}) is not known: enter one here, or harvest some first.` };
  const method = methodBefore ?? methodOf(facts);
  try {
    const timing = timingOf(facts, method, name);
    const learned = learnedHours(workedOf(past, records, into));
    const hours = hoursOf(learned, own);
    return {
      figures: {
        needs: shelf.needs(cropId),
        timing,
        form: harvestForm(cropGroup, timing.window_days),
        unit,
        yield_per_m2: yields.range,
        hours: hours.hours,
        direct_minor_per_m2: own.direct_minor_per_m2 ?? records.direct_minor_per_m2.get(cropId) ?? 0,
        bench_m2_per_m2: timing.indoors_days > 0 ? benchOf(cropId, facts) : 0,
        shelf_weeks: own.shelf_weeks ?? 0,
        overhead_minor: 0,
        orders: orders.flatMap((each): Order[] => {
          const perWeek = into(each.amountPerWeek, each.unit);
          const one = into(1, each.unit);
          if (perWeek === null || one === null || one <= 0) return [];
          return [
            {
              kind: each.kind,
              from: each.fromDate as IsoDate,
              to: each.toDate as IsoDate,
              perWeek,
              price_minor: each.price_minor / one,
              penalty_minor: each.penalty_minor / one,
            },
          ];
        }),
      },
      from: {
        yield: yields.from,
        hours: hours.from,
        direct: own.direct_minor_per_m2 !== null ? 'own' : records.direct_minor_per_m2.has(cropId) ? 'records' : 'none',
      },
      plantings: past.length,
    };
  } catch (error) {
    // A crop with a figure missing in the library is left out and says which; the others can still be planned.
    if (error instanceof InputError) return { because: error.message };
    throw error;
  }
}

function methodOf(facts: KnownFacts): Method {
  const words = wordsOf(facts, 'sow_method');
  if (words === 'set') return 'set';
  return words === 'transplant' || words === 'both' ? 'transplant' : 'direct';
}

function hoursOf(learned: CropHours | null, own: OwnCropFigures): { readonly hours: CropHours; readonly from: FigureFrom } {
  const base = learned ?? USUAL_HOURS;
  const hours = {
    ...base,
    plant_h_per_m2: own.plant_h_per_m2 ?? base.plant_h_per_m2,
    care_h_per_m2_week: own.care_h_per_m2_week ?? base.care_h_per_m2_week,
    harvest_h_per_unit: own.harvest_h_per_unit ?? base.harvest_h_per_unit,
  };
  const changed = own.plant_h_per_m2 !== null || own.care_h_per_m2_week !== null || own.harvest_h_per_unit !== null;
  return { hours, from: changed ? 'own' : learned === null ? 'usual' : 'records' };
}

type Into = (amount: number, from: string) => number | null;

const areaOf = (records: Records, row: Cleared[number]): number => (records.area_m2.get(row.bedId) ?? 0) * row.share;

function yieldOf(
  facts: KnownFacts,
  own: OwnCropFigures,
  past: Cleared,
  records: Records,
  into: Into,
): { readonly range: YieldRange; readonly from: FigureFrom } | null {
  const even = (typical: number) => ({ low: typical, typical, high: typical });
  if (own.yield_per_m2 !== null) return { range: even(own.yield_per_m2), from: 'own' };
  const seen = past.flatMap((row) => {
    const area_m2 = areaOf(records, row);
    const amounts = (records.harvests.get(row.plantingId) ?? []).map(({ amount, unit }) => into(amount, unit));
    if (area_m2 <= 0 || amounts.length === 0 || amounts.includes(null)) return [];
    return [amounts.reduce<number>((sum, amount) => sum + (amount ?? 0), 0) / area_m2];
  });
  if (seen.length >= 3) {
    const sorted = seen.toSorted((a, b) => a - b);
    const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
    return { range: { low: at(0.1), typical: at(0.5), high: at(0.9) }, from: 'records' };
  }
  const unit = wordsOf(facts, 'yield_unit') ?? 'kg';
  const typical = numberOf(facts, 'yield_typical_per_m2');
  const converted = typical === null ? null : into(typical, unit);
  if (typical === null || converted === null) return seen.length > 0 ? { range: even(seen[0] ?? 0), from: 'records' } : null;
  const of = (name: 'yield_low_per_m2' | 'yield_high_per_m2') => into(numberOf(facts, name) ?? typical, unit) ?? converted;
  return { range: { low: of('yield_low_per_m2'), typical: converted, high: of('yield_high_per_m2') }, from: 'library' };
}

function workedOf(past: Cleared, records: Records, into: Into): WorkedPlanting[] {
  return past.map((row) => ({
    area_m2: areaOf(records, row),
    weeks: Math.max(1, daysBetween(row.inBed as IsoDate, row.free as IsoDate) / 7),
    harvested: (records.harvests.get(row.plantingId) ?? []).reduce((sum, { amount, unit }) => sum + (into(amount, unit) ?? 0), 0),
    minutes: records.minutes.get(row.plantingId) ?? [],
  }));
}

/** Bench space for the young plants of a square metre of bed. */
function benchOf(cropId: string, facts: KnownFacts): number {
  const intensive_m = numberOf(facts, 'intensive_m');
  const inRow_m = numberOf(facts, 'in_row_m');
  const row_m = numberOf(facts, 'row_m');
  const density =
    intensive_m !== null
      ? unboundedDensity_per_m2('staggered', intensive_m)
      : inRow_m !== null && row_m !== null
        ? plantsForArea(1, inRow_m, row_m)
        : 0;
  const cellsPerTray = numberOf(facts, 'cells_per_tray') ?? usualTray(cropId);
  return (trayNeed({ cells: cellsPerTray, cellsPerTray }).bench_m2 * density) / cellsPerTray;
}
