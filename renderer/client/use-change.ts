import { type UseMutationOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { useMemo } from 'react';
import { say } from '../words/say.ts';
import { announce } from './announce.ts';
import { type Failure, failureOf } from './failure.ts';
import type { AnyRead, InputOf, OutputOf } from './use-read.ts';

export type Change<Input, Output> = {
  /** Does it. Answers `undefined` when it was refused; the reason is then in `failure`. */
  readonly run: (input: Input, said?: string) => Promise<Output | undefined>;
  readonly busy: boolean;
  readonly failure: Failure | undefined;
  readonly clear: () => void;
};

type Does = { readonly mutationOptions: () => Pick<UseMutationOptions<unknown, unknown, unknown>, 'mutationFn' | 'mutationKey'> };

/**
 * One change to the farm. After it everything shown is read again, since a change in one place moves figures in others,
 * and the name of the newest undo step with it. `said` is what is told to the reader once it is done.
 */
export function useChange<P extends AnyRead>(procedure: P): Change<InputOf<P>, OutputOf<P>> {
  const cache = useQueryClient();
  const options = (procedure as unknown as Does).mutationOptions();
  const mutation = useMutation<unknown, unknown, unknown>({
    ...(options.mutationFn === undefined ? {} : { mutationFn: options.mutationFn }),
    ...(options.mutationKey === undefined ? {} : { mutationKey: options.mutationKey }),
  });
  const run = async (input: InputOf<P>, said?: string): Promise<OutputOf<P> | undefined> => {
    try {
      const answer = await mutation.mutateAsync(input);
      await cache.invalidateQueries();
      if (said !== undefined) announce(said);
      return answer as OutputOf<P>;
    } catch (error) {
      announce(refusedText(failureOf(error)), 'now');
      return undefined;
    }
  };
  const failure = useMemo(() => (mutation.error === null ? undefined : failureOf(mutation.error)), [mutation.error]);
  return {
    run,
    busy: mutation.isPending,
    failure,
    clear: mutation.reset,
  };
}

/** Faults stand at their fields, so the line of results only points to them. */
function refusedText({ faults, message }: Failure): string {
  if (faults.length === 0) return message;
  return say(
    '{faults, plural, one {Nothing was changed: one entry needs a look.} other {Nothing was changed: # entries need a look.}}',
    { faults: faults.length },
  );
}
