import type { FixedSpan, PlannedPlanting, SeasonInstance, SeasonPlan } from './instance.ts';
import { createMarket, type Market } from './market.ts';

/** Units alike in everything that constrains them. */
export type UnitGroup = {
  readonly area_m2: number;
  /** Index of the area among the distinct areas, for the cache of added values. */
  readonly areaAt: number;
  readonly zone: number;
  readonly units: readonly number[];
  /** Options that fit, by start week: those of week t are `options[starts[t]] .. options[starts[t + 1] - 1]`. */
  readonly options: Int32Array;
  readonly starts: Int32Array;
  /** For each week, the week after a fixed span that begins there, else -1; and its family, -1 for none. */
  readonly fixedTo: Int32Array;
  readonly fixedFamily: Int32Array;
  /** The family that may not come just before the fixed span beginning in a week; -1 where any may. */
  readonly guardedFamily: Int32Array;
};

/** A season instance laid out for searching: options in flat arrays, units in groups. */
export type SeasonProblem = {
  readonly instance: SeasonInstance;
  readonly weeks: number;
  readonly cropCount: number;
  readonly optionCount: number;
  readonly optionCrop: Int32Array;
  /** Index of the option among its crop's options. */
  readonly optionAt: Int32Array;
  readonly optionFamily: Int32Array;
  readonly optionStart: Int32Array;
  readonly optionEnd: Int32Array;
  /** Direct cost and wage, per m2. */
  readonly optionCost_minor: Float64Array;
  readonly optionHarvest: readonly Float64Array[];
  readonly optionFirstHarvest: Int32Array;
  readonly optionLabour_h: readonly Float64Array[];
  readonly optionWater_L: readonly Float64Array[];
  readonly optionBench_m2: readonly Float64Array[];
  readonly firstOptionOfCrop: Int32Array;
  readonly markets: readonly Market[];
  readonly groups: readonly UnitGroup[];
  readonly groupOfUnit: Int32Array;
  readonly areaCount: number;
};

/** Lays an instance out for searching. Expects a checked instance. */
export function compileSeason(instance: SeasonInstance): SeasonProblem {
  const optionCrop: number[] = [];
  const optionAt: number[] = [];
  const firstOptionOfCrop = new Int32Array(instance.crops.length + 1);
  instance.crops.forEach((crop, c) => {
    firstOptionOfCrop[c] = optionCrop.length;
    crop.options.forEach((_, at) => {
      optionCrop.push(c);
      optionAt.push(at);
    });
  });
  firstOptionOfCrop[instance.crops.length] = optionCrop.length;
  const all = optionCrop.map((c, j) => instance.crops[c]!.options[optionAt[j]!]!);
  const starts = Int32Array.from(all, (option) => option.startWeek);
  const ends = Int32Array.from(all, (option) => option.startWeek + option.harvest_per_m2.length);
  const { groups, groupOfUnit, areaCount } = groupUnits(instance, Int32Array.from(optionCrop), starts, ends);
  return {
    instance,
    weeks: instance.weeks,
    cropCount: instance.crops.length,
    optionCount: all.length,
    optionCrop: Int32Array.from(optionCrop),
    optionAt: Int32Array.from(optionAt),
    optionFamily: Int32Array.from(optionCrop, (c) => instance.crops[c]!.family),
    optionStart: starts,
    optionEnd: ends,
    optionCost_minor: Float64Array.from(
      all,
      (option) =>
        option.cost_minor_per_m2 + instance.wage_minor_per_h * option.labour_h_per_m2.reduce((sum, hours) => sum + hours, 0),
    ),
    optionHarvest: all.map((option) => Float64Array.from(option.harvest_per_m2)),
    optionFirstHarvest: Int32Array.from(all, (option) =>
      Math.max(
        0,
        option.harvest_per_m2.findIndex((amount) => amount > 0),
      ),
    ),
    optionLabour_h: all.map((option) => Float64Array.from(option.labour_h_per_m2)),
    optionWater_L: all.map((option) => Float64Array.from(option.water_L_per_m2)),
    optionBench_m2: all.map((option) => Float64Array.from(option.bench_m2_per_m2)),
    firstOptionOfCrop,
    markets: instance.crops.map((crop) => createMarket(crop, instance.weeks)),
    groups,
    groupOfUnit,
    areaCount,
  };
}

