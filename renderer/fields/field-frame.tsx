import { type ReactNode, useId } from 'react';
import { useFaultAt } from './form.tsx';

/** What every entry field has. `path` finds its fault in the form; `fault` gives one directly. */
export type FieldProps = {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly path?: string | undefined;
  readonly fault?: string | undefined;
  readonly disabled?: boolean | undefined;
  /** Nothing is sent while it is empty. */
  readonly needed?: boolean | undefined;
};

export type ControlProps = {
  readonly id: string;
  readonly disabled: boolean;
  readonly 'aria-invalid': boolean;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-required': boolean;
};

/** Label, control, hint and fault, linked so that a screen reader says them together. */
export function FieldFrame({
  label,
  hint,
  path,
  fault,
  disabled = false,
  needed = false,
  unread,
  control,
}: FieldProps & {
  /** Why the text in the field can't be read; comes before what the program said. */
  readonly unread?: string | undefined;
  readonly control: (props: ControlProps) => ReactNode;
}) {
  const id = useId();
  const fromForm = useFaultAt(path);
  const message = unread ?? fault ?? fromForm;
  const described = [hint === undefined ? '' : `${id}-hint`, message === undefined ? '' : `${id}-fault`]
    .filter((part) => part !== '')
    .join(' ');
  return (
    <div className="field" data-faulty={message === undefined ? undefined : ''}>
      <label htmlFor={id}>{label}</label>
      {control({
        id,
        'aria-required': needed,
        disabled,
        'aria-invalid': message !== undefined,
        'aria-describedby': described === '' ? undefined : described,
      })}
      {hint === undefined ? null : (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {message === undefined ? null : (
        <p className="field-fault" id={`${id}-fault`} role="alert">
          {message}
        </p>
      )}
    </div>
  );
}
