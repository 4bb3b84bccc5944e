import { splitMoney } from '../money.ts';
import type { IncomeLine } from './earning-rows.ts';
import type { Stay } from './ground.ts';

/**
 * Gives income of plantings whose bed is not known to their beds by ground, in whole minor units; weights of produce with them.
 * Income of nobody stays so.
 */
export function incomeByBed(incomes: readonly IncomeLine[], stays: readonly Stay[]): readonly IncomeLine[] {
  const places = new Map<string, Stay[]>();
  for (const stay of stays) {
    const list = places.get(stay.plantingId);
    if (list === undefined) places.set(stay.plantingId, [stay]);
    else list.push(stay);
  }
  return incomes.flatMap((income) => {
    const at = income.plantingId === null || income.bedId !== null ? undefined : places.get(income.plantingId);
    if (at === undefined) return [income];
    const weights = at.map((stay) => stay.area_m2);
    const whole = weights.reduce((sum, weight) => sum + weight, 0);
    const { parts_minor, unallocated_minor } = splitMoney(income.paid_minor, weights);
    if (unallocated_minor !== 0 || whole === 0) return [income];
    return at.map((stay, n) => ({
      ...income,
      bedId: stay.bedId,
      paid_minor: parts_minor[n] ?? 0,
      sold_kg: (income.sold_kg * stay.area_m2) / whole,
    }));
  });
}

/**
 * Income of a lot by the plantings whose harvests went into it, by weight, else by number of harvests: in whole minor units.
 */
export function incomeOfLot(
  paid_minor: number,
  harvests: readonly { readonly plantingId: string; readonly bedId: string | null; readonly weight_kg: number | null }[],
): readonly { readonly plantingId: string; readonly bedId: string | null; readonly paid_minor: number }[] {
  const known = harvests.every((each) => each.weight_kg !== null && each.weight_kg > 0);
  const { parts_minor } = splitMoney(
    paid_minor,
    harvests.map((each) => (known ? (each.weight_kg ?? 0) : 1)),
  );
  return harvests.map((each, at) => ({ plantingId: each.plantingId, bedId: each.bedId, paid_minor: parts_minor[at] ?? 0 }));
}
