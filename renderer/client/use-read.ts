import { type UseQueryOptions, type UseQueryResult, useQueries, useQuery } from '@tanstack/react-query';
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

const asked = (procedure: AnyRead, input: unknown): Options & { readonly placeholderData: (before: unknown) => unknown } => {
  const { queryKey, queryFn } = (procedure as unknown as Asks).queryOptions(input);
  return { queryKey, ...(queryFn === undefined ? {} : { queryFn }), placeholderData: (before: unknown) => before };
};

type Query = Pick<UseQueryResult<unknown>, 'error' | 'data' | 'isFetching' | 'isPlaceholderData' | 'refetch'>;

function readingOf<Data>(query: Query): Reading<Data> {
  if (query.error !== null) {
    const failure = failureOf(query.error);
    return { state: 'failed', message: failure.message, failure, retry: () => void query.refetch() };
  }
  if (query.data === undefined) return { state: 'loading' };
  return { state: 'ready', data: query.data as Data, fresh: !query.isFetching && !query.isPlaceholderData };
}

/**
 * Reads one procedure. While a change is being taken in, the last answer stays, with `fresh: false`.
 * `input` may be `undefined` for procedures that take none.
 */
export const useRead = <P extends AnyRead>(procedure: P, input: InputOf<P>): Reading<OutputOf<P>> =>
  readingOf(useQuery<unknown>(asked(procedure, input)));

/** Reads one procedure for each of several inputs: ready when all are, failed when one is. */
export const useReads = <P extends AnyRead>(procedure: P, inputs: readonly InputOf<P>[]): Reading<readonly OutputOf<P>[]> =>
  useQueries({
    queries: inputs.map((input) => asked(procedure, input)),
    combine: (queries): Reading<readonly OutputOf<P>[]> => {
      const readings = queries.map((query) => readingOf<OutputOf<P>>(query));
      const ready = readings.filter((reading) => reading.state === 'ready');
      if (ready.length === readings.length)
        return { state: 'ready', data: ready.map(({ data }) => data), fresh: ready.every(({ fresh }) => fresh) };
      return readings.find((reading) => reading.state === 'failed') ?? { state: 'loading' };
    },
  });

export type { AnyRead, InputOf, OutputOf };
