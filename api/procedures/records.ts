import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { appendLog, logEntries, lotsLike, reviewLog, salesByYear, traceStarts } from '../../db/repositories/trace.ts';
import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import {
  exemptionFigures,
  keepUntil,
  lateBy_days,
  ORGANIC_RECORD_YEARS,
  PRODUCE_SAFETY_RECORD_YEARS,
} from '../../planner/costs/records.ts';
import { traceBack, traceForward } from '../costs/trace.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-07-09.');

/** The logs that records regimes ask for, by what happened. */
export const logKinds = [
  'cleaning',
  'training',
  'water-inspection',
  'water-assessment',
  'wash-water',
  'illness',
  'visitors',
  'animals',
  'flood',
  'equipment',
  'review',
] as const;

/** The longest rule that is on: nothing younger is ever offered for deletion. */
const yearsFor = (regime: string): number =>
  regime === 'organic' || regime === 'both' ? ORGANIC_RECORD_YEARS : PRODUCE_SAFETY_RECORD_YEARS;

export const records = {
  lotsLike: read({ input: z.object({ part: z.string().max(60) }), run: ({ db }, { part }) => lotsLike(db, part) }),
  traceBack: read({ input: z.object({ code: z.string().min(1) }), run: ({ db }, { code }) => traceBack(db, code) }),
  starts: read({ input: nothing, run: ({ db }) => traceStarts(db) }),
  traceForward: read({
    input: z.object({ kind: z.enum(['lot', 'batch', 'bed']), id: z.string().min(1) }),
    run: ({ db }, start) => traceForward(db, start),
  }),
  log: read({
    input: nothing,
    run({ db }) {
      const regime = farmOfFile(db)?.recordsRegime ?? 'none';
      const years = yearsFor(regime);
      const corrected = new Set(logEntries(db).flatMap((row) => row.correctsId ?? []));
      return {
        regime,
        years,
        rows: logEntries(db).map((row) => ({
          ...row,
          logId: row.id,
          late_days: lateBy_days(row.date as IsoDate, row.createdAt.slice(0, 10) as IsoDate),
          keepUntil: keepUntil(row.createdAt.slice(0, 10) as IsoDate, years),
          corrected: corrected.has(row.id),
        })),
      };
    },
  }),
  append: change({
    note: ({ kind, date }) => `Write a record of ${kind.replaceAll('-', ' ')} on ${date}`,
    input: z.object({
      kind: z.enum(logKinds),
      date: isoDate,
      time: z
        .string()
        .regex(/^$|^([01]\d|2[0-3]):[0-5]\d$/, 'Write the time as 07:30.')
        .default(''),
      place: z.string().trim().max(200).default(''),
      who: z.string().trim().min(1, 'Say who did it: a name or initials.').max(60),
      observed: z.string().trim().min(1, 'Write what was seen or done: actual values, not “ok”.').max(1000),
      details: z.record(z.string().max(60), z.string().max(500)).default({}),
      correctsId: z.string().nullable().default(null),
    }),
    run({ db, now }, input) {
      const logId = newId<string>();
      appendLog(db, { ...input, id: logId, createdAt: now });
      return { logId };
    },
  }),
  review: change({
    note: ({ reviewedBy }) => `Mark a record as reviewed by ${reviewedBy}`,
    input: z.object({ logId: z.string(), reviewedBy: z.string().trim().min(1, 'Say who reviewed it.').max(60) }),
    run({ db, today }, { logId, reviewedBy }) {
      if (!reviewLog(db, logId, reviewedBy, today)) throw new Refusal({ code: 'changed-meanwhile', what: 'record' });
      return { logId };
    },
  }),
  /** The figures of the yearly review of sales to qualified end-users. Arithmetic only. */
  exemption: read({
    input: z.object({ limit_minor: z.int().nonnegative() }),
    run({ db, today }, { limit_minor }) {
      const years = new Map<string, { qualified_minor: number; others_minor: number }>();
      for (const row of salesByYear(db)) {
        if (row.year >= today.slice(0, 4)) continue;
        const known = years.get(row.year) ?? { qualified_minor: 0, others_minor: 0 };
        years.set(
          row.year,
          row.qualified ? { ...known, qualified_minor: row.paid_minor } : { ...known, others_minor: row.paid_minor },
        );
      }
      const last = [...years].slice(-3).map(([year, sales]) => ({ year, ...sales }));
      return { years: last, figures: last.length === 0 ? null : exemptionFigures(last, limit_minor) };
    },
  }),
};
