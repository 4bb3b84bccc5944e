import { z } from 'zod';
import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';

/** A calendar date from the page. */
export const isoDate = z.custom<IsoDate>((value) => typeof value === 'string' && isIsoDate(value), 'Write a date as 2027-03-09.');

export const methods = ['direct', 'transplant', 'set'] as const;
export const layouts = ['square', 'staggered', 'rows'] as const;

export const spanEntry = z.object({
  bedId: z.string(),
  fromShare: z.number().min(0, 'A piece of a bed begins at 0 or later.').max(1, 'A piece of a bed ends at 1.'),
  toShare: z.number().min(0, 'A piece of a bed begins at 0 or later.').max(1, 'A piece of a bed ends at 1.'),
});
export type SpanEntry = z.output<typeof spanEntry>;

const spacing_m = z.number().positive('A spacing is more than zero.').max(20, 'A spacing over 20 m will not do.');

/** How a planting is to be grown. Lengths left empty are the crop's own. */
export const growEntry = z.object({
  cropId: z.string().min(1, 'Choose a crop.'),
  varietyId: z.string().nullable(),
  method: z.enum(methods),
  anchor: z.object({ at: z.enum(['sow', 'in-bed', 'first-harvest']), date: isoDate }),
  datesBy: z.enum(['days', 'heat', 'hand']),
  window_days: z.int('Whole days are needed.').min(0, 'This cannot be negative.').max(3650).nullable(),
  layout: z.enum(layouts),
  inRow_m: spacing_m,
  row_m: spacing_m,
  margin_m: z.number().min(0, 'A margin cannot be negative.').max(5, 'A margin over 5 m will not do.').nullable(),
  seedsPerHole: z.int('Whole seeds are needed.').min(1, 'One seed at least.').max(20, 'Twenty seeds at most.'),
  cellsPerTray: z.int('Whole cells are needed.').min(1, 'One cell at least.').max(2000, 'Two thousand cells at most.').nullable(),
});
export type GrowEntry = z.output<typeof growEntry>;

export const successionEntry = z.object({
  interval_days: z.int('Whole days are needed.').min(1, 'One day at least.').max(365, 'A year at most.'),
  notAfter: isoDate,
  by: z.enum(['interval', 'heat']),
});
export type SuccessionEntry = z.output<typeof successionEntry>;
