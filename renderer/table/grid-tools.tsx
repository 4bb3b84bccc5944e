import { type ReactNode, useState } from 'react';
import { Button } from '../app/button.tsx';
import { announce } from '../client/announce.ts';
import { useReader } from '../client/reader.tsx';
import { blockOf } from './block-of.ts';
import type { Column } from './column.ts';
import { ColumnChooser } from './column-chooser.tsx';
import { writeCsv } from './csv.ts';
import { EditMany } from './edit-many.tsx';
import type { Edit } from './paste-block.ts';
import { saveFile } from './save-file.ts';
import type { TableModel } from './table-model.ts';
import { writeTsv } from './tsv.ts';
import { writeWorkbook } from './workbook.ts';

/** Filter, count, what to do with the selected rows, columns, copy and export. */
export function GridTools<Row extends object>(props: {
  readonly name: string;
  readonly columns: readonly Column<Row>[];
  readonly shownColumns: readonly Column<Row>[];
  readonly shownRows: readonly Row[];
  readonly rowCount: number;
  readonly model: TableModel<Row>;
  readonly selected: readonly Row[];
  readonly typed: string;
  readonly onType: (typed: string) => void;
  readonly onEdit: ((edits: readonly Edit<Row>[]) => void) | undefined;
  readonly tools: ReactNode;
}) {
  const { name, columns, shownColumns, shownRows, rowCount, model, selected, typed, onType, onEdit, tools } = props;
  const reader = useReader();
  const [choosing, setChoosing] = useState(false);
  const [editing, setEditing] = useState(false);
  const out = selected.length > 0 ? selected : shownRows;
  const block = () => blockOf(shownColumns, out, reader);
  const counted = shownRows.length === rowCount ? `${rowCount}` : `${shownRows.length} of ${rowCount}`;
  const copy = async (): Promise<void> => {
    await navigator.clipboard.writeText(writeTsv(block().map((cells) => cells.map(String))));
    announce(`Copied ${out.length} rows.`);
  };
  return (
    <div className="grid-tools" role="toolbar" aria-label={`Tools of the table ${name}`}>
      <input
        type="search"
        className="grid-filter"
        placeholder="Filter by typing"
        aria-label={`Filter ${name}`}
        value={typed}
        onChange={(event) => onType(event.target.value)}
      />
      <span className="grid-count" role="status">
        {counted} {rowCount === 1 ? 'row' : 'rows'}
        {selected.length > 0 ? `, ${selected.length} selected` : ''}
      </span>
      {selected.length > 0 && onEdit !== undefined ? (
        <Button icon="edit" onClick={() => setEditing(true)}>
          Edit {selected.length}
        </Button>
      ) : null}
      <span className="push" />
      {tools}
      <span className="grid-out">
        <Button weight="quiet" icon="columns" name="Choose columns" onClick={() => setChoosing(true)} />
        <Button weight="quiet" icon="copy" name="Copy rows for a spreadsheet" onClick={() => void copy()} />
        <Button
          weight="quiet"
          name="Save as CSV"
          onClick={() => saveFile(`${name}.csv`, new Blob([writeCsv(block())], { type: 'text/csv;charset=utf-8' }))}
        >
          CSV
        </Button>
        <Button weight="quiet" name="Save as XLSX" onClick={() => saveFile(`${name}.xlsx`, writeWorkbook(name, block()))}>
          XLSX
        </Button>
      </span>
      {choosing ? <ColumnChooser model={model} columns={columns} onClose={() => setChoosing(false)} /> : null}
      {editing && onEdit !== undefined ? (
        <EditMany columns={columns} rows={selected} onEdit={onEdit} onClose={() => setEditing(false)} />
      ) : null}
    </div>
  );
}
