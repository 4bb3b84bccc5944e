import { memo, type ReactNode } from 'react';
import type { Reader } from '../../planner/units/reader.ts';
import { Icon } from '../look/icon.tsx';
import { say } from '../words/say.ts';
import { CellEditor } from './cell-editor.tsx';
import { cellText } from './cell-text.ts';
import { type CellValue, type Column, canEdit, isNumeric } from './column.ts';

/** What cells ask of their table. One object that stays the same between renders. */
export type CellActions<Row> = {
  readonly commit: (row: Row, column: Column<Row>, value: CellValue, move: 'down' | 'right' | 'left' | 'stay') => void;
  readonly cancel: () => void;
  readonly point: (rowIndex: number, columnIndex: number, event: React.MouseEvent) => void;
  readonly open: (rowIndex: number, columnIndex: number) => void;
  readonly openRow: (rowIndex: number) => void;
  readonly toggle: (rowIndex: number, range: boolean) => void;
};

type RowProps<Row extends object> = {
  readonly row: Row;
  readonly id: string;
  readonly index: number;
  readonly columns: readonly Column<Row>[];
  readonly selected: boolean;
  /** Column of the active cell when it is in this row, else -1. */
  readonly active: number;
  /** What the editor of the active cell starts with; undefined when nothing is being edited. */
  readonly editing: { readonly text: string | undefined } | undefined;
  readonly reader: Reader;
  /** Whether a row can be opened. */
  readonly opens: boolean;
  readonly actions: CellActions<Row>;
};

function GridRowPlain<Row extends object>(props: RowProps<Row>) {
  const { row, index, columns, selected, active, editing, reader, opens, actions } = props;
  return (
    <tr aria-rowindex={index + 2} aria-selected={selected} data-row={index}>
      <td className="grid-mark" aria-label={say('Selection')} aria-colindex={1} data-column={-1}>
        <input
          type="checkbox"
          tabIndex={-1}
          checked={selected}
          aria-label={say('Select {cell}', {
            cell: cellText(columns[0] as Column<Row>, columns[0]?.read(row), reader) || say('row {index}', { index: index + 1 }),
          })}
          onChange={() => undefined}
          onClick={(event) => actions.toggle(index, event.shiftKey)}
        />
      </td>
      {columns.map((column, at) => (
        <td
          key={column.key}
          aria-colindex={at + 2}
          data-column={at}
          data-kind={isNumeric(column) ? 'number' : column.kind}
          data-editable={canEdit(column, row) ? '' : undefined}
          tabIndex={at === active ? 0 : -1}
          onMouseDown={(event) => actions.point(index, at, event)}
          onDoubleClick={() => actions.open(index, at)}
        >
          {at === active && editing !== undefined ? (
            <CellEditor
              column={column}
              value={column.read(row)}
              start={editing.text}
              reader={reader}
              onCommit={(value, move) => actions.commit(row, column, value, move)}
              onCancel={actions.cancel}
            />
          ) : (
            <>
              {shown(column, row, reader)}
              {at === 0 && opens ? (
                <button
                  type="button"
                  className="grid-open"
                  tabIndex={-1}
                  aria-label={say('Open {cell}', { cell: cellText(column, column.read(row), reader) })}
                  title={say('Open (Alt+Enter)')}
                  onClick={() => actions.openRow(index)}
                >
                  <Icon name="chevron" size={12} />
                </button>
              ) : null}
            </>
          )}
        </td>
      ))}
    </tr>
  );
}

function shown<Row>(column: Column<Row>, row: Row, reader: Reader): ReactNode {
  return column.draw === undefined ? cellText(column, column.read(row), reader) : column.draw(row);
}

export const GridRow = memo(GridRowPlain) as typeof GridRowPlain;
