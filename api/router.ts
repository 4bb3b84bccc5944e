import { router as build } from './procedure.ts';
import { farm } from './procedures/farm.ts';
import { files } from './procedures/files.ts';
import { find } from './procedures/find.ts';
import { jobs } from './procedures/jobs.ts';
import { undo } from './procedures/undo.ts';

/** The one door: every procedure of the program, by place or aggregate. */
export const router = build({
  farm,
  files,
  find,
  jobs,
  undo,
});

export type Router = typeof router;
