import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import type { JobView } from '../../api/jobs/jobs.ts';
import { say } from '../words/say.ts';
import { announce } from './announce.ts';
import { client } from './api.ts';
import { type Failure, failureOf } from './failure.ts';

const POLL_MS = 200;

/** Long work as a page sees it. `best` is the best answer so far, `result` the final one. */
export type Job<Result> =
  | { readonly state: 'idle' }
  | { readonly state: 'running'; readonly share: number | null; readonly doing: string; readonly best: Result | undefined }
  | { readonly state: 'done'; readonly result: Result; readonly stopped: boolean }
  | { readonly state: 'failed'; readonly failure: Failure };

export type JobHandle<Result> = {
  readonly job: Job<Result>;
  /** Starts the work: pass the call that answers `{ jobId }`. */
  readonly start: (begin: () => Promise<{ readonly jobId: string } | undefined>) => Promise<void>;
  /** Asks it to end; the best answer so far then becomes the result. */
  readonly stop: () => void;
};

/**
 * Follows one job by asking for its state every 200 ms. When it ends, `told` says in a sentence what came out of it: shown in the
 * line of results and read out once, wherever the reader is by then.
 */
export function useJob<Result>(told: (result: Result) => string): JobHandle<Result> {
  const cache = useQueryClient();
  const [jobId, setJobId] = useState<string>();
  const [job, setJob] = useState<Job<Result>>({ state: 'idle' });
  const teller = useRef(told);
  teller.current = told;

  useEffect(() => {
    if (jobId === undefined) return undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let gone = false;
    const ask = async (): Promise<void> => {
      const next = await stateOf<Result>(jobId);
      if (gone) return;
      setJob(next);
      if (next.state === 'running') timer = setTimeout(() => void ask(), POLL_MS);
      else {
        setJobId(undefined);
        announce(next.state === 'done' ? endOf(next, teller.current) : say('The computation did not finish.'));
        await cache.invalidateQueries();
      }
    };
    void ask();
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [jobId, cache]);

  return {
    job,
    start: async (begin) => {
      setJob({ state: 'running', share: null, doing: say('Starting'), best: undefined });
      const begun = await begin();
      if (begun === undefined) setJob({ state: 'idle' });
      else setJobId(begun.jobId);
    },
    stop: () => {
      if (jobId !== undefined) void client.jobs.stop.mutate({ jobId });
    },
  };
}

const endOf = <Result>(
  { result, stopped }: { readonly result: Result; readonly stopped: boolean },
  told: (result: Result) => string,
): string => (stopped ? say('Stopped; so far: {told}', { told: told(result) }) : told(result));

/** What the program tells of a job, as a page uses it. */
function jobOf<Result>(
  view: Omit<JobView, 'best' | 'result'> & { readonly best?: unknown; readonly result?: unknown },
): Job<Result> {
  switch (view.state) {
    case 'running':
      return {
        state: 'running',
        share: view.progress.share,
        doing: view.progress.text,
        best: (view.best ?? undefined) as Result | undefined,
      };
    case 'done':
      return { state: 'done', result: view.result as Result, stopped: false };
    case 'stopped':
      if (view.result === null || view.result === undefined)
        return { state: 'failed', failure: { code: 'stopped', message: say('Stopped before there was an answer.'), faults: [] } };
      return { state: 'done', result: view.result as Result, stopped: true };
    case 'failed':
      return { state: 'failed', failure: { code: 'job', message: view.message, faults: [] } };
  }
}

async function stateOf<Result>(jobId: string): Promise<Job<Result>> {
  try {
    return jobOf<Result>(await client.jobs.get.query({ jobId }));
  } catch (error) {
    return { state: 'failed', failure: failureOf(error) };
  }
}
