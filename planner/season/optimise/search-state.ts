import { weekRevenue_minor } from './market.ts';
import { type SeasonProblem, standingCost_minor } from './problem.ts';
import { revenue_minor } from './revenue.ts';

/** Prices put on what is scarce, by week; from the linear model, or all zero. */
export type ScarcityPrices = {
  readonly labour: Float64Array;
  readonly water: readonly Float64Array[];
  readonly bench: Float64Array;
};

/** A plan under change: sequences by unit with all that they add up to. */
export type SearchState = {
  readonly problem: SeasonProblem;
  readonly sequences: (readonly number[])[];
  readonly harvest: readonly Float64Array[];
  readonly labour_h: Float64Array;
  readonly water_L: readonly Float64Array[];
  readonly bench_m2: Float64Array;
  readonly cropPlantings: Int32Array;
  /** Puts a sequence into an empty unit. */
  readonly put: (unit: number, sequence: readonly number[]) => void;
  /** Empties a unit and gives what stood in it. */
  readonly take: (unit: number) => readonly number[];
  /** Margin of the plan; minus infinity where a limit is broken. */
  readonly margin_minor: () => number;
  readonly cropsGrown: () => number;
  /** Revenue that option `j` on the area of index `areaAt` would add now. */
  readonly addedRevenue_minor: (j: number, area_m2: number, areaAt: number) => number;
  /** Extra cost of the option's hours, or infinity where it would break a limit. */
  readonly addedLoad_minor: (j: number, area_m2: number, zone: number, prices: ScarcityPrices | null, factor: number) => number;
};

const SLACK = 1e-7;

