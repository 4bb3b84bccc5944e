import { z } from 'zod';
import { job } from '../procedure.ts';
import { gatherReport, seasonForReport } from '../report/make-report.ts';

export const report = {
  /** The season report in the reader's language; without a season, of the one being planned. */
  start: job({
    input: z.object({ seasonId: z.string().min(1).nullable(), language: z.string().max(35) }),
    kind: 'season-report',
    gather: (ctx, { seasonId, language }) => gatherReport(ctx, seasonForReport(ctx.farm, seasonId ?? undefined), language),
  }),
};
