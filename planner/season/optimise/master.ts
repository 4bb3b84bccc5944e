import type { LpColumn, OpenLp } from '../../lp.ts';
import { createMilp, type MilpModel } from '../../milp.ts';
import { type SeasonProblem, standingCost_minor } from './problem.ts';
import type { ScarcityPrices } from './search-state.ts';

/** A row of plantings for the units of one group, as a column of the master model. */
export type SequenceColumn = { readonly group: number; readonly sequence: readonly number[] };

/** A selling step whose crop must be grown: sold of it may not exceed its cap where the crop is not grown. */
export type SaleStep = { readonly column: number; readonly crop: number; readonly cap: number };

/**
 * The season as a linear model over rows of plantings (sequences). Money is scaled by `moneyScale` so that coefficients
 * keep a sane size.
 *
 *   max  sum worth S  -  sum cost_p x_p  -  premium o  -  overhead y  -  steadiness d
 *   sum_p x_p <= n_g                              each group            dual mu
 *   sales of what is harvested, kept at most L weeks    each crop, week   dual alpha
 *   hours <= cap + o;  water <= cap;  bench <= cap      each week         duals beta, gamma, delta
 *   sum S <= (sum cap) y each crop, single steps added when broken;  sum y <= most crops
 *
 * Source: Dantzig & Wolfe, Decomposition principle for linear programs, Operations Research 8, 1960 (from memory).
 */
export type MasterModel = {
  readonly model: MilpModel;
  readonly moneyScale: number;
  /** Money that no choice changes: what stands, penalties if nothing is delivered, overhead of crops that stand. */
  readonly constant_minor: number;
  readonly groupRow: number;
  readonly harvestRow: Int32Array;
  readonly labourRow: Int32Array;
  readonly waterRow: readonly Int32Array[];
  readonly benchRow: Int32Array;
  readonly grownColumn: Int32Array;
  readonly saleSteps: readonly SaleStep[];
  readonly sequenceColumn: (column: SequenceColumn) => LpColumn;
};

