import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import type { Reader } from '../../planner/units/reader.ts';
import { entryText } from './cell-text.ts';
import type { CellValue, Column } from './column.ts';
import { readCell } from './read-cell.ts';

type Move = 'down' | 'right' | 'left' | 'stay';

/** Edits one cell in place. Enter keeps and goes down, Tab keeps and goes on, Escape leaves it as it was. */
export function CellEditor<Row>(props: {
  readonly column: Column<Row>;
  readonly value: CellValue;
  /** The sign that began the edit, which then replaces what was there. */
  readonly start: string | undefined;
  readonly reader: Reader;
  readonly onCommit: (value: CellValue, move: Move) => void;
  readonly onCancel: () => void;
}) {
  const { column, value, start, reader, onCommit, onCancel } = props;
  const [typed, setTyped] = useState(() => start ?? entryText(column, value, reader));
  const [fault, setFault] = useState<string>();
  const faultId = useId();
  const field = useRef<HTMLInputElement & HTMLSelectElement>(null);
  const done = useRef(false);

  useEffect(() => {
    field.current?.focus();
    if (start === undefined && field.current instanceof HTMLInputElement) field.current.select();
  }, [start]);

  const keep = (move: Move): void => {
    if (done.current) return;
    if (start === undefined && typed === entryText(column, value, reader)) {
      done.current = true;
      if (move === 'stay') onCancel();
      else onCommit(value, move);
      return;
    }
    const read = readCell(column, typed, reader);
    if (!read.ok) {
      setFault(read.message);
      return;
    }
    done.current = true;
    onCommit(read.value, move);
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.key === 'Escape') {
      event.preventDefault();
      done.current = true;
      onCancel();
    } else if (event.key === 'Enter') {
      event.preventDefault();
      keep('down');
    } else if (event.key === 'Tab') {
      event.preventDefault();
      keep(event.shiftKey ? 'left' : 'right');
    }
  };

  const shared = {
    ref: field,
    className: 'cell-editor',
    value: typed,
    'aria-label': column.title,
    'aria-invalid': fault !== undefined,
    ...(fault === undefined ? {} : { 'aria-describedby': faultId }),
    onKeyDown,
    onBlur: () => keep('stay'),
  };
  return (
    <>
      {column.kind === 'choice' ? (
        <select {...shared} onChange={(event) => setTyped(event.target.value)}>
          {column.mayBeEmpty === true ? <option value="" /> : null}
          {column.choices.map((known) => (
            <option key={known.value} value={known.value}>
              {known.text}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type={column.kind === 'date' ? 'date' : 'text'}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => {
            setTyped(event.target.value);
            setFault(undefined);
          }}
        />
      )}
      {fault === undefined ? null : (
        <span className="cell-fault" id={faultId} role="alert">
          {fault}
        </span>
      )}
    </>
  );
}
