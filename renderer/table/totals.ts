import type { Column } from './column.ts';

/** The sum or mean of a column over rows that have a value; undefined when none has. */
export function totalOf<Row>(column: Column<Row>, rows: readonly Row[]): number | undefined {
  if (column.total === undefined) return undefined;
  const values = rows.map(column.read).filter((value): value is number => typeof value === 'number' && Number.isFinite(value));
  if (values.length === 0) return undefined;
  const sum = values.reduce((all, value) => all + value, 0);
  return column.total === 'sum' ? sum : sum / values.length;
}