/** Builds the model without any sequence. Planting nothing is always feasible. */
export function buildMaster(problem: SeasonProblem): MasterModel {
  const { instance, weeks } = problem;
  const { standing } = instance;
  const milp = createMilp('maximise');
  const moneyScale = scaleOf(problem);
  const money = (minor: number) => minor / moneyScale;
  // An empty model needs its group rows first, and rows need their columns: a column that is never used stands in.
  const idle = milp.column({ cost: 0, upper: 0 });
  for (const group of problem.groups) milp.row({ upper: group.units.length, entries: [[idle, 0]] });

  const harvestRow = new Int32Array(problem.cropCount * weeks).fill(-1);
  const grownColumn = new Int32Array(problem.cropCount).fill(-1);
  const saleSteps: SaleStep[] = [];
  const standsAlready = new Set(standing?.cropsGrown ?? []);
  const limitsCrops = instance.mostCrops < problem.cropCount;
  let constant_minor = -standingCost_minor(instance);

  problem.markets.forEach((market, c) => {
    const crop = instance.crops[c]!;
    constant_minor -= market.penalties_minor;
    if (standsAlready.has(c)) constant_minor -= crop.overhead_minor;
    const counted = !standsAlready.has(c) && (crop.overhead_minor > 0 || limitsCrops);
    if (counted) grownColumn[c] = milp.column({ cost: -money(crop.overhead_minor), upper: 1 });
    else if (limitsCrops) grownColumn[c] = milp.column({ cost: 0, lower: 1, upper: 1 });
    const base = (week: number) => standing?.harvest[c]?.[week] ?? 0;
    const canHarvest = new Uint8Array(weeks);
    for (let j = problem.firstOptionOfCrop[c]!; j < problem.firstOptionOfCrop[c + 1]!; j++)
      problem.optionHarvest[j]!.forEach((amount, k) => {
        if (amount > 0) canHarvest[problem.optionStart[j]! + k] = 1;
      });

    const sellsIn: number[][] = Array.from({ length: weeks }, () => []);
    let total = 0;
    for (let week = 0; week < weeks; week++) {
      const steps = market.weekSteps[week]!;
      for (let at = 0; at < steps.length; at += 2) {
        const column = milp.column({ cost: money(steps[at]!), upper: steps[at + 1]! });
        sellsIn[week]!.push(column);
        total += steps[at + 1]!;
        if (counted) saleSteps.push({ column, crop: c, cap: steps[at + 1]! });
      }
    }
    if (counted && total > 0)
      milp.row({ upper: 0, entries: [...sellsIn.flat().map((s) => [s, 1] as const), [grownColumn[c]!, -total] as const] });

    const steady = market.steadiness_minor > 0;
    const amount: number[] = [];
    const supply = (week: number, uses: readonly (readonly [number, number])[]) => {
      if (!steady) {
        harvestRow[c * weeks + week] = milp.row({ upper: base(week), entries: uses.length > 0 ? uses : [[idle, 0]] });
        return;
      }
      const column = milp.column({ cost: 0 });
      amount[week] = column;
      harvestRow[c * weeks + week] = milp.row({ lower: base(week), upper: base(week), entries: [[column, 1]] });
      if (uses.length > 0) milp.row({ upper: 0, entries: [...uses, [column, -1]] });
    };
    if (market.shelf_weeks === 0) {
      for (let week = 0; week < weeks; week++)
        if (sellsIn[week]!.length > 0 || (steady && market.isDemandWeek[week] === 1))
          supply(
            week,
            sellsIn[week]!.map((s) => [s, 1] as const),
          );
    } else {
      const arrives: number[][] = Array.from({ length: weeks }, () => []);
      for (let week = 0; week < weeks; week++) {
        const leaves: number[] = [];
        if (canHarvest[week] === 1 || base(week) > 0)
          for (let sale = week; sale < weeks && sale <= week + market.shelf_weeks; sale++)
            if (sellsIn[sale]!.length > 0) {
              const flow = milp.column({ cost: 0 });
              leaves.push(flow);
              arrives[sale]!.push(flow);
            }
        if (leaves.length > 0 || (steady && market.isDemandWeek[week] === 1))
          supply(
            week,
            leaves.map((flow) => [flow, 1] as const),
          );
      }
      for (let week = 0; week < weeks; week++)
        if (sellsIn[week]!.length > 0)
          milp.row({
            upper: 0,
            entries: [...sellsIn[week]!.map((s) => [s, 1] as const), ...arrives[week]!.map((flow) => [flow, -1] as const)],
          });
    }
    if (steady)
      for (let week = 1; week < weeks; week++)
        if (market.steadyPair[week] === 1) {
          const jump = milp.column({ cost: -money(market.steadiness_minor) });
          const pair = [amount[week]!, amount[week - 1]!] as const;
          milp.row({
            upper: 0,
            entries: [
              [pair[0], 1],
              [pair[1], -1],
              [jump, -1],
            ],
          });
          milp.row({
            upper: 0,
            entries: [
              [pair[0], -1],
              [pair[1], 1],
              [jump, -1],
            ],
          });
        }
  });
  if (limitsCrops)
    milp.row({
      upper: Math.max(instance.mostCrops, standsAlready.size),
      entries: [...grownColumn].map((column) => [column, 1] as const),
    });

  const top = mostLoad(problem);
  const labourRow = new Int32Array(weeks).fill(-1);
  const benchRow = new Int32Array(weeks).fill(-1);
  const waterRow = instance.waterCap_L.map(() => new Int32Array(weeks).fill(-1));
  for (let week = 0; week < weeks; week++) {
    const left_h = instance.labourCap_h[week]! - (standing?.labour_h[week] ?? 0);
    if (left_h < top.labour_h[week]!) {
      const overtime = milp.column({
        cost: -money(instance.overtimePremium_minor_per_h),
        upper: left_h >= 0 ? instance.overtimeMost_h : Math.max(0, instance.overtimeMost_h + left_h),
      });
      labourRow[week] = milp.row({ upper: Math.max(0, left_h), entries: [[overtime, -1]] });
    }
    instance.waterCap_L.forEach((cap, z) => {
      const left_L = cap[week]! - (standing?.water_L[z]?.[week] ?? 0);
      if (left_L < top.water_L[z]![week]!) waterRow[z]![week] = milp.row({ upper: Math.max(0, left_L), entries: [[idle, 0]] });
    });
    const left_m2 = instance.benchCap_m2[week]! - (standing?.bench_m2[week] ?? 0);
    if (left_m2 < top.bench_m2[week]!) benchRow[week] = milp.row({ upper: Math.max(0, left_m2), entries: [[idle, 0]] });
    if (left_h < 0) constant_minor += left_h * instance.overtimePremium_minor_per_h;
  }

  const rows = { harvestRow, labourRow, waterRow, benchRow };
  return {
    model: milp.build(),
    moneyScale,
    constant_minor,
    groupRow: 0,
    ...rows,
    grownColumn,
    saleSteps,
    sequenceColumn: (column) => columnOf(problem, rows, moneyScale, column),
  };
}

