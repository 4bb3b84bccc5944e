import { type IsoDate, isIsoDate, yearOf } from '../../../planner/calendar.ts';
import { useQueryValue } from '../../app/address.ts';

/** The days a list is about, kept in the address: this year until told otherwise. */
export function usePeriod(today: IsoDate) {
  const [from, setFrom] = useQueryValue('from');
  const [to, setTo] = useQueryValue('to');
  const year = yearOf(today);
  return {
    from: from !== undefined && isIsoDate(from) ? from : (`${year}-01-01` as IsoDate),
    to: to !== undefined && isIsoDate(to) ? to : (`${year}-12-31` as IsoDate),
    setFrom: (next: IsoDate | null) => setFrom(next ?? undefined),
    setTo: (next: IsoDate | null) => setTo(next ?? undefined),
  };
}

export type Period = ReturnType<typeof usePeriod>;
