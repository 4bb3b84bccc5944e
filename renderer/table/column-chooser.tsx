import { Button } from '../app/button.tsx';
import { Dialog } from '../app/dialog.tsx';
import { say } from '../words/say.ts';
import type { Column } from './column.ts';
import type { TableModel } from './table-model.ts';

/** Which columns are shown; kept for this table in the farm file. */
export function ColumnChooser<Row extends object>({
  model,
  columns,
  onClose,
}: {
  readonly model: TableModel<Row>;
  readonly columns: readonly Column<Row>[];
  readonly onClose: () => void;
}) {
  const shown = columns.filter((column) => model.state.columnVisibility[column.key] !== false).length;
  const reset = () =>
    model.setColumnVisibility(Object.fromEntries(columns.map((column) => [column.key, column.shown !== false])));
  return (
    <Dialog
      title={say('Columns')}
      onClose={onClose}
      foot={
        <>
          <Button onClick={reset}>{say('As at first')}</Button>
          <Button weight="main" onClick={onClose}>
            {say('Done')}
          </Button>
        </>
      }
    >
      <div className="choose-list">
        {columns.map((column) => {
          const on = model.state.columnVisibility[column.key] !== false;
          return (
            <label key={column.key}>
              <input
                type="checkbox"
                checked={on}
                disabled={on && shown === 1}
                onChange={() => model.getColumn(column.key)?.toggleVisibility(!on)}
              />
              {column.title}
            </label>
          );
        })}
      </div>
    </Dialog>
  );
}
