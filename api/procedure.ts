import { initTRPC, TRPCError } from '@trpc/server';
import { z } from 'zod';
import type { FarmDb, FarmFile } from '../db/file/open-farm.ts';
import type { IsoDate } from '../planner/calendar.ts';
import { explainError, type Log } from './explain-error.ts';
import type { Jobs } from './jobs/jobs.ts';
import type { Program } from './program/program.ts';

/** What the door hands to every request. */
export type DoorContext = {
  readonly program: Program;
  /** Which of the open farms the page is about; the first one where it says nothing. */
  readonly farmKey: string | null;
  readonly log: Log;
};

/** What a procedure works with. */
export type Ctx = {
  readonly farm: FarmFile;
  readonly db: FarmDb;
  readonly program: Program;
  readonly jobs: Jobs;
  readonly today: IsoDate;
  /** Local time, `YYYY-MM-DDTHH:MM:SS`. */
  readonly now: string;
};

/** Which builder a procedure was made with. */
export type ProcedureMeta = { readonly kind: 'read' | 'change' | 'act' | 'ask' | 'job' };

const t = initTRPC
  .context<DoorContext>()
  .meta<ProcedureMeta>()
  .create({
    isDev: false,
    errorFormatter({ shape, error, ctx }) {
      const cause = error.cause instanceof Error && error.cause.name !== 'TRPCError' ? error.cause : error;
      const known =
        error.code === 'NOT_FOUND' && error.cause === undefined ? null : explainError(cause, ctx?.log ?? (() => undefined));
      const bedwright = known ?? { code: 'not-found' as const, what: 'procedure', message: 'There is no such procedure.' };
      return {
        ...shape,
        message: bedwright.message,
        data: { code: shape.data.code, httpStatus: shape.data.httpStatus, bedwright },
      };
    },
  });

export const router = t.router;
export const callerFactory = t.createCallerFactory;

/** The farm a request is about. @throws Refusal when none is open */
export function ctxOf(door: DoorContext): Ctx {
  const farm = door.program.farm(door.farmKey);
  const now = door.program.now();
  return { farm, db: farm.db, program: door.program, jobs: door.program.jobs, today: now.slice(0, 10) as IsoDate, now };
}

type Run<S extends z.ZodType, A> = (ctx: Ctx, input: z.output<S>) => A;
type NotPromise<A> = A extends Promise<unknown> ? never : A;

/** Answers a question; never writes. */
export function read<S extends z.ZodType, A>(definition: { readonly input: S; readonly run: Run<S, A> }) {
  return t.procedure
    .meta({ kind: 'read' })
    .input(definition.input)
    .query(({ ctx, input }) => definition.run(ctxOf(ctx), input as z.output<S>));
}

/**
 * Changes the farm: one transaction and one step of undo under `note`. A note names the act, the thing and how many
 * (`Move bed A-01`, `Move 12 beds`) in words that no other change has; it is asked before the change is made.
 */
export function change<S extends z.ZodType, A>(definition: {
  readonly note: string | ((input: z.output<S>, ctx: Ctx) => string);
  readonly input: S;
  readonly run: Run<S, NotPromise<A>>;
}) {
  return t.procedure
    .meta({ kind: 'change' })
    .input(definition.input)
    .mutation(({ ctx, input }) => {
      const call = ctxOf(ctx);
      const given = input as z.output<S>;
      const note = typeof definition.note === 'string' ? definition.note : definition.note(given, call);
      return call.farm.change(note, () => definition.run(call, given));
    });
}

/** Does something that is no edit of the farm: opens, closes, copies, remembers, starts long work. */
export function act<S extends z.ZodType, A>(definition: {
  readonly input: S;
  readonly run: (door: DoorContext, input: z.output<S>) => A;
}) {
  return t.procedure
    .meta({ kind: 'act' })
    .input(definition.input)
    .mutation(({ ctx, input }) => definition.run(ctx, input as z.output<S>));
}

/** Asks something that needs no open farm. */
export function ask<S extends z.ZodType, A>(definition: {
  readonly input: S;
  readonly run: (door: DoorContext, input: z.output<S>) => A;
}) {
  return t.procedure
    .meta({ kind: 'ask' })
    .input(definition.input)
    .query(({ ctx, input }) => definition.run(ctx, input as z.output<S>));
}

/** Starts long work in a worker and answers with the job's number; the page asks `jobs.get` for how it goes. */
export function job<S extends z.ZodType>(definition: {
  readonly input: S;
  readonly kind: string;
  /** Gathers all that the work needs as plain data: a worker never opens the farm file. */
  readonly gather: Run<S, unknown>;
}) {
  return t.procedure
    .meta({ kind: 'job' })
    .input(definition.input)
    .mutation(({ ctx, input }) => {
      const call = ctxOf(ctx);
      return { jobId: call.jobs.start(definition.kind, definition.gather(call, input as z.output<S>)) };
    });
}

/** For procedures that take nothing. */
export const nothing = z.void();

export { TRPCError };
