import type { z } from 'zod';

/** Fields changed one by one, at least one of them: an edit that changes nothing is refused, and no row is written for it. */
export const someOf = <Fields extends z.ZodType<object>>(fields: Fields): Fields =>
  fields.refine((values) => Object.values(values).some((value) => value !== undefined), 'Give at least one value to change.');
