/** A value read from a table, and whether the place asked for lay outside it (the edge row was taken then). */
export type TableReading = { readonly value: number; readonly outside: 'no' | 'below' | 'above' };

/**
 * Reads between the rows of a table by a straight line; outside the table the edge row is held.
 *
 *   v = v0 + (v1 - v0)(x - x0)/(x1 - x0)
 *
 * Rows may come in any order; at least one is needed.
 * Source: linear interpolation, a definition.
 */
export function readBetween(rows: readonly (readonly [x: number, value: number])[], x: number): TableReading {
  const sorted = [...rows].sort((a, b) => a[0] - b[0]);
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return { value: Number.NaN, outside: 'below' };
  if (x < first[0]) return { value: first[1], outside: 'below' };
  if (x > last[0]) return { value: last[1], outside: 'above' };
  const at = sorted.findIndex(([place]) => place >= x);
  const upper = sorted[at] ?? last;
  const lower = sorted[Math.max(0, at - 1)] ?? first;
  const span = upper[0] - lower[0];
  return { value: span === 0 ? upper[1] : lower[1] + ((upper[1] - lower[1]) * (x - lower[0])) / span, outside: 'no' };
}

/** The first class whose upper bound is not exceeded; the last has no bound. */
export function classOf(value: number, classes: readonly string[], upperBounds: readonly (number | null)[]): string {
  const at = upperBounds.findIndex((bound) => bound === null || value <= bound);
  return classes[at === -1 ? classes.length - 1 : at] ?? '';
}
