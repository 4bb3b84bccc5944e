import type { PlannedPlanting, PlantingUnit, SeasonInstance, SeasonPlan } from './instance.ts';
import { bestSales, type Sale } from './transport.ts';

export type PlanFault = {
  readonly code: 'overlap' | 'taken' | 'does-not-fit' | 'history' | 'family-rule' | 'hours' | 'water' | 'bench' | 'crops';
  readonly where: string;
  readonly week: number | null;
  readonly by: number;
};

export type CropOutcome = {
  readonly crop: number;
  readonly area_m2: number;
  readonly harvest: readonly number[];
  readonly sales: readonly Sale[];
  readonly contract: number;
  readonly contractSold: number;
  readonly short: readonly { readonly week: number; readonly amount: number; readonly penalty_minor: number }[];
  readonly revenue_minor: number;
  readonly penalty_minor: number;
};

export type PlanOutcome = {
  readonly margin_minor: number;
  readonly revenue_minor: number;
  readonly penalty_minor: number;
  /** Direct costs of plantings, without wage. */
  readonly direct_minor: number;
  readonly wage_minor: number;
  readonly overtime_minor: number;
  readonly overhead_minor: number;
  readonly steadiness_minor: number;
  readonly labour_h: readonly number[];
  readonly water_L: readonly (readonly number[])[];
  readonly bench_m2: readonly number[];
  readonly bedWeeks_m2: number;
  readonly crops: readonly CropOutcome[];
  readonly faults: readonly PlanFault[];
};

const OVER = 1e-6;

/**
 * What a named plan earns and uses, and every rule it breaks, worked out from the instance alone: nothing here is shared
 * with the search, so that a difference between the two shows a fault in one of them.
 */
export function evaluatePlan(instance: SeasonInstance, plan: SeasonPlan): PlanOutcome {
  const faults: PlanFault[] = [];
  const weeks = Array.from({ length: instance.weeks }, (_, week) => week);
  const { standing } = instance;
  const harvest = instance.crops.map((_, c) => weeks.map((week) => standing?.harvest[c]?.[week] ?? 0));
  const labour_h = weeks.map((week) => standing?.labour_h[week] ?? 0);
  const water_L = instance.waterCap_L.map((_, z) => weeks.map((week) => standing?.water_L[z]?.[week] ?? 0));
  const bench_m2 = weeks.map((week) => standing?.bench_m2[week] ?? 0);
  const area = instance.crops.map(() => 0);
  const grown = new Set(standing?.cropsGrown ?? []);
  let direct_minor = standing?.cost_minor ?? 0;
  let hours = (standing?.labour_h ?? []).reduce((sum, each) => sum + each, 0);
  let bedWeeks_m2 = 0;
  const add = (list: number[] | undefined, week: number, amount: number) => {
    if (list !== undefined && week >= 0 && week < instance.weeks) list[week] = (list[week] ?? 0) + amount;
  };

  instance.units.forEach((unit, u) => {
    const plantings = plan[u] ?? [];
    faults.push(...unitFaults(instance, unit, plantings));
    for (const planting of plantings) {
      const option = instance.crops[planting.crop]?.options[planting.option];
      if (option === undefined) continue;
      grown.add(planting.crop);
      area[planting.crop] = (area[planting.crop] ?? 0) + unit.area_m2;
      direct_minor += unit.area_m2 * option.cost_minor_per_m2;
      bedWeeks_m2 += unit.area_m2 * option.harvest_per_m2.length;
      option.harvest_per_m2.forEach((amount, k) => {
        add(harvest[planting.crop], option.startWeek + k, unit.area_m2 * amount);
      });
      option.labour_h_per_m2.forEach((each, k) => {
        hours += unit.area_m2 * each;
        add(labour_h, option.startWeek + k, unit.area_m2 * each);
      });
      option.water_L_per_m2.forEach((each, k) => {
        add(water_L[unit.zone], option.startWeek + k, unit.area_m2 * each);
      });
      option.bench_m2_per_m2.forEach((each, k) => {
        add(bench_m2, option.startWeek - option.bench_m2_per_m2.length + k, unit.area_m2 * each);
      });
    }
  });

  let overtime_h = 0;
  for (const week of weeks) {
    const cap = instance.labourCap_h[week] ?? 0;
    const used = labour_h[week] ?? 0;
    overtime_h += Math.max(0, used - cap);
    limit(faults, 'hours', 'all beds', week, used, Math.max(cap + instance.overtimeMost_h, standing?.labour_h[week] ?? 0));
    limit(
      faults,
      'bench',
      'bench',
      week,
      bench_m2[week] ?? 0,
      Math.max(instance.benchCap_m2[week] ?? 0, standing?.bench_m2[week] ?? 0),
    );
    instance.waterCap_L.forEach((caps, z) => {
      limit(
        faults,
        'water',
        `line ${z}`,
        week,
        water_L[z]?.[week] ?? 0,
        Math.max(caps[week] ?? 0, standing?.water_L[z]?.[week] ?? 0),
      );
    });
  }
  if (grown.size > Math.max(instance.mostCrops, standing?.cropsGrown.length ?? 0))
    faults.push({ code: 'crops', where: 'all beds', week: null, by: grown.size - instance.mostCrops });

  const crops = instance.crops.map((_, c) => cropOutcome(instance, c, harvest[c] ?? [], area[c] ?? 0));
  const sum = (pick: (crop: CropOutcome) => number) => crops.reduce((total, crop) => total + pick(crop), 0);
  const steadiness_minor = instance.crops.reduce((total, crop, c) => {
    const inDemand = new Set(crop.demand.map(({ week }) => week));
    const jumps = crop.demand.reduce(
      (all, { week }) =>
        inDemand.has(week - 1) ? all + Math.abs((harvest[c]?.[week] ?? 0) - (harvest[c]?.[week - 1] ?? 0)) : all,
      0,
    );
    return total + crop.steadiness_minor * jumps;
  }, 0);
  const revenue_minor = sum((crop) => crop.revenue_minor);
  const penalty_minor = sum((crop) => crop.penalty_minor);
  const wage_minor = hours * instance.wage_minor_per_h;
  const overtime_minor = overtime_h * instance.overtimePremium_minor_per_h;
  const overhead_minor = [...grown].reduce((total, c) => total + (instance.crops[c]?.overhead_minor ?? 0), 0);
  return {
    margin_minor: revenue_minor - penalty_minor - direct_minor - wage_minor - overtime_minor - overhead_minor - steadiness_minor,
    revenue_minor,
    penalty_minor,
    direct_minor,
    wage_minor,
    overtime_minor,
    overhead_minor,
    steadiness_minor,
    labour_h,
    water_L,
    bench_m2,
    bedWeeks_m2,
    crops,
    faults,
  };
}