/** A plan with nothing in it but what stands anyway. */
export function createSearchState(problem: SeasonProblem): SearchState {
  const { instance, weeks, cropCount } = problem;
  const { standing, labourCap_h, overtimeMost_h, overtimePremium_minor_per_h, waterCap_L, benchCap_m2, mostCrops } = instance;
  const harvest = instance.crops.map((_, c) => Float64Array.from({ length: weeks }, (__, w) => standing?.harvest[c]?.[w] ?? 0));
  const labour_h = Float64Array.from({ length: weeks }, (_, w) => standing?.labour_h[w] ?? 0);
  const water_L = waterCap_L.map((_, z) => Float64Array.from({ length: weeks }, (__, w) => standing?.water_L[z]?.[w] ?? 0));
  const bench_m2 = Float64Array.from({ length: weeks }, (_, w) => standing?.bench_m2[w] ?? 0);
  // What stands may already be over a limit; then nothing may be added in that week.
  const labourTop = labour_h.map((base, w) => Math.max(base, labourCap_h[w]! + overtimeMost_h) * (1 + 1e-9) + SLACK);
  const waterTop = water_L.map((line, z) => line.map((base, w) => Math.max(base, waterCap_L[z]![w]!) * (1 + 1e-9) + SLACK));
  const benchTop = bench_m2.map((base, w) => Math.max(base, benchCap_m2[w]!) * (1 + 1e-9) + SLACK);
  const cropPlantings = new Int32Array(cropCount);
  for (const c of standing?.cropsGrown ?? []) cropPlantings[c] = 1;
  const sequences: (readonly number[])[] = instance.units.map(() => []);
  const stamp = new Int32Array(cropCount).fill(1);
  const revenueStamp = new Int32Array(cropCount);
  const revenue = new Float64Array(cropCount);
  const addedStamp = new Int32Array(problem.optionCount * problem.areaCount);
  const added = new Float64Array(problem.optionCount * problem.areaCount);
  const scratch = new Float64Array(weeks);
  let cost_minor = standingCost_minor(instance);
  let grown = cropPlantings.reduce((sum, count) => sum + (count > 0 ? 1 : 0), 0);
  let overhead_minor = instance.crops.reduce((sum, crop, c) => sum + (cropPlantings[c]! > 0 ? crop.overhead_minor : 0), 0);

  function load(unit: number, sequence: readonly number[], sign: 1 | -1): void {
    const group = problem.groups[problem.groupOfUnit[unit]!]!;
    const area = group.area_m2 * sign;
    const line = water_L[group.zone]!;
    for (const j of sequence) {
      const c = problem.optionCrop[j]!;
      const start = problem.optionStart[j]!;
      const h = problem.optionHarvest[j]!;
      const l = problem.optionLabour_h[j]!;
      const q = problem.optionWater_L[j]!;
      const crop = harvest[c]!;
      for (let k = 0; k < h.length; k++) {
        const week = start + k;
        crop[week] = crop[week]! + area * h[k]!;
        labour_h[week] = labour_h[week]! + area * l[k]!;
        line[week] = line[week]! + area * q[k]!;
      }
      const b = problem.optionBench_m2[j]!;
      for (let k = 0; k < b.length; k++) {
        const week = start - b.length + k;
        if (week >= 0) bench_m2[week] = bench_m2[week]! + area * b[k]!;
      }
      cost_minor += area * problem.optionCost_minor[j]!;
      stamp[c] = stamp[c]! + 1;
      const before = cropPlantings[c]!;
      cropPlantings[c] = before + sign;
      if (before === 0 || before + sign === 0) {
        grown += sign;
        overhead_minor += sign * instance.crops[c]!.overhead_minor;
      }
    }
  }

  function cropRevenue(c: number): number {
    if (revenueStamp[c] !== stamp[c]) {
      revenue[c] = revenue_minor(problem.markets[c]!, harvest[c]!);
      revenueStamp[c] = stamp[c]!;
    }
    return revenue[c]!;
  }

  function margin(): number {
    if (grown > mostCrops) return Number.NEGATIVE_INFINITY;
    let overtime_h = 0;
    for (let week = 0; week < weeks; week++) {
      const hours = labour_h[week]!;
      if (hours > labourTop[week]! || bench_m2[week]! > benchTop[week]!) return Number.NEGATIVE_INFINITY;
      if (hours > labourCap_h[week]!) overtime_h += hours - labourCap_h[week]!;
      for (let z = 0; z < water_L.length; z++) if (water_L[z]![week]! > waterTop[z]![week]!) return Number.NEGATIVE_INFINITY;
    }
    let sum = -cost_minor - overhead_minor - overtime_h * overtimePremium_minor_per_h;
    for (let c = 0; c < cropCount; c++) sum += cropRevenue(c);
    return sum;
  }

  function addedRevenue(j: number, area_m2: number, areaAt: number): number {
    const c = problem.optionCrop[j]!;
    const key = areaAt * problem.optionCount + j;
    if (addedStamp[key] === stamp[c]) return added[key]!;
    const market = problem.markets[c]!;
    const now = harvest[c]!;
    const h = problem.optionHarvest[j]!;
    const start = problem.optionStart[j]!;
    let gain = 0;
    if (market.shelf_weeks === 0 && market.steadiness_minor === 0) {
      for (let k = problem.optionFirstHarvest[j]!; k < h.length; k++) {
        const extra = area_m2 * h[k]!;
        if (extra === 0) continue;
        const week = start + k;
        gain += weekRevenue_minor(market, week, now[week]! + extra) - weekRevenue_minor(market, week, now[week]!);
      }
    } else {
      scratch.set(now);
      for (let k = 0; k < h.length; k++) scratch[start + k] = scratch[start + k]! + area_m2 * h[k]!;
      gain = revenue_minor(market, scratch) - cropRevenue(c);
    }
    addedStamp[key] = stamp[c]!;
    added[key] = gain;
    return gain;
  }

  function addedLoad(j: number, area_m2: number, zone: number, prices: ScarcityPrices | null, factor: number): number {
    const start = problem.optionStart[j]!;
    const l = problem.optionLabour_h[j]!;
    const q = problem.optionWater_L[j]!;
    const line = water_L[zone]!;
    const lineTop = waterTop[zone]!;
    const dear = prices?.water[zone];
    let overtime_minor = 0;
    let priced = 0;
    for (let k = 0; k < l.length; k++) {
      const week = start + k;
      const hours = area_m2 * l[k]!;
      const litres = area_m2 * q[k]!;
      const after = labour_h[week]! + hours;
      if (after > labourTop[week]! && hours > 0) return Infinity;
      if (line[week]! + litres > lineTop[week]! && litres > 0) return Infinity;
      const cap = labourCap_h[week]!;
      if (after > cap) overtime_minor += Math.min(hours, after - cap) * overtimePremium_minor_per_h;
      if (prices !== null) priced += hours * prices.labour[week]! + litres * dear![week]!;
    }
    const b = problem.optionBench_m2[j]!;
    for (let k = 0; k < b.length; k++) {
      const week = start - b.length + k;
      if (week < 0) continue;
      const space = area_m2 * b[k]!;
      if (bench_m2[week]! + space > benchTop[week]! && space > 0) return Infinity;
      if (prices !== null) priced += space * prices.bench[week]!;
    }
    return Math.max(overtime_minor, factor * priced);
  }

  return {
    problem,
    sequences,
    harvest,
    labour_h,
    water_L,
    bench_m2,
    cropPlantings,
    put(unit, sequence) {
      load(unit, sequence, 1);
      sequences[unit] = sequence;
    },
    take(unit) {
      const sequence = sequences[unit]!;
      load(unit, sequence, -1);
      sequences[unit] = [];
      return sequence;
    },
    margin_minor: margin,
    cropsGrown: () => grown,
    addedRevenue_minor: addedRevenue,
    addedLoad_minor: addedLoad,
  };
}
