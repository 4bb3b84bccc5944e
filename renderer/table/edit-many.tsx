import { useState } from 'react';
import { Button } from '../app/button.tsx';
import { Dialog } from '../app/dialog.tsx';
import { useReader } from '../client/reader.tsx';
import { ChoiceField } from '../fields/choice-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { say } from '../words/say.ts';
import { headUnit } from './cell-text.ts';
import { type Column, canEdit } from './column.ts';
import { type Edit, fillColumn } from './paste-block.ts';
import { readCell } from './read-cell.ts';

/** Gives one column the same value in all selected rows: one change, one step of undo. */
export function EditMany<Row extends object>({
  columns,
  rows,
  onEdit,
  onClose,
}: {
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly onEdit: (edits: readonly Edit<Row>[]) => void;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const editable = columns.filter((column) => rows.some((row) => canEdit(column, row)));
  const [key, setKey] = useState(editable[0]?.key ?? '');
  const [typed, setTyped] = useState('');
  const [fault, setFault] = useState<string>();
  const column = editable.find((each) => each.key === key);
  const affected = column === undefined ? 0 : rows.filter((row) => canEdit(column, row)).length;

  const save = (): void => {
    if (column === undefined) return;
    const read = readCell(column, typed, reader);
    if (!read.ok) {
      setFault(read.message);
      return;
    }
    onEdit(fillColumn(column, rows, read.value));
    onClose();
  };

  if (column === undefined) {
    return (
      <Dialog title={say('Edit selected rows')} onClose={onClose}>
        <p>{say('No column of these rows can be edited here.')}</p>
      </Dialog>
    );
  }
  const unit = headUnit(column, reader);
  return (
    <Dialog
      title={say('Edit {rows} rows', { rows: rows.length })}
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>{say('Leave as they are')}</Button>
          <Button weight="main" onClick={save}>
            {say('Change {affected} rows', { affected })}
          </Button>
        </>
      }
    >
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <ChoiceField
          label={say('Column')}
          value={key}
          choices={editable.map((each) => ({ value: each.key, text: each.title }))}
          onChange={(next) => {
            setKey(next);
            setTyped('');
            setFault(undefined);
          }}
        />
        {column.kind === 'choice' ? (
          <ChoiceField
            label={column.title}
            value={typed}
            choices={[{ value: '', text: '–' }, ...column.choices]}
            onChange={setTyped}
            fault={fault}
          />
        ) : (
          <TextField
            label={unit === '' ? column.title : `${column.title} (${unit})`}
            value={typed}
            onChange={(next) => {
              setTyped(next);
              setFault(undefined);
            }}
            fault={fault}
          />
        )}
      </form>
    </Dialog>
  );
}
