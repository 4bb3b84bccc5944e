import { addDays, type IsoDate } from '../../planner/calendar.ts';
import { USE_WITHIN_HOURS } from '../../planner/fertility/tea-batch.ts';

/** A local time so many hours later; no time zone is involved. */
function hoursLater(at: string, hours: number): string {
  const date = at.slice(0, 10) as IsoDate;
  const minutes = Number(at.slice(11, 13)) * 60 + Number(at.slice(14, 16)) + Math.round(hours * 60);
  const day = addDays(date, Math.floor(minutes / 1440));
  const left = ((minutes % 1440) + 1440) % 1440;
  return `${day}T${String(Math.floor(left / 60)).padStart(2, '0')}:${String(left % 60).padStart(2, '0')}`;
}

/** When the air goes off. */
export const brewedAt = (startedAt: string, brew_h: number): string => hoursLater(startedAt, brew_h);

/** The latest time to use a brew: some hours after the air goes off. */
export const latestUse = (startedAt: string, brew_h: number): string => hoursLater(startedAt, brew_h + USE_WITHIN_HOURS);

/** The next free code of a batch: `C-2026-3`. */
export function batchCode(letter: 'C' | 'T', date: string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number += 1) {
    const code = `${letter}-${date.slice(0, 4)}-${number}`;
    if (!taken.has(code)) return code;
  }
}
