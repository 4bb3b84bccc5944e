import { useVirtualizer } from '@tanstack/react-virtual';
import { type CSSProperties, type MouseEvent, type ReactNode, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { announce } from '../client/announce.ts';
import { type Failure, faultText } from '../client/failure.ts';
import { useReader } from '../client/reader.tsx';
import { usePrintable } from '../print/printables.ts';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';
import { blockOf } from './block-of.ts';
import { cellText, spreadsheetText } from './cell-text.ts';
import { type Column, canEdit } from './column.ts';
import { filterRows } from './filter-rows.ts';
import { type CellActions, GridRow } from './grid-cell.tsx';
import { GridFaults } from './grid-faults.tsx';
import { GridFoot } from './grid-foot.tsx';
import { GridHead } from './grid-head.tsx';
import { GridTools } from './grid-tools.tsx';
import { type Edit, fillColumn, pasteBlock } from './paste-block.ts';
import { printedTable } from './printed-table.ts';
import { remembered } from './remembered.ts';
import { useTableModel } from './table-model.ts';
import { readTsv, writeTsv } from './tsv.ts';
import { useFollowedSelection } from './use-followed-selection.ts';
import { useGridKeys } from './use-grid-keys.ts';
import { usePrinting } from './use-printing.ts';
import { useSelection } from './use-selection.ts';

export type GridProps<Row extends object> = {
  /** Names the table to the reader and keeps its chosen columns: "Beds". */
  readonly name: string;
  readonly rows: readonly Row[];
  readonly columns: readonly Column<Row>[];
  readonly rowId: (row: Row) => string;
  /** Enter or a double click on a row that is not being edited; also marks it as the one whose sheet is open. */
  readonly onOpen?: (row: Row) => void;
  /** All edits of one act (a cell, many rows, a pasted block) together, to be one change and one step of undo. */
  readonly onEdit?: (edits: readonly Edit<Row>[]) => Promise<unknown>;
  /** Why the last edit was refused, as `useChange` gives it. */
  readonly failure?: Failure | undefined;
  readonly onSelect?: (ids: readonly string[]) => void;
  /** What is selected elsewhere on the page, as in a drawing beside the table: the table follows. */
  readonly selected?: readonly string[];
  /** Buttons of the page beside the filter. */
  readonly tools?: ReactNode;
  /** Shown when there is no row at all. */
  readonly empty?: ReactNode;
};

const ROW_PX = 30;
const MARK_PX = 32;
const DEFAULT_WIDTH = { text: 160, choice: 130, date: 110, flag: 70, quantity: 100, money: 100, count: 80, share: 80 } as const;

type Cell = { readonly row: number; readonly column: number };

/** The one table of the program: sort, filter, choose columns, select, edit, fill, paste, copy, export, total. */
export function Grid<Row extends object>(props: GridProps<Row>) {
  const { name, rows, columns, rowId, onOpen, onEdit, onSelect, tools, empty } = props;
  const reader = useReader();
  const scroll = useRef<HTMLDivElement>(null);
  const [typed, setTyped] = useState('');
  const [active, setActive] = useState<Cell>({ row: 0, column: 0 });
  const [editing, setEditing] = useState<{ readonly text: string | undefined }>();
  const [faults, setFaults] = useState<readonly string[]>([]);
  const [closed, setClosed] = useState<Failure>();
  const failure = props.failure === closed ? undefined : props.failure;
  const printing = usePrinting();

  const textOf = useMemo(() => {
    const kept = new WeakMap<Row, string>();
    return (row: Row): string => {
      const known = kept.get(row);
      if (known !== undefined) return known;
      const made = columns.map((column) => cellText(column, column.read(row), reader)).join('\n');
      kept.set(row, made);
      return made;
    };
  }, [columns, reader]);
  const filtered = useMemo(() => filterRows(rows, typed, textOf), [rows, typed, textOf]);
  const model = useTableModel({ name, rows: filtered, columns, rowId });
  const { columnVisibility, sorting } = model.state;
  const shownColumns = useMemo(
    () => columns.filter((column) => columnVisibility[column.key] !== false),
    [columns, columnVisibility],
  );
  const sorted = model.getRowModel().rows;
  const shownRows = useMemo(() => sorted.map((row) => row.original), [sorted]);
  const selection = useSelection(model, shownRows, rowId, onSelect);
  useFollowedSelection(props.selected, model, (id) => {
    const index = shownRows.findIndex((row) => rowId(row) === id);
    if (index >= 0) virtual.scrollToIndex(index);
  });

  const asShown = useRef<{ readonly columns: readonly Column<Row>[]; readonly text: string }>(undefined);
  useEffect(() => {
    const now = {
      hidden: Object.fromEntries(columns.map((column) => [column.key, columnVisibility[column.key] === false])),
      sort: sorting.map(({ id, desc }) => ({ id, desc })),
    };
    const before = asShown.current;
    asShown.current = { columns, text: JSON.stringify(now) };
    // only what the reader changes is kept, not how the table stands when it is opened
    if (before !== undefined && before.columns === columns && before.text !== asShown.current.text) remembered.set(name, now);
  }, [name, columns, columnVisibility, sorting]);

  const at: Cell = {
    row: Math.max(-1, Math.min(active.row, shownRows.length - 1)),
    column: Math.max(0, Math.min(active.column, shownColumns.length - 1)),
  };
  const virtual = useVirtualizer({
    count: shownRows.length,
    getScrollElement: () => scroll.current,
    estimateSize: () => ROW_PX,
    overscan: 12,
    scrollPaddingStart: scroll.current?.querySelector('thead')?.offsetHeight ?? ROW_PX,
    scrollPaddingEnd: ROW_PX,
  });

  const focusCell = useCallback(
    (cell: Cell): void => {
      setActive(cell);
      setEditing(undefined);
      if (cell.row >= 0) virtual.scrollToIndex(cell.row);
      requestAnimationFrame(() => {
        const row = scroll.current?.querySelector(`[data-row="${cell.row}"]`);
        row?.querySelector<HTMLElement>(`[data-column="${cell.column}"]`)?.focus({ preventScroll: cell.row >= 0 });
      });
    },
    [virtual],
  );

  const send = useCallback(
    (edits: readonly Edit<Row>[]): void => {
      setFaults([]);
      if (edits.length > 0 && onEdit !== undefined) void onEdit(edits);
    },
    [onEdit],
  );

  const latest = useRef({ at, shownRows, shownColumns });
  latest.current = { at, shownRows, shownColumns };

  const openCell = useCallback(
    (row: number, column: number, startText?: string): void => {
      const now = latest.current;
      const target = now.shownRows[row];
      const of = now.shownColumns[column];
      if (target === undefined || of === undefined) return;
      setActive({ row, column });
      if (onEdit !== undefined && canEdit(of, target)) {
        if (of.kind === 'flag' && startText === undefined) send([{ row: target, key: of.key, value: of.read(target) !== true }]);
        else setEditing({ text: startText });
      } else onOpen?.(target);
    },
    [onEdit, onOpen, send],
  );

  const actions = useMemo<CellActions<Row>>(
    () => ({
      commit: (row, column, value, move) => {
        if (value !== column.read(row)) send([{ row, key: column.key, value }]);
        const now = latest.current.at;
        const to = { down: [1, 0], right: [0, 1], left: [0, -1], stay: [0, 0] }[move];
        const next = { row: now.row + (to[0] ?? 0), column: now.column + (to[1] ?? 0) };
        if (move === 'stay') setEditing(undefined);
        else
          focusCell({
            row: Math.min(next.row, latest.current.shownRows.length - 1),
            column: Math.max(0, Math.min(next.column, latest.current.shownColumns.length - 1)),
          });
      },
      cancel: () => focusCell(latest.current.at),
      point: (row, column, event) => {
        if ((event.target as Element).closest('.cell-editor, a, button') !== null) return;
        setEditing(undefined);
        setActive({ row, column });
        if (event.shiftKey || event.ctrlKey || event.metaKey) {
          event.preventDefault();
          selection.toggle(row, event.shiftKey);
        }
      },
      open: (row, column) => openCell(row, column),
      openRow: (row) => {
        const target = latest.current.shownRows[row];
        if (target !== undefined) onOpen?.(target);
      },
      toggle: selection.toggle,
    }),
    [focusCell, openCell, send, selection.toggle, onOpen],
  );

  /** A click on a cell that can't be edited opens the row. */
  const onClick = (event: MouseEvent): void => {
    const element = event.target as Element;
    if (event.shiftKey || event.ctrlKey || event.metaKey || element.closest('.cell-editor, input, a, button') !== null) return;
    const { row, column } = placeOf(element);
    const target = shownRows[row];
    const of = shownColumns[column];
    if (target === undefined || of === undefined || onOpen === undefined) return;
    if (onEdit === undefined || !canEdit(of, target)) onOpen(target);
  };

  const fillDown = (): void => {
    const column = shownColumns[at.column];
    const from = shownRows[selection.rows.length > 1 ? shownRows.indexOf(selection.rows[0] as Row) : at.row - 1];
    const into = selection.rows.length > 1 ? selection.rows : shownRows.slice(at.row, at.row + 1);
    if (column !== undefined && from !== undefined) send(fillColumn(column, into, column.read(from)));
  };

  const onKeyDown = useGridKeys({
    at,
    rowCount: shownRows.length,
    columnCount: shownColumns.length,
    focusCell,
    openCell,
    openRow: (row) => {
      const target = shownRows[row];
      if (target !== undefined) onOpen?.(target);
    },
    selection,
    fillDown,
    editable: onEdit !== undefined,
  });

  const paste = (text: string): void => {
    if (onEdit === undefined || at.row < 0) return;
    const pasted = pasteBlock(readTsv(text), { rows: shownRows, columns: shownColumns, row: at.row, column: at.column }, reader);
    setFaults(pasted.faults);
    if (pasted.faults.length > 0) announce(say('The block was not pasted. Nothing was changed.'), 'now');
    else send(pasted.edits);
  };

  const copied = (): string => {
    const one = shownColumns[at.column];
    const row = shownRows[at.row];
    if (selection.rows.length === 0) return one === undefined || row === undefined ? '' : cellText(one, one.read(row), reader);
    return writeTsv(spreadsheetText(blockOf(shownColumns, selection.rows, reader), reader));
  };

  const items = printing ? shownRows.map((_, index) => ({ index })) : virtual.getVirtualItems();
  const first = printing ? 0 : (virtual.getVirtualItems()[0]?.start ?? 0);
  const last = printing ? 0 : virtual.getTotalSize() - (virtual.getVirtualItems().at(-1)?.end ?? 0);
  const hasTotals = columns.some((column) => column.total !== undefined);
  const messages =
    faults.length > 0 ? faults : (failure?.faults.map((fault) => faultText(fault, reader.system, reader.locale)) ?? []);

  const printable = usePrintable(async () => [
    { kind: 'heading', level: 2, text: sayKnown(name) },
    printedTable(shownColumns, selection.rows.length > 0 ? selection.rows : shownRows, reader),
  ]);

  if (rows.length === 0 && empty !== undefined) return empty;
  return (
    <section
      className="grid"
      ref={printable}
      aria-label={sayKnown(name)}
      style={
        {
          '--grid-height': `${shownRows.length * ROW_PX + (hasTotals ? 2 : 1) * ROW_PX + 52}px`,
          '--grid-width': `${widthOf(shownColumns)}px`,
        } as CSSProperties
      }
    >
      <GridTools
        name={sayKnown(name)}
        columns={columns}
        shownColumns={shownColumns}
        shownRows={shownRows}
        rowCount={rows.length}
        model={model}
        selected={selection.rows}
        typed={typed}
        onType={setTyped}
        onEdit={onEdit === undefined ? undefined : send}
        tools={tools}
      />
      <GridFaults
        messages={messages.length > 0 ? messages : failure === undefined ? [] : [failure.message]}
        onClear={() => {
          setFaults([]);
          setClosed(props.failure);
        }}
      />
      <div
        className="grid-scroll"
        ref={scroll}
        onCopy={(event) => {
          if ((event.target as Element).closest('input, select') !== null) return;
          event.preventDefault();
          event.clipboardData.setData('text/plain', copied());
          announce(
            selection.rows.length === 0 ? say('Copied the cell.') : say('Copied {rows} rows.', { rows: selection.rows.length }),
          );
        }}
        onPaste={(event) => {
          if ((event.target as Element).closest('input, select') !== null) return;
          event.preventDefault();
          paste(event.clipboardData.getData('text/plain'));
        }}
      >
        <div style={{ paddingBlockStart: first, paddingBlockEnd: last, minWidth: printing ? 0 : widthOf(shownColumns) }}>
          <table
            // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table that is moved through by keys is a grid
            role="grid"
            aria-label={sayKnown(name)}
            aria-rowcount={shownRows.length + 1}
            aria-colcount={shownColumns.length + 1}
            aria-multiselectable="true"
            onKeyDown={onKeyDown}
            onClick={onClick}
            onFocus={(event) => {
              const place = placeOf(event.target);
              if (place.column >= 0 && (place.row !== at.row || place.column !== at.column)) setActive(place);
            }}
          >
            <colgroup>
              <col className="grid-mark" style={{ width: MARK_PX }} />
              {shownColumns.map((column) => (
                <col
                  key={column.key}
                  {...(printing
                    ? {}
                    : { style: { width: column.width ?? (column.kind === 'text' ? 'auto' : DEFAULT_WIDTH[column.kind]) } })}
                />
              ))}
            </colgroup>
            <GridHead model={model} columns={shownColumns} reader={reader} active={at.row === -1 ? at.column : -1} />
            <tbody>
              {items.map(({ index }) => {
                const row = shownRows[index];
                if (row === undefined) return null;
                const id = rowId(row);
                return (
                  <GridRow
                    key={id}
                    row={row}
                    id={id}
                    index={index}
                    columns={shownColumns}
                    selected={selection.has(id)}
                    active={index === at.row ? at.column : -1}
                    editing={index === at.row ? editing : undefined}
                    reader={reader}
                    opens={onOpen !== undefined}
                    actions={actions}
                  />
                );
              })}
            </tbody>
            {hasTotals ? (
              <GridFoot columns={shownColumns} rows={selection.rows.length > 1 ? selection.rows : shownRows} reader={reader} />
            ) : null}
          </table>
          {shownRows.length === 0 ? (
            <p className="grid-empty">
              {say('No row has {more}.', { more: typed === '' ? say('been entered yet') : `“${typed}”` })}
            </p>
          ) : null}
        </div>
      </div>
    </section>
  );
}

/** Row and column of the cell an element is in; a column of -1 for the marks at the side and for elements of no cell. */
function placeOf(element: Element): Cell {
  const row = element.closest('[data-row]')?.getAttribute('data-row');
  const column = element.closest('[data-column]')?.getAttribute('data-column');
  return row === null || row === undefined || column === null || column === undefined
    ? { row: -1, column: -1 }
    : { row: Number(row), column: Number(column) };
}

function widthOf<Row>(columns: readonly Column<Row>[]): number {
  return MARK_PX + columns.reduce((sum, column) => sum + (column.width ?? DEFAULT_WIDTH[column.kind]), 0);
}
