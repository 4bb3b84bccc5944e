import type { SeasonProblem, UnitGroup } from './problem.ts';

export type BestPath = { readonly value: number; readonly sequence: readonly number[] };

/**
 * The most valuable row of plantings for one piece of bed: a longest path over the weeks. From week t one may idle to
 * t + 1 for nothing, or put in an option that starts at t, gain its value and go on where it ends; fixed spans are
 * crossed whole. The rules on families within the season are kept exactly: the path is first found without them, and
 * only a family whose rule it breaks is added to what the path must remember (a mark "has been" for *once*, "has been
 * with this crop" for *one crop*, "was the last" for *not back to back*).
 *
 * @param value of each of the group's options, in the order of `group.options`; 0 or less is never taken
 * Source: Righini & Salani, decremental state space relaxation, Networks 51, 2008 (from memory).
 */
export function bestPath(problem: SeasonProblem, group: UnitGroup, value: Float64Array): BestPath {
  const marked: MarkedFamily[] = [];
  const apart: number[] = [];
  for (;;) {
    const path =
      marked.length + apart.length === 0 ? freePath(problem, group, value) : ruledPath(problem, group, value, marked, apart);
    const family = brokenRule(problem, group, path.sequence);
    if (family === -1) return path;
    const rule = problem.instance.families[family]!.inSeason;
    if (rule === 'not-back-to-back') apart.push(family);
    else marked.push({ family, crops: rule === 'once' ? null : cropsOfFamily(problem, family) });
  }
}

/** A family whose past in the unit is remembered: that it has been, or with which of its crops. */
type MarkedFamily = { readonly family: number; readonly crops: readonly number[] | null };

const cropsOfFamily = (problem: SeasonProblem, family: number): number[] =>
  problem.instance.crops.flatMap((crop, c) => (crop.family === family ? [c] : []));

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
  marked: readonly MarkedFamily[],
  apart: readonly number[],
): BestPath {
  const { weeks, optionEnd, optionFamily, optionCrop } = problem;
  const { options, starts, fixedTo, fixedFamily, guardedFamily } = group;
  const lasts = apart.length + 1;
  // The state is a number of mixed digits: the last family first, then one digit for each marked family.
  const steps: number[] = [];
  let states = lasts;
  for (const { crops } of marked) {
    steps.push(states);
    states *= crops === null ? 2 : crops.length + 1;
  }
  room((weeks + 1) * states);
  const best = bestFrom;
  const choice = choiceAt;
  best.fill(0, weeks * states, (weeks + 1) * states);
  const next = (state: number, j: number): number => {
    const family = optionFamily[j]!;
    const last = apart.indexOf(family) + 1;
    if (last > 0 && state % lasts === last) return -1;
    let to = state - (state % lasts) + last;
    for (let m = 0; m < marked.length; m++) {
      const { family: of, crops } = marked[m]!;
      if (of !== family) continue;
      const step = steps[m]!;
      const digit = Math.floor(state / step) % (crops === null ? 2 : crops.length + 1);
      const mark = crops === null ? 1 : crops.indexOf(optionCrop[j]!) + 1;
      if (digit !== 0 && (crops === null || digit !== mark)) return -1;
      to += (mark - digit) * step;
    }
    return to;
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
        const to = next(state, j);
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
      state = next(state, j);
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
  const seen = new Map<number, number>();
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
    if (rule === 'once' || rule === 'one-crop') {
      const mark = rule === 'once' ? -1 : problem.optionCrop[j]!;
      if (seen.has(family) && (rule === 'once' || seen.get(family) !== mark)) return family;
      seen.set(family, mark);
    } else if (rule === 'not-back-to-back' && last === family) return family;
    last = family;
  }
  return -1;
}
