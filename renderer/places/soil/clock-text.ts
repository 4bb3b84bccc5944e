import type { Reader } from '../../../planner/units/reader.ts';

/** A local day and time: `26 Nov 2026, 18:00`. */
export const clockText = (at: string, reader: Pick<Reader, 'date'>): string =>
  `${reader.date(at.slice(0, 10))}, ${at.slice(11, 16)}`;
