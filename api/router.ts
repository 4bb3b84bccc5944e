import { router as build } from './procedure.ts';
import { jobs } from './procedures/jobs.ts';
import { undo } from './procedures/undo.ts';

/** The one door: every procedure of the program, by place or aggregate. */
export const router = build({
  jobs,
  undo,
});

export type Router = typeof router;
