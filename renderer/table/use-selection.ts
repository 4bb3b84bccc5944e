import { useCallback, useEffect, useMemo, useRef } from 'react';
import type { TableModel } from './table-model.ts';

export type Selection<Row> = {
  /** Selected rows in the order they are shown. */
  readonly rows: readonly Row[];
  readonly has: (id: string) => boolean;
  /** Selects or leaves one row; with `range` all from the last one touched to it. */
  readonly toggle: (index: number, range: boolean) => void;
  readonly all: () => void;
  readonly none: () => void;
};

/** Which rows are selected. Rows that are filtered out or gone are not counted. */
export function useSelection<Row extends object>(
  model: TableModel<Row>,
  shownRows: readonly Row[],
  rowId: (row: Row) => string,
  onSelect: ((ids: readonly string[]) => void) | undefined,
): Selection<Row> {
  const { rowSelection } = model.state;
  const anchor = useRef(0);
  const now = useRef({ shownRows, rowSelection, rowId, model, onSelect });
  now.current = { shownRows, rowSelection, rowId, model, onSelect };
  const rows = useMemo(() => shownRows.filter((row) => rowSelection[rowId(row)] === true), [shownRows, rowSelection, rowId]);

  const ids = useMemo(() => rows.map(rowId).join('\n'), [rows, rowId]);
  useEffect(() => now.current.onSelect?.(ids === '' ? [] : ids.split('\n')), [ids]);

  const toggle = useCallback((index: number, range: boolean): void => {
    const { shownRows: list, rowSelection: chosen, rowId: idOf, model: table } = now.current;
    const row = list[index];
    if (row === undefined) return;
    const wanted = range || chosen[idOf(row)] !== true;
    const [from, to] = range ? [Math.min(anchor.current, index), Math.max(anchor.current, index)] : [index, index];
    const next = { ...chosen };
    for (const each of list.slice(from, to + 1)) {
      if (wanted) next[idOf(each)] = true;
      else delete next[idOf(each)];
    }
    if (!range) anchor.current = index;
    table.setRowSelection(next);
  }, []);
  const all = useCallback(() => now.current.model.toggleAllRowsSelected(true), []);
  const none = useCallback(() => now.current.model.setRowSelection({}), []);
  return { rows, has: (id) => rowSelection[id] === true, toggle, all, none };
}
