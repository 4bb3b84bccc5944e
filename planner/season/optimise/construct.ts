import { bestResponse, type ResponseWishes } from './best-response.ts';
import type { Generator } from './generator.ts';
import type { SearchState } from './search-state.ts';

/** Units by falling area, ties by index: the order in which empty units are filled. */
export function largestFirst(state: SearchState, units: readonly number[]): number[] {
  const { groups, groupOfUnit } = state.problem;
  const area = (unit: number) => groups[groupOfUnit[unit]!]!.area_m2;
  return [...units].sort((a, b) => area(b) - area(a) || a - b);
}

/** Fills empty units one after another with their best row given the rest. */
export function fillUnits(state: SearchState, units: readonly number[], wishes: ResponseWishes = {}): void {
  for (const unit of units) state.put(unit, bestResponse(state, unit, wishes));
}

/** The first plan: every unit its best row, largest first. */
export function greedyPlan(state: SearchState): void {
  fillUnits(
    state,
    largestFirst(
      state,
      state.sequences.map((_, unit) => unit),
    ),
  );
}

/** Gives one unit its best row given all others. @returns what the margin rose by; 0 where the old row is kept */
export function improveUnit(state: SearchState, unit: number, before_minor: number): number {
  const old = state.take(unit);
  const better = bestResponse(state, unit);
  state.put(unit, better);
  if (same(old, better)) return 0;
  const rise = state.margin_minor() - before_minor;
  if (rise > 1e-6) return rise;
  state.take(unit);
  state.put(unit, old);
  return 0;
}

/** Sweeps all units in random order until none can be improved alone, or `sweeps` are done. */
export function localPlan(
  state: SearchState,
  generator: Generator,
  wishes: { readonly shouldStop: () => boolean; readonly sweeps?: number },
): void {
  const units = state.sequences.map((_, unit) => unit);
  let margin = state.margin_minor();
  for (let sweep = 0; sweep < (wishes.sweeps ?? 30); sweep++) {
    const start = margin;
    for (const unit of generator.shuffle(units)) {
      if (improveUnit(state, unit, margin) > 0) margin = state.margin_minor();
      if (wishes.shouldStop()) return;
    }
    if (margin - start <= 1e-6 * Math.max(1, Math.abs(margin))) return;
  }
}

function same(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((j, at) => j === b[at]);
}
