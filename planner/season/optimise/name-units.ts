import type { SeasonProblem } from './problem.ts';

const SAME_BED = 3;
const LONG_ABSENT = 0.1;
const MOST_SWEEPS = 12;

/**
 * Gives the rows of plantings found for each group to its units by name. Cannot fail: a group's units are alike in all that
 * constrains them, so any one-to-one hand-out is feasible and earns the same. A pleasing one is sought: rows sorted by
 * first crop onto units in the order they lie; then two units of one group are swapped while the score rises: one point
 * for each week in which neighbours of a block carry the same crop, three within one bed, a little for families long absent.
 */
export function nameUnits(problem: SeasonProblem, sequences: readonly (readonly number[])[]): (readonly number[])[] {
  const { units } = problem.instance;
  const lie = (a: number, b: number) => {
    const x = units[a]!;
    const y = units[b]!;
    return x.block - y.block || x.position - y.position || x.part - y.part || a - b;
  };
  const named: (readonly number[])[] = sequences.map(() => []);
  const ordered = problem.groups.map((group) => [...group.units].sort(lie));
  for (const order of ordered) {
    const rows = order.map((unit) => sequences[unit]!).sort((a, b) => compareRows(problem, a, b));
    order.forEach((unit, at) => {
      named[unit] = rows[at]!;
    });
  }
  const line = units.map((_, unit) => unit).sort(lie);
  const neighbours: number[][] = units.map(() => []);
  line.forEach((unit, at) => {
    const next = line[at + 1];
    if (next === undefined || units[next]!.block !== units[unit]!.block) return;
    if (Math.abs(units[next]!.position - units[unit]!.position) > 1) return;
    neighbours[unit]!.push(next);
    neighbours[next]!.push(unit);
  });
  const score = (unit: number, row: readonly number[], without: number): number => {
    let sum = 0;
    for (const other of neighbours[unit]!)
      if (other !== without)
        sum += sharedWeeks(problem, row, named[other]!) * (units[other]!.bedId === units[unit]!.bedId ? SAME_BED : 1);
    for (const j of row) sum += LONG_ABSENT * Math.min(10, units[unit]!.seasonsSince[problem.optionFamily[j]!] ?? 10);
    return sum;
  };
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let swapped = false;
    for (const order of ordered)
      for (let a = 0; a < order.length; a++)
        for (let b = a + 1; b < order.length; b++) {
          const [p, q] = [order[a]!, order[b]!];
          const [rowP, rowQ] = [named[p]!, named[q]!];
          if (rowP === rowQ) continue;
          const now = score(p, rowP, q) + score(q, rowQ, p);
          const then = score(p, rowQ, q) + score(q, rowP, p);
          if (then > now + 1e-9) {
            named[p] = rowQ;
            named[q] = rowP;
            swapped = true;
          }
        }
    if (!swapped) break;
  }
  return named;
}

function compareRows(problem: SeasonProblem, a: readonly number[], b: readonly number[]): number {
  for (let at = 0; at < Math.min(a.length, b.length); at++) {
    const crops = problem.optionCrop[a[at]!]! - problem.optionCrop[b[at]!]!;
    if (crops !== 0) return crops;
    if (a[at] !== b[at]) return a[at]! - b[at]!;
  }
  return b.length - a.length;
}

/** Weeks in which two rows have the same crop in the ground. */
function sharedWeeks(problem: SeasonProblem, a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (const i of a)
    for (const j of b)
      if (problem.optionCrop[i] === problem.optionCrop[j])
        sum += Math.max(
          0,
          Math.min(problem.optionEnd[i]!, problem.optionEnd[j]!) - Math.max(problem.optionStart[i]!, problem.optionStart[j]!),
        );
  return sum;
}
