import type { ReactNode } from 'react';
import type { Failure } from '../client/failure.ts';
import type { Reading } from '../client/use-read.ts';
import { say } from '../words/say.ts';

/** While a first answer is on its way. Nothing is shown for the first moment, so that quick answers don't flicker. */
export function Waiting({ what = say('Reading the farm file') }: { readonly what?: string }) {
  return (
    <p className="waiting" role="status">
      {what}…
    </p>
  );
}

export function Failed({
  message,
  retry,
  failure,
}: {
  readonly message: string;
  readonly retry?: () => void;
  readonly failure?: Failure;
}) {
  return (
    <div className="failed" role="alert">
      <p>{message}</p>
      {failure?.reference === undefined ? null : (
        <p className="small soft">{say('Reference {reference}. Nothing was lost.', { reference: failure.reference })}</p>
      )}
      {retry === undefined ? null : (
        <button type="button" className="button" onClick={retry}>
          {say('Try again')}
        </button>
      )}
    </div>
  );
}

/** Says what is missing and what to do next, with the button that does it. */
export function Empty({
  title,
  children,
  action,
}: {
  readonly title: string;
  readonly children?: ReactNode;
  readonly action?: ReactNode;
}) {
  return (
    <div className="empty">
      <h2>{title}</h2>
      {children === undefined ? null : <div className="soft">{children}</div>}
      {action}
    </div>
  );
}

/** Waiting, failed or the page: `<Shown reading={beds}>{(rows) => <Grid …/>}</Shown>`. */
export function Shown<Data>({
  reading,
  children,
}: {
  readonly reading: Reading<Data>;
  readonly children: (data: Data) => ReactNode;
}) {
  if (reading.state === 'loading') return <Waiting />;
  if (reading.state === 'failed') return <Failed message={reading.message} failure={reading.failure} retry={reading.retry} />;
  return children(reading.data);
}
