import { FieldFrame, type FieldProps } from './field-frame.tsx';

/** One of a list. */
export function ChoiceField<Value extends string>({
  value,
  choices,
  onChange,
  ...frame
}: FieldProps & {
  readonly value: Value;
  readonly choices: readonly { readonly value: Value; readonly text: string }[];
  readonly onChange: (value: Value) => void;
}) {
  return (
    <FieldFrame
      {...frame}
      control={(props) => (
        <select
          {...props}
          value={value}
          onChange={(event) => {
            const chosen = choices.find((known) => known.value === event.target.value);
            if (chosen !== undefined) onChange(chosen.value);
          }}
        >
          {choices.map((known) => (
            <option key={known.value} value={known.value}>
              {known.text}
            </option>
          ))}
        </select>
      )}
    />
  );
}
