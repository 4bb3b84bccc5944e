import type { Reader } from '../../planner/units/reader.ts';
import { say } from '../words/say.ts';
import { headUnit } from './cell-text.ts';
import { type Column, isNumeric } from './column.ts';
import type { TableModel } from './table-model.ts';

const sorts = { asc: 'ascending', desc: 'descending' } as const;

/** The head of the table: a button for each column that sorts by it; Shift adds it to the sort that is there. */
export function GridHead<Row extends object>(props: {
  readonly model: TableModel<Row>;
  readonly columns: readonly Column<Row>[];
  readonly reader: Reader;
  /** Column of the active head cell, or -1 when the active cell is in the body. */
  readonly active: number;
}) {
  const { model, columns, reader, active } = props;
  const all = model.getIsAllRowsSelected();
  const some = model.getIsSomeRowsSelected() && !all;
  return (
    <thead>
      <tr aria-rowindex={1} data-row={-1}>
        <th className="grid-mark" scope="col" aria-colindex={1}>
          <input
            type="checkbox"
            tabIndex={-1}
            aria-label={say('Select all rows')}
            checked={all}
            ref={(box) => {
              if (box !== null) box.indeterminate = some;
            }}
            onChange={() => model.toggleAllRowsSelected(!all)}
          />
        </th>
        {columns.map((column, at) => {
          const sorted = model.getColumn(column.key)?.getIsSorted() ?? false;
          const unit = headUnit(column, reader);
          return (
            <th
              key={column.key}
              scope="col"
              aria-colindex={at + 2}
              aria-sort={sorted === false ? 'none' : sorts[sorted]}
              data-kind={isNumeric(column) ? 'number' : column.kind}
              title={column.hint}
            >
              <button
                type="button"
                data-column={at}
                tabIndex={at === active ? 0 : -1}
                onClick={(event) => model.getColumn(column.key)?.toggleSorting(undefined, event.shiftKey)}
              >
                <span className={column.title === '' ? 'heard-only' : 'head-title'}>
                  {column.title === '' ? (column.hint ?? column.key) : column.title}
                </span>
                {unit === '' ? null : <span className="head-unit">{unit}</span>}
                <span className="head-sort" aria-hidden="true">
                  {sorted === 'asc' ? '↑' : sorted === 'desc' ? '↓' : ''}
                </span>
              </button>
            </th>
          );
        })}
      </tr>
    </thead>
  );
}
