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
  return (
    <FieldFrame
      {...frame}
      control={(props) =>
        lines === 1 ? (
          <input
            {...props}
            type="text"
            value={value}
            placeholder={placeholder}
            autoComplete="off"
            onChange={(event) => onChange(event.target.value)}
          />
        ) : (
          <textarea
            {...props}
            rows={lines}
            value={value}
            placeholder={placeholder}
            onChange={(event) => onChange(event.target.value)}
          />
        )
      }
    />
  );
}
