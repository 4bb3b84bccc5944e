import { type ReactNode, useState } from 'react';
import { Button } from '../app/button.tsx';
import { announce } from '../client/announce.ts';
import { useReader } from '../client/reader.tsx';
import { PdfButton } from '../print/pdf-button.tsx';
import { say } from '../words/say.ts';
import { blockOf } from './block-of.ts';
import { spreadsheetText } from './cell-text.ts';
import type { Column } from './column.ts';
import { ColumnChooser } from './column-chooser.tsx';
import { writeCsv } from './csv.ts';
import { EditMany } from './edit-many.tsx';
import type { Edit } from './paste-block.ts';
import { printedTable } from './printed-table.ts';
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
  const counted =
    shownRows.length === rowCount ? `${rowCount}` : say('{shownRows} of {rowCount}', { shownRows: shownRows.length, rowCount });
  const copy = async (): Promise<void> => {
    await navigator.clipboard.writeText(writeTsv(spreadsheetText(block(), reader)));
    announce(say('Copied {out} rows.', { out: out.length }));
  };
  return (
    <div className="grid-tools" role="toolbar" aria-label={say('Tools of the table {name}', { name })}>
      <input
        type="search"
        className="grid-filter"
        placeholder={say('Filter by typing')}
        aria-label={say('Filter {name}', { name })}
        value={typed}
        onChange={(event) => onType(event.target.value)}
      />
      <span className="grid-count" role="status">
        {counted} {say('{rowCount, plural, one {row} other {rows}}', { rowCount })}
        {selected.length > 0 ? say(', {selected} selected', { selected: selected.length }) : ''}
      </span>
      {selected.length > 0 && onEdit !== undefined ? (
        <Button icon="edit" onClick={() => setEditing(true)}>
          {say('Edit {selected}', { selected: selected.length })}
        </Button>
      ) : null}
      <span className="push" />
      {tools}
      <span className="grid-out">
        <Button weight="quiet" icon="columns" name={say('Choose columns')} onClick={() => setChoosing(true)} />
        <Button weight="quiet" icon="copy" name={say('Copy rows for a spreadsheet')} onClick={() => void copy()} />
        <Button
          weight="quiet"
          name={say('Save as CSV')}
          onClick={() => saveFile(`${name}.csv`, new Blob([writeCsv(block())], { type: 'text/csv;charset=utf-8' }))}
        >
          {say('CSV')}
        </Button>
        <Button weight="quiet" name={say('Save as XLSX')} onClick={() => saveFile(`${name}.xlsx`, writeWorkbook(name, block()))}>
          {say('XLSX')}
        </Button>
        <PdfButton title={name} name={say('Save as PDF')} make={async () => [printedTable(shownColumns, out, reader)]} />
      </span>
      {choosing ? <ColumnChooser model={model} columns={columns} onClose={() => setChoosing(false)} /> : null}
      {editing && onEdit !== undefined ? (
        <EditMany columns={columns} rows={selected} onEdit={onEdit} onClose={() => setEditing(false)} />
      ) : null}
    </div>
  );
}
