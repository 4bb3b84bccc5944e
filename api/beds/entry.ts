import { z } from 'zod';
import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';

/** A calendar date as an entry. */
export const calendarDate = z
  .string('A date is needed here.')
  .refine(isIsoDate, 'Write the date as 2026-03-09.')
  .transform((text) => text as IsoDate);
