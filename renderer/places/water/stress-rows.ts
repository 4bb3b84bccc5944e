import type { StressResult } from '../../../api/jobs/water/stress-years.ts';
import { say } from '../../words/say.ts';

/** Beds that go short in some year, the worst first. */
export const worstFirst = (found: Pick<StressResult, 'beds'>): StressResult['beds'] =>
  found.beds
    .filter((bed) => bed.chance.some((chance) => chance !== null && chance > 0))
    .toSorted((a, b) => b.days_per_year - a.days_per_year || a.code.localeCompare(b.code, 'en', { numeric: true }));

export type StressRow = {
  readonly bedId: string;
  readonly code: string;
  readonly worstMonth_share: number;
  readonly days: number;
  readonly worst: string;
  readonly given_L_per_year: number;
  readonly lost_L_per_year: number;
  readonly met_share: number;
};

export const stressRows = (found: Pick<StressResult, 'beds'>): readonly StressRow[] =>
  found.beds.map((bed) => ({
    bedId: bed.bedId,
    code: bed.code,
    worstMonth_share: Math.max(0, ...bed.chance.filter((chance) => chance !== null)),
    days: Math.round(bed.days_per_year),
    worst:
      bed.worstYear_days === 0
        ? ''
        : say('{worstYear}: {worstYear2} days', { worstYear: bed.worstYear, worstYear2: bed.worstYear_days }),
    given_L_per_year: bed.given_L_per_year,
    lost_L_per_year: bed.lost_L_per_year,
    met_share: bed.metShare,
  }));
