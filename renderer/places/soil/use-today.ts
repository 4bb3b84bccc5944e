import type { IsoDate } from '../../../planner/calendar.ts';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';

/** The program's date, `null` until it answers: pages keep no clock of their own. */
export function useToday(): IsoDate | null {
  const now = useRead(api.soilTests.today, undefined);
  return now.state === 'ready' ? now.data.today : null;
}
