import { useState } from 'react';
import { say } from '../words/say.ts';
import { FieldFrame, type FieldProps } from './field-frame.tsx';

export type FieldRead<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly message: string };

type Kept<Value> = { readonly text: string; readonly value: Value | null; readonly left: boolean };

/**
 * A field whose text stands for a value. The text stays as it was written; the value goes out whenever the text can be
 * read, and `null` when the field is empty. Text that can't be read says why once the field is left.
 */
export function ReadField<Value>({
  value,
  onChange,
  print,
  read,
  sign,
  inputMode,
  ...frame
}: FieldProps & {
  readonly value: Value | null;
  readonly onChange: (value: Value | null) => void;
  readonly print: (value: Value) => string;
  readonly read: (text: string) => FieldRead<Value>;
  /** The unit's sign, shown at the end of the field. */
  readonly sign?: string;
  readonly inputMode?: 'decimal' | 'numeric' | 'text';
}) {
  const textOf = (of: Value | null): string => (of === null ? '' : print(of));
  const [kept, setKept] = useState<Kept<Value>>(() => ({ text: textOf(value), value, left: false }));
  if (kept.value !== value) setKept({ text: textOf(value), value, left: false });
  const answer = kept.text.trim() === '' ? undefined : read(kept.text);
  const unread =
    answer === undefined
      ? frame.needed === true
        ? say('Something is needed here.')
        : undefined
      : answer.ok
        ? undefined
        : answer.message;
  const take = (text: string): void => {
    const next = text.trim() === '' ? { ok: true as const, value: null } : read(text);
    const given = next.ok ? next.value : kept.value;
    setKept({ text, value: given, left: false });
    if (next.ok && given !== value) onChange(given);
  };
  return (
    <FieldFrame
      {...frame}
      unread={kept.left ? unread : undefined}
      control={(props) => (
        <span className="field-with-sign">
          <input
            {...props}
            type="text"
            inputMode={inputMode}
            autoComplete="off"
            spellCheck={false}
            data-unread={unread !== undefined}
            value={kept.text}
            onChange={(event) => take(event.target.value)}
            onBlur={() => setKept({ ...kept, left: true })}
          />
          {sign === undefined || sign === '' ? null : (
            <span className="field-sign" aria-hidden="true">
              {sign}
            </span>
          )}
        </span>
      )}
    />
  );
}
