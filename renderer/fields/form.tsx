import { createContext, type ReactNode, useContext, useRef } from 'react';
import { announce } from '../client/announce.ts';
import { type Failure, faultsAt, faultText } from '../client/failure.ts';
import { useReader } from '../client/reader.tsx';
import { say } from '../words/say.ts';

const FailureContext = createContext<Failure | undefined>(undefined);

/** What the program said of one field when the form was last sent. */
export function useFaultAt(path: string | undefined): string | undefined {
  const failure = useContext(FailureContext);
  const { system, locale } = useReader();
  if (failure === undefined || path === undefined) return undefined;
  const found = faultsAt(failure.faults, path);
  return found.length === 0 ? undefined : found.map((fault) => faultText(fault, system, locale)).join(' ');
}

/**
 * A form. Each field with a `path` shows the fault of that path; faults that belong to no shown field, and refusals
 * that are about no field, stand at the head. A field whose text can't be read is focused, and nothing is sent.
 */
export function Form(props: {
  readonly onSave: () => void;
  readonly failure?: Failure | undefined;
  /** Paths of the fields in this form, to tell which faults have no field. */
  readonly paths?: readonly string[];
  readonly label?: string;
  readonly children: ReactNode;
}) {
  const form = useRef<HTMLFormElement>(null);
  const { failure, paths = [] } = props;
  const { system, locale } = useReader();
  const loose =
    failure?.faults.filter((fault) => !paths.some((path) => fault.path === path || fault.path.startsWith(`${path}.`))) ?? [];
  const heads =
    failure === undefined
      ? []
      : failure.faults.length === 0
        ? [failure.message]
        : loose.map((fault) => faultText(fault, system, locale));
  return (
    <form
      ref={form}
      className="form"
      noValidate
      aria-label={props.label}
      onSubmit={(event) => {
        event.preventDefault();
        const unread = form.current?.querySelector<HTMLElement>('[data-unread="true"]');
        if (unread === null || unread === undefined) props.onSave();
        else {
          // leaving the field once shows why it can't be read
          unread.focus();
          unread.blur();
          unread.focus();
          announce(say('One field can’t be read yet.'), 'now');
        }
      }}
    >
      {heads.length === 0 ? null : (
        <div className="failed" role="alert">
          {heads.map((message) => (
            <p key={message}>{message}</p>
          ))}
        </div>
      )}
      <FailureContext value={failure}>{props.children}</FailureContext>
    </form>
  );
}
