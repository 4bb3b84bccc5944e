import { parentPort, workerData } from 'node:worker_threads';
import { InputError } from '../../planner/errors.ts';
import type { JobMessage } from './jobs.ts';
import { runners } from './runners.ts';

type WorkerData = { readonly kind: string; readonly data: unknown; readonly stopFlag: SharedArrayBuffer };

const { kind, data, stopFlag } = workerData as WorkerData;
const flag = new Int32Array(stopFlag);
const say = (message: JobMessage): void => parentPort?.postMessage(message);
const shouldStop = (): boolean => Atomics.load(flag, 0) === 1;

try {
  const load = runners[kind];
  if (load === undefined) throw new Error(`There is no work of the kind ${kind}.`);
  const run = await load();
  const result = await run(data as never, {
    progress: (progress) => say({ say: 'progress', progress }),
    best: (best) => say({ say: 'best', best }),
    shouldStop,
  });
  say({ say: 'done', result, stopped: shouldStop() });
} catch (error) {
  const message = error instanceof InputError ? error.message : 'The computation failed. Nothing was changed.';
  say({ say: 'failed', message, stack: error instanceof Error ? (error.stack ?? error.message).slice(0, 4000) : String(error) });
}
