import { Worker } from 'node:worker_threads';
import { Refusal } from '../errors.ts';

export type JobProgress = { readonly share: number | null; readonly text: string };
export type JobView = {
  readonly jobId: string;
  readonly kind: string;
  readonly state: 'running' | 'done' | 'stopped' | 'failed';
  readonly progress: JobProgress;
  /** The best answer so far, while running. */
  readonly best: unknown;
  readonly result: unknown;
  readonly message: string;
};

/** What a worker says to the host. */
export type JobMessage =
  | { readonly say: 'progress'; readonly progress: JobProgress }
  | { readonly say: 'best'; readonly best: unknown }
  | { readonly say: 'done'; readonly result: unknown; readonly stopped: boolean }
  | { readonly say: 'failed'; readonly message: string; readonly stack: string };

/** After Stop a worker has this long to hand in its best answer. */
const STOP_GRACE_MS = 3000;
const KEPT_FINISHED = 40;

type Running = { view: JobView; readonly worker: Worker; readonly flag: Int32Array };

/** Long work in worker threads: one thread a job, stopped by a shared flag, then by ending the thread. */
export function createJobs(workerFile: URL, log: (line: string) => void) {
  const jobs = new Map<string, Running>();
  const listeners: ((running: number) => void)[] = [];
  let count = 0;

  const running = (): number => [...jobs.values()].filter((job) => job.view.state === 'running').length;
  const tell = (): void => {
    for (const listener of listeners) listener(running());
  };

  const settle = (job: Running, change: Partial<JobView>) => {
    if (job.view.state !== 'running') return;
    job.view = { ...job.view, ...change };
    tell();
  };

  function forgetOldest(): void {
    const finished = [...jobs].filter(([, job]) => job.view.state !== 'running');
    for (const [id] of finished.slice(0, Math.max(0, finished.length - KEPT_FINISHED))) jobs.delete(id);
  }

  function hear(job: Running, message: JobMessage): void {
    switch (message.say) {
      case 'progress':
        if (job.view.state === 'running') job.view = { ...job.view, progress: message.progress };
        return;
      case 'best':
        if (job.view.state === 'running') job.view = { ...job.view, best: message.best };
        return;
      case 'done':
        settle(job, { state: message.stopped ? 'stopped' : 'done', result: message.result });
        return;
      case 'failed':
        log(`job ${job.view.kind}: ${message.stack}`);
        settle(job, { state: 'failed', message: message.message });
        return;
    }
  }

  function start(kind: string, data: unknown): string {
    forgetOldest();
    count += 1;
    const jobId = `job-${count}`;
    const shared = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
    const worker = new Worker(workerFile, { workerData: { kind, data, stopFlag: shared } });
    const job: Running = {
      view: { jobId, kind, state: 'running', progress: { share: null, text: 'Starting' }, best: null, result: null, message: '' },
      worker,
      flag: new Int32Array(shared),
    };
    worker.on('message', (message: JobMessage) => hear(job, message));
    worker.on('error', (error) => {
      log(`job ${kind}: ${error.stack ?? error.message}`);
      settle(job, { state: 'failed', message: 'The computation broke off. Nothing was changed.' });
    });
    worker.on('exit', () =>
      settle(job, {
        state: job.flag[0] === 1 ? 'stopped' : 'failed',
        result: job.view.best,
        message: 'The computation ended early.',
      }),
    );
    jobs.set(jobId, job);
    tell();
    return jobId;
  }

  const find = (jobId: string): Running => {
    const job = jobs.get(jobId);
    if (job === undefined) throw new Refusal({ code: 'not-found', what: 'computation' });
    return job;
  };

  function stop(jobId: string): JobView {
    const job = find(jobId);
    if (job.view.state === 'running') {
      Atomics.store(job.flag, 0, 1);
      setTimeout(() => {
        if (job.view.state !== 'running') return;
        settle(job, { state: 'stopped', result: job.view.best });
        void job.worker.terminate();
      }, STOP_GRACE_MS).unref();
    }
    return job.view;
  }

  return {
    start,
    stop,
    get: (jobId: string): JobView => find(jobId).view,
    running,
    /** Calls with the number of running jobs whenever one starts or ends. */
    onChange: (listener: (running: number) => void): void => {
      listeners.push(listener);
    },
    close: async (): Promise<void> => {
      await Promise.all([...jobs.values()].map((job) => job.worker.terminate()));
      jobs.clear();
      tell();
    },
  };
}

export type Jobs = ReturnType<typeof createJobs>;