function groupUnits(instance: SeasonInstance, optionCrop: Int32Array, starts: Int32Array, ends: Int32Array) {
  const byKey = new Map<string, number[]>();
  const allowedOf: number[][] = [];
  instance.units.forEach((unit, u) => {
    const barred = new Set(unit.barredFamilies);
    for (const span of unit.fixed)
      if (span.family !== null && instance.families[span.family]?.inSeason === 'once') barred.add(span.family);
    const allowed = [...new Set(unit.cropsFit)]
      .filter((c) => !barred.has(instance.crops[c]!.family) && unit.fixed.every((span) => mayJoin(instance, span, c)))
      .sort((a, b) => a - b);
    allowedOf.push(allowed);
    const fixed = unit.fixed.map((span) => [span.fromWeek, span.toWeek, span.family]);
    const key = JSON.stringify([unit.area_m2, unit.zone, allowed, fixed]);
    const list = byKey.get(key);
    if (list === undefined) byKey.set(key, [u]);
    else list.push(u);
  });
  const areas = [...new Set(instance.units.map((unit) => unit.area_m2))].sort((a, b) => b - a);
  const groupOfUnit = new Int32Array(instance.units.length);
  const groups = [...byKey.values()].map((units, g): UnitGroup => {
    const first = units[0]!;
    const unit = instance.units[first]!;
    for (const u of units) groupOfUnit[u] = g;
    const taken = new Uint8Array(instance.weeks + 1);
    const fixedTo = new Int32Array(instance.weeks).fill(-1);
    const fixedFamily = new Int32Array(instance.weeks).fill(-1);
    const guardedFamily = new Int32Array(instance.weeks).fill(-1);
    unit.fixed.forEach((span, k) => {
      if (span.family === null || instance.families[span.family]?.inSeason !== 'not-back-to-back') return;
      if (unit.fixed[k - 1]?.family !== span.family) guardedFamily[span.fromWeek] = span.family;
    });
    for (const span of unit.fixed) {
      taken.fill(1, span.fromWeek, span.toWeek);
      fixedTo[span.fromWeek] = span.toWeek;
      fixedFamily[span.fromWeek] = span.family ?? -1;
    }
    const allowed = new Set(allowedOf[first]);
    const fitting: number[] = [];
    for (let j = 0; j < optionCrop.length; j++)
      if (allowed.has(optionCrop[j]!) && taken.subarray(starts[j]!, ends[j]!).indexOf(1) === -1) fitting.push(j);
    fitting.sort((a, b) => starts[a]! - starts[b]! || a - b);
    const offsets = new Int32Array(instance.weeks + 1);
    for (const j of fitting) offsets[starts[j]! + 1] = offsets[starts[j]! + 1]! + 1;
    for (let week = 0; week < instance.weeks; week++) offsets[week + 1] = offsets[week + 1]! + offsets[week]!;
    return {
      area_m2: unit.area_m2,
      areaAt: areas.indexOf(unit.area_m2),
      zone: unit.zone,
      units,
      options: Int32Array.from(fitting),
      starts: offsets,
      fixedTo,
      fixedFamily,
      guardedFamily,
    };
  });
  return { groups, groupOfUnit, areaCount: areas.length };
}

/** Whether a crop may stand in the season beside a fixed span, by the rule that a family comes with one crop only. */
const mayJoin = (instance: SeasonInstance, span: FixedSpan, c: number): boolean =>
  span.family === null ||
  instance.families[span.family]?.inSeason !== 'one-crop' ||
  instance.crops[c]!.family !== span.family ||
  span.crop === c;

/** What stands anyway costs this, wages with it. */
export function standingCost_minor({ standing, wage_minor_per_h }: SeasonInstance): number {
  if (standing === null) return 0;
  return standing.cost_minor + wage_minor_per_h * standing.labour_h.reduce((sum, hours) => sum + hours, 0);
}

/** A plan in the instance's own terms, from the option numbers of the search. */
export function planOf(problem: SeasonProblem, sequences: readonly (readonly number[])[]): SeasonPlan {
  return sequences.map((sequence) =>
    sequence.map((j): PlannedPlanting => ({ crop: problem.optionCrop[j]!, option: problem.optionAt[j]! })),
  );
}

/** Option numbers of the search, from a plan. */
export function sequencesOf(problem: SeasonProblem, plan: SeasonPlan): number[][] {
  return plan.map((plantings) =>
    plantings
      .map(({ crop, option }) => problem.firstOptionOfCrop[crop]! + option)
      .sort((a, b) => problem.optionStart[a]! - problem.optionStart[b]!),
  );
}
