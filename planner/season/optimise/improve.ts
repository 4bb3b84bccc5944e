import { bestResponse } from './best-response.ts';
import { improveUnit, largestFirst } from './construct.ts';
import type { Generator } from './generator.ts';
import type { ScarcityPrices, SearchState } from './search-state.ts';

/** Shares of the scarcity prices tried when refilling. */
const FACTORS = [0, 0.5, 1] as const;
/** The stop flag is read every so many moves. */
const MOVES_BETWEEN_LOOKS = 8;

export type ImproveWishes = {
  readonly moves: number;
  readonly prices: ScarcityPrices | null;
  readonly shouldStop: () => boolean;
  /** Told of every better plan; answers true when the plan is good enough. */
  readonly onBetter: (margin_minor: number) => boolean;
};

/**
 * Takes a handful of units out and fills them anew, over and over: 40 % of the moves take units that share a crop, 55 %
 * any units, 5 % all units of one crop, which is barred for that move. In a quarter of the moves new crops come in without
 * their overhead, in an eighth a quarter of the options is left out by chance: both only while refilling. Kept when the margin does not fall by more than a
 * small, falling allowance; the best plan seen is the one that stands at the end. Limited by count, so the same seed
 * gives the same plan.
 * Source: Schrimpf et al., Record breaking optimization results using the ruin and recreate principle, J. Comp. Physics
 * 159, 2000 (from memory); the shares are our own, from trials.
 */
export function improvePlan(state: SearchState, generator: Generator, wishes: ImproveWishes): number {
  let margin = state.margin_minor();
  let best = margin;
  let bestSequences = [...state.sequences];
  for (let move = 0; move < wishes.moves; move++) {
    if (move % MOVES_BETWEEN_LOOKS === 0 && wishes.shouldStop()) break;
    const { units, barredCrop } = pickUnits(state, generator);
    if (units.length === 0) continue;
    const old = units.map((unit) => state.take(unit));
    const factor = FACTORS[generator.below(3)]!;
    const order = generator.below(2) === 0 ? largestFirst(state, units) : units;
    const overheadFree = generator.below(4) === 0;
    const shaken = generator.below(8) === 0;
    for (const unit of order) {
      const leaveOut = shaken ? () => generator.below(4) === 0 : null;
      state.put(unit, bestResponse(state, unit, { prices: wishes.prices, factor, barredCrop, overheadFree, leaveOut }));
    }
    let after = state.margin_minor();
    for (const unit of units) after += improveUnit(state, unit, after);
    const allowance = 1e-4 * Math.abs(best) * (1 - move / wishes.moves) * (generator.below(1000) / 1000);
    if (after >= margin - allowance && Number.isFinite(after)) {
      margin = after;
      if (margin > best + 1e-6 * Math.max(1, Math.abs(best))) {
        best = margin;
        bestSequences = [...state.sequences];
        if (wishes.onBetter(best)) break;
      }
    } else {
      for (const unit of units) state.take(unit);
      units.forEach((unit, at) => {
        state.put(unit, old[at]!);
      });
    }
  }
  restore(state, bestSequences);
  return state.margin_minor();
}

/** Makes the state's plan the given one. */
export function restore(state: SearchState, sequences: readonly (readonly number[])[]): void {
  const changed = sequences.flatMap((sequence, unit) => (sequence === state.sequences[unit] ? [] : [unit]));
  for (const unit of changed) state.take(unit);
  for (const unit of changed) state.put(unit, sequences[unit]!);
}

function pickUnits(state: SearchState, generator: Generator): { readonly units: number[]; readonly barredCrop: number } {
  const count = Math.min(state.sequences.length, 3 + generator.below(12));
  const kind = generator.below(100);
  const { optionCrop } = state.problem;
  if (kind >= 45) {
    const chosen = new Set<number>();
    while (chosen.size < count) chosen.add(generator.below(state.sequences.length));
    return { units: [...chosen], barredCrop: -1 };
  }
  const grown: number[] = [];
  state.cropPlantings.forEach((plantings, c) => {
    if (plantings > 0) grown.push(c);
  });
  if (grown.length === 0) return { units: [], barredCrop: -1 };
  const crop = grown[generator.below(grown.length)]!;
  const sharing = state.sequences.flatMap((sequence, unit) => (sequence.some((j) => optionCrop[j] === crop) ? [unit] : []));
  generator.shuffle(sharing);
  if (kind < 5) return { units: sharing, barredCrop: crop };
  const units = sharing.slice(0, count);
  while (units.length < Math.min(3, state.sequences.length)) {
    const other = generator.below(state.sequences.length);
    if (!units.includes(other)) units.push(other);
  }
  return { units, barredCrop: -1 };
}