function columnOf(
  problem: SeasonProblem,
  rows: Pick<MasterModel, 'harvestRow' | 'labourRow' | 'waterRow' | 'benchRow'>,
  moneyScale: number,
  { group: g, sequence }: SequenceColumn,
): LpColumn {
  const { weeks } = problem;
  const { area_m2: area, zone, units } = problem.groups[g]!;
  const sums = new Map<number, number>([[g, 1]]);
  const add = (row: number, value: number) => {
    if (row >= 0 && value !== 0) sums.set(row, (sums.get(row) ?? 0) + value);
  };
  let cost = 0;
  for (const j of sequence) {
    const start = problem.optionStart[j]!;
    const c = problem.optionCrop[j]!;
    cost += area * problem.optionCost_minor[j]!;
    problem.optionHarvest[j]!.forEach((amount, k) => {
      add(rows.harvestRow[c * weeks + start + k]!, -area * amount);
      add(rows.labourRow[start + k]!, area * problem.optionLabour_h[j]![k]!);
      add(rows.waterRow[zone]![start + k]!, area * problem.optionWater_L[j]![k]!);
    });
    const bench = problem.optionBench_m2[j]!;
    bench.forEach((space, k) => {
      const week = start - bench.length + k;
      if (week >= 0) add(rows.benchRow[week]!, area * space);
    });
  }
  return { cost: -cost / moneyScale, lower: 0, upper: units.length, entries: [...sums] };
}

/** Most that all units together could use in a week: limits above it can't bind and get no row. */
function mostLoad(problem: SeasonProblem) {
  const { weeks, instance } = problem;
  const labour_h = new Float64Array(weeks);
  const bench_m2 = new Float64Array(weeks);
  const water_L = instance.waterCap_L.map(() => new Float64Array(weeks));
  for (const group of problem.groups) {
    const area = group.area_m2 * group.units.length;
    const most = { l: new Float64Array(weeks), q: new Float64Array(weeks), b: new Float64Array(weeks) };
    for (const j of group.options) {
      const start = problem.optionStart[j]!;
      problem.optionLabour_h[j]!.forEach((hours, k) => {
        const week = start + k;
        most.l[week] = Math.max(most.l[week]!, hours);
        most.q[week] = Math.max(most.q[week]!, problem.optionWater_L[j]![k]!);
      });
      // Several plantings of one unit may be on the bench in the same week.
      const bench = problem.optionBench_m2[j]!;
      bench.forEach((space, k) => {
        const week = start - bench.length + k;
        if (week >= 0) most.b[week] = most.b[week]! + space;
      });
    }
    for (let week = 0; week < weeks; week++) {
      labour_h[week] = labour_h[week]! + area * most.l[week]!;
      bench_m2[week] = bench_m2[week]! + area * most.b[week]!;
      water_L[group.zone]![week] = water_L[group.zone]![week]! + area * most.q[week]!;
    }
  }
  return { labour_h, bench_m2, water_L };
}

function scaleOf(problem: SeasonProblem): number {
  let most = 1;
  for (const market of problem.markets) for (const level of market.levels) most = Math.max(most, level.worth_minor);
  for (const group of problem.groups)
    for (const j of group.options) most = Math.max(most, Math.abs(problem.optionCost_minor[j]!));
  return most / 10;
}

/** Duals of the master model in minor units. */
export type MasterDuals = ScarcityPrices & { readonly group: Float64Array; readonly harvest: Float64Array };

/** Reads the duals of a solve. */
export function dualsOf(problem: SeasonProblem, master: MasterModel, rowDuals: Float64Array): MasterDuals {
  const pick = (rows: Int32Array) => Float64Array.from(rows, (row) => (row < 0 ? 0 : rowDuals[row]! * master.moneyScale));
  const atLeastZero = (values: Float64Array) => values.map((value) => Math.max(0, value));
  return {
    group: atLeastZero(Float64Array.from(problem.groups, (_, g) => rowDuals[master.groupRow + g]! * master.moneyScale)),
    harvest: pick(master.harvestRow),
    labour: atLeastZero(pick(master.labourRow)),
    water: master.waterRow.map((rows) => atLeastZero(pick(rows))),
    bench: atLeastZero(pick(master.benchRow)),
  };
}

/** Adds the single selling steps whose crop rows the last solution breaks, up to `most`. @returns how many were added */
export function addBrokenSteps(lp: OpenLp, master: MasterModel, values: Float64Array, done: Set<number>, most: number): number {
  const broken = master.saleSteps
    .filter(({ column }) => !done.has(column))
    .map((step) => ({ step, by: (values[step.column]! - step.cap * values[master.grownColumn[step.crop]!]!) / step.cap }))
    .filter(({ by }) => by > 0.02)
    .sort((a, b) => b.by - a.by || a.step.column - b.step.column)
    .slice(0, most);
  for (const { step } of broken) done.add(step.column);
  lp.addRows(
    broken.map(({ step }) => ({
      upper: 0,
      entries: [
        [step.column, 1],
        [master.grownColumn[step.crop]!, -step.cap],
      ],
    })),
  );
  return broken.length;
}
