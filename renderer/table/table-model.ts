import {
  type ColumnDef,
  columnVisibilityFeature,
  createSortedRowModel,
  rowSelectionFeature,
  rowSortingFeature,
  tableFeatures,
  useTable,
} from '@tanstack/react-table';
import { useMemo } from 'react';
import { compareCells } from './cell-text.ts';
import type { CellValue, Column } from './column.ts';
import { remembered } from './remembered.ts';

const features = tableFeatures({
  rowSortingFeature,
  rowSelectionFeature,
  columnVisibilityFeature,
  sortedRowModel: createSortedRowModel(),
  sortFns: {},
});

/** Sorting, selecting and choosing columns over rows that are already filtered. */
export function useTableModel<Row extends object>(props: {
  readonly name: string;
  readonly rows: readonly Row[];
  readonly columns: readonly Column<Row>[];
  readonly rowId: (row: Row) => string;
}) {
  const { name, rows, columns, rowId } = props;
  const definitions = useMemo(
    () =>
      columns.map(
        (column): ColumnDef<typeof features, Row> => ({
          id: column.key,
          accessorFn: (row: Row) => column.read(row) ?? undefined,
          sortUndefined: 'last',
          sortFn: (a, b) => compareCells(column, a.getValue(column.key) as CellValue, b.getValue(column.key) as CellValue),
        }),
      ),
    [columns],
  );
  const initialState = useMemo(() => {
    const kept = remembered.get(name);
    const columnVisibility = Object.fromEntries(
      columns.map((column) => [column.key, !(kept.hidden?.[column.key] ?? column.shown === false)]),
    );
    const known = new Set(columns.map((column) => column.key));
    return {
      columnVisibility,
      sorting: (kept.sort ?? []).filter(({ id }) => known.has(id)).map(({ id, desc }) => ({ id, desc })),
    };
  }, [name, columns]);
  return useTable({
    features,
    columns: definitions,
    data: rows as Row[],
    getRowId: rowId,
    initialState,
    enableMultiSort: true,
    sortDescFirst: false,
  });
}

export type TableModel<Row extends object> = ReturnType<typeof useTableModel<Row>>;
