import { useState } from 'react';
import { say } from '../words/say.ts';
import { FieldFrame, type FieldProps } from './field-frame.tsx';

/** A line of words; `lines` above 1 makes it a note. */
export function TextField({
  value,
  onChange,
  lines = 1,
  placeholder,
  ...frame
}: FieldProps & {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly lines?: number;
  readonly placeholder?: string;
}) {
  const [left, setLeft] = useState(false);
  const lacking = frame.needed === true && value.trim() === '';
  const shared = { value, placeholder, 'data-unread': lacking, onBlur: () => setLeft(true) };
  return (
    <FieldFrame
      {...frame}
      unread={left && lacking ? say('Something is needed here.') : undefined}
      control={(props) =>
        lines === 1 ? (
          <input {...props} {...shared} type="text" autoComplete="off" onChange={(event) => onChange(event.target.value)} />
        ) : (
          <textarea {...props} {...shared} rows={lines} onChange={(event) => onChange(event.target.value)} />
        )
      }
    />
  );
}
