import { type UseQueryOptions, useQuery } from '@tanstack/react-query';
import { type Failure, failureOf } from './failure.ts';

/** A procedure that only reads, as `api.<place>.<name>` gives it. */
export type ReadProcedure<Input, Output> = {
  readonly '~types': { readonly input: Input; readonly output: Output };
};

type AnyRead = { readonly '~types': { readonly input: unknown; readonly output: unknown } };
type InputOf<P extends AnyRead> = P['~types']['input'];
type OutputOf<P extends AnyRead> = P['~types']['output'];

export type Reading<Data> =
  | { readonly state: 'loading' }
  | { readonly state: 'failed'; readonly message: string; readonly failure: Failure; readonly retry: () => void }
  | { readonly state: 'ready'; readonly data: Data; readonly fresh: boolean };

type Options = Pick<UseQueryOptions, 'queryKey' | 'queryFn'>;
type Asks = { readonly queryOptions: (input: unknown) => Options };

/**
 * Reads one procedure. While a change is being taken in, the last answer stays, with `fresh: false`.
 * `input` may be `undefined` for procedures that take none.
 */
export function useRead<P extends AnyRead>(procedure: P, input: InputOf<P>): Reading<OutputOf<P>> {
  const { queryKey, queryFn } = (procedure as unknown as Asks).queryOptions(input);
  const query = useQuery<unknown>({
    queryKey,
    ...(queryFn === undefined ? {} : { queryFn }),
    placeholderData: (before: unknown) => before,
  });
  if (query.error !== null) {
    const failure = failureOf(query.error);
    return { state: 'failed', message: failure.message, failure, retry: () => void query.refetch() };
  }
  if (query.data === undefined) return { state: 'loading' };
  return { state: 'ready', data: query.data as OutputOf<P>, fresh: !query.isFetching && !query.isPlaceholderData };
}

export type { AnyRead, InputOf, OutputOf };