function limit(faults: PlanFault[], code: PlanFault['code'], where: string, week: number, used: number, cap: number): void {
  if (used > cap + OVER * Math.max(1, cap)) faults.push({ code, where, week, by: used - cap });
}

/** Every rule that the plantings of one unit break by themselves. */
export function unitFaults(instance: SeasonInstance, unit: PlantingUnit, plantings: readonly PlannedPlanting[]): PlanFault[] {
  const faults: PlanFault[] = [];
  const fault = (code: PlanFault['code'], week: number | null) => faults.push({ code, where: unit.id, week, by: 0 });
  const stays: { from: number; to: number; family: number | null; crop: number | null; isNew: boolean }[] = unit.fixed.map(
    (span) => ({
      from: span.fromWeek,
      to: span.toWeek,
      family: span.family,
      crop: span.crop ?? null,
      isNew: false,
    }),
  );
  for (const { crop: c, option: at } of plantings) {
    const crop = instance.crops[c];
    const option = crop?.options[at];
    if (crop === undefined || option === undefined) {
      fault('does-not-fit', null);
      continue;
    }
    if (!unit.cropsFit.includes(c)) fault('does-not-fit', option.startWeek);
    if (unit.barredFamilies.includes(crop.family)) fault('history', option.startWeek);
    stays.push({
      from: option.startWeek,
      to: option.startWeek + option.harvest_per_m2.length,
      family: crop.family,
      crop: c,
      isNew: true,
    });
  }
  stays.sort((a, b) => a.from - b.from || a.to - b.to);
  stays.forEach((stay, at) => {
    const before = stays[at - 1];
    if (before !== undefined && before.to > stay.from && (before.isNew || stay.isNew))
      fault(before.isNew && stay.isNew ? 'overlap' : 'taken', stay.from);
    if (stay.family === null) return;
    const rule = instance.families[stay.family]?.inSeason;
    if (rule === 'not-back-to-back' && before?.family === stay.family && (before.isNew || stay.isNew))
      fault('family-rule', stay.from);
    const earlier = stays.slice(0, at).filter((other) => other.family === stay.family && (other.isNew || stay.isNew));
    if (rule === 'once' && earlier.length > 0) fault('family-rule', stay.from);
    if (rule === 'one-crop' && earlier.some((other) => other.crop !== stay.crop)) fault('family-rule', stay.from);
  });
  return faults;
}

function cropOutcome(instance: SeasonInstance, c: number, harvest: readonly number[], area_m2: number): CropOutcome {
  const crop = instance.crops[c];
  if (crop === undefined) throw new RangeError(`There is no crop ${c}.`);
  const sales = bestSales(crop, harvest);
  const sold = (week: number) =>
    sales.filter((sale) => sale.week === week && sale.contract).reduce((sum, sale) => sum + sale.amount, 0);
  const short = crop.demand.flatMap((week) => {
    const amount = Math.max(0, week.contract - sold(week.week));
    return amount > OVER ? [{ week: week.week, amount, penalty_minor: amount * week.penalty_minor }] : [];
  });
  return {
    crop: c,
    area_m2,
    harvest,
    sales,
    contract: crop.demand.reduce((sum, week) => sum + week.contract, 0),
    contractSold: sales.reduce((sum, sale) => sum + (sale.contract ? sale.amount : 0), 0),
    short,
    revenue_minor: sales.reduce((sum, sale) => sum + sale.amount * sale.price_minor, 0),
    penalty_minor: short.reduce((sum, week) => sum + week.penalty_minor, 0),
  };
}
