import type { Reader } from '../../planner/units/reader.ts';
import { cellText } from './cell-text.ts';
import { type Column, isNumeric } from './column.ts';
import { totalOf } from './totals.ts';

/** Totals of the rows shown, or of the selected rows when there are several. */
export function GridFoot<Row>({
  columns,
  rows,
  reader,
}: {
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly reader: Reader;
}) {
  const firstTotal = columns.findIndex((column) => column.total !== undefined);
  return (
    <tfoot>
      <tr>
        <td className="grid-mark" />
        {columns.map((column, at) => {
          const total = totalOf(column, rows);
          const name = at === 0 && firstTotal !== 0 ? `${rows.length} ${rows.length === 1 ? 'row' : 'rows'}` : '';
          return (
            <td key={column.key} data-kind={isNumeric(column) ? 'number' : column.kind}>
              {total === undefined ? name : `${column.total === 'mean' ? 'mean ' : ''}${cellText(column, total, reader)}`}
            </td>
          );
        })}
      </tr>
    </tfoot>
  );
}
