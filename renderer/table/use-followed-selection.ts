import { useEffect, useRef } from 'react';
import type { TableModel } from './table-model.ts';

/** Lets the table's selection follow one made elsewhere on the page, and brings its first row into view. */
export function useFollowedSelection<Row extends object>(
  selected: readonly string[] | undefined,
  model: TableModel<Row>,
  show: (id: string) => void,
): void {
  const now = useRef({ model, show });
  now.current = { model, show };
  const wanted = selected?.toSorted().join('\n');
  useEffect(() => {
    if (wanted === undefined) return;
    const ids = wanted === '' ? [] : wanted.split('\n');
    const chosen = now.current.model.state.rowSelection;
    const same = ids.length === Object.values(chosen).filter(Boolean).length && ids.every((id) => chosen[id] === true);
    if (same) return;
    now.current.model.setRowSelection(Object.fromEntries(ids.map((id) => [id, true])));
    if (ids[0] !== undefined) now.current.show(ids[0]);
  }, [wanted]);
}
