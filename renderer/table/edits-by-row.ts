import type { Edit } from './paste-block.ts';

/** The edits of one act gathered by row, as `setMany` procedures take them: the row and its new values by name. */
export function editsByRow<Row>(
  edits: readonly Edit<Row>[],
): readonly { readonly row: Row; readonly values: Readonly<Record<string, unknown>> }[] {
  const rows = new Map<Row, Record<string, unknown>>();
  for (const { row, key, value } of edits) {
    const values = rows.get(row) ?? {};
    values[key] = value;
    rows.set(row, values);
  }
  return [...rows].map(([row, values]) => ({ row, values }));
}
