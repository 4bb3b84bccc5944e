import type { JobProgress } from './jobs.ts';

/** What a computation in the worker may say and ask. */
export type JobVoice = {
  readonly progress: (progress: JobProgress) => void;
  readonly best: (best: unknown) => void;
  readonly shouldStop: () => boolean;
};

export type Runner = (data: never, voice: JobVoice) => unknown;

/** Each kind of long work with the module that does it, loaded only when wanted. */
export const runners: Readonly<Record<string, () => Promise<Runner>>> = {
  'harvest-import': async () => (await import('./harvest/check-import.ts')).run,
  'purchase-list': async () => (await import('./orders/least-cost.ts')).run,
  'water-stress': async () => (await import('./water/stress-years.ts')).run,
  'days-away': async () => (await import('./water/days-away.ts')).run,
  'feed-beds': async () => (await import('./blend/feed-beds.ts')).run,
  'season-report': async () => (await import('./report/season-report.ts')).run,
  'season-proposal': async () => (await import('./season/propose.ts')).run,
  'self-test': async () => (await import('./self-test.ts')).run,
  'season-variants': async () => (await import('./season/compare.ts')).run,
};
