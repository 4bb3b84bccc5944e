import type { SeasonProblem, UnitGroup } from './problem.ts';

export type BestPath = { readonly value: number; readonly sequence: readonly number[] };

/**
 * The most valuable row of plantings for one piece of bed: a longest path over the weeks. From week t one may idle to
 * t + 1 for nothing, or put in an option that starts at t, gain its value and go on where it ends; fixed spans are
 * crossed whole. The rules on families within the season are kept exactly: the path is first found without them, and
 * only a family whose rule it breaks is added to what the path must remember (a mark "has been" for *once*, "was the
 * last" for *not back to back*).
 *
 * @param value of each of the group's options, in the order of `group.options`; 0 or less is never taken
 * Source: Righini & Salani, decremental state space relaxation, Networks 51, 2008 (from memory).
 */
export function bestPath(problem: SeasonProblem, group: UnitGroup, value: Float64Array): BestPath {
  const once: number[] = [];
  const apart: number[] = [];
  for (;;) {
    const path =
      once.length + apart.length === 0 ? freePath(problem, group, value) : ruledPath(problem, group, value, once, apart);
    const family = brokenRule(problem, group, path.sequence);
    if (family === -1) return path;
    (problem.instance.families[family]!.inSeason === 'once' ? once : apart).push(family);
  }
}

let bestFrom = new Float64Array(0);
let choiceAt = new Int32Array(0);

function room(size: number): void {
  if (bestFrom.length >= size) return;
  bestFrom = new Float64Array(size);
  choiceAt = new Int32Array(size);
}

function freePath(problem: SeasonProblem, group: UnitGroup, value: Float64Array): BestPath {
  const { weeks, optionEnd } = problem;
  const { options, starts, fixedTo } = group;
  room(weeks + 1);
  const best = bestFrom;
  const choice = choiceAt;
  best[weeks] = 0;
  for (let week = weeks - 1; week >= 0; week--) {
    const jump = fixedTo[week]!;
    if (jump >= 0) {
      best[week] = best[jump]!;
      choice[week] = -1;
      continue;
    }
    let top = best[week + 1]!;
    let chosen = -1;
    const last = starts[week + 1]!;
    for (let at = starts[week]!; at < last; at++) {
      const gain = value[at]!;
      if (gain <= 0) continue;
      const sum = gain + best[optionEnd[options[at]!]!]!;
      if (sum > top) {
        top = sum;
        chosen = at;
      }
    }
    best[week] = top;
    choice[week] = chosen;
  }
  const sequence: number[] = [];
  for (let week = 0; week < weeks; ) {
    const chosen = choice[week]!;
    if (chosen >= 0) {
      const j = options[chosen]!;
      sequence.push(j);
      week = optionEnd[j]!;
    } else week = fixedTo[week]! >= 0 ? fixedTo[week]! : week + 1;
  }
  return { value: best[0]!, sequence };
}

function ruledPath(
  problem: SeasonProblem,
  group: UnitGroup,
  value: Float64Array,
  once: readonly number[],
  apart: readonly number[],
): BestPath {
  const { weeks, optionEnd, optionFamily } = problem;
  const { options, starts, fixedTo, fixedFamily, guardedFamily } = group;
  const lasts = apart.length + 1;
  const states = lasts << once.length;
  room((weeks + 1) * states);
  const best = bestFrom;
  const choice = choiceAt;
  best.fill(0, weeks * states, (weeks + 1) * states);
  const next = (state: number, family: number): number => {
    const mark = once.indexOf(family);
    const last = apart.indexOf(family) + 1;
    const used = Math.floor(state / lasts);
    if (mark >= 0 && (used >> mark) & 1) return -1;
    if (last > 0 && state % lasts === last) return -1;
    return (mark >= 0 ? used | (1 << mark) : used) * lasts + last;
  };
  for (let week = weeks - 1; week >= 0; week--) {
    const jump = fixedTo[week]!;
    for (let state = 0; state < states; state++) {
      const here = week * states + state;
      choice[here] = -1;
      if (jump >= 0) {
        const guarded = apart.indexOf(guardedFamily[week]!) + 1;
        const follows = guarded > 0 && state % lasts === guarded;
        best[here] = follows
          ? Number.NEGATIVE_INFINITY
          : best[jump * states + afterFixed(state, fixedFamily[week]!, apart, lasts)]!;
        continue;
      }
      let top = best[here + states]!;
      const last = starts[week + 1]!;
      for (let at = starts[week]!; at < last; at++) {
        const gain = value[at]!;
        if (gain <= 0) continue;
        const j = options[at]!;
        const to = next(state, optionFamily[j]!);
        if (to < 0) continue;
        const sum = gain + best[optionEnd[j]! * states + to]!;
        if (sum > top) {
          top = sum;
          choice[here] = at;
        }
      }
      best[here] = top;
    }
  }
  const sequence: number[] = [];
  let state = 0;
  for (let week = 0; week < weeks; ) {
    const chosen = choice[week * states + state]!;
    if (chosen >= 0) {
      const j = options[chosen]!;
      sequence.push(j);
      state = next(state, optionFamily[j]!);
      week = optionEnd[j]!;
    } else if (fixedTo[week]! >= 0) {
      state = afterFixed(state, fixedFamily[week]!, apart, lasts);
      week = fixedTo[week]!;
    } else week += 1;
  }
  return { value: best[0]!, sequence };
}

const afterFixed = (state: number, family: number, apart: readonly number[], lasts: number): number =>
  state - (state % lasts) + (apart.indexOf(family) + 1);

/** The first family whose rule a row of plantings breaks in this group, fixed spans counted; -1 where all hold. */
export function brokenRule(problem: SeasonProblem, group: UnitGroup, sequence: readonly number[]): number {
  const { families } = problem.instance;
  const seen: number[] = [];
  let last = -1;
  let at = 0;
  for (let week = 0; week < problem.weeks; week++) {
    if (group.fixedTo[week]! >= 0) {
      const family = group.fixedFamily[week]!;
      if (last >= 0 && last === group.guardedFamily[week]!) return last;
      last = family;
      continue;
    }
    const j = sequence[at];
    if (j === undefined || problem.optionStart[j] !== week) continue;
    at += 1;
    const family = problem.optionFamily[j]!;
    const rule = families[family]!.inSeason;
    if (rule === 'once') {
      if (seen.includes(family)) return family;
      seen.push(family);
    } else if (rule === 'not-back-to-back' && last === family) return family;
    last = family;
  }
  return -1;
}
