import { useId } from 'react';

/** Yes or no. */
export function FlagField({
  label,
  value,
  onChange,
  hint,
  disabled = false,
}: {
  readonly label: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
  readonly hint?: string;
  readonly disabled?: boolean;
}) {
  const id = useId();
  return (
    <div className="field flag-field">
      <label htmlFor={id}>
        <input
          id={id}
          type="checkbox"
          checked={value}
          disabled={disabled}
          aria-describedby={hint === undefined ? undefined : `${id}-hint`}
          onChange={(event) => onChange(event.target.checked)}
        />
        {label}
      </label>
      {hint === undefined ? null : (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
