import { z } from 'zod';
import { act, ask } from '../procedure.ts';

const jobId = z.object({ jobId: z.string().max(40) });

export const jobs = {
  get: ask({ input: jobId, run: ({ program }, { jobId }) => program.jobs.get(jobId) }),
  stop: act({ input: jobId, run: ({ program }, { jobId }) => program.jobs.stop(jobId) }),
};
