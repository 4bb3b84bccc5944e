import type { Figures, ProposalView } from './proposal-types.ts';

export type WeekRow = {
  readonly monday: string;
  readonly hours_h: number;
  readonly presentHours_h: number;
  readonly mostHours_h: number | null;
  readonly water_L: readonly number[];
  readonly presentWater_L: readonly number[];
  readonly mostWater_L: readonly (number | null)[];
  readonly hourWorth_minor: number;
  readonly bedWorth_minor: number;
  readonly waterWorth_minor: readonly number[];
};

/** One row a week for the charts. */
export function weekRows(result: ProposalView['result'], present: Figures): readonly WeekRow[] {
  const { figures, shadow } = result;
  return result.weeks.map((monday, week) => ({
    monday,
    hours_h: figures.labour_h_by_week[week] ?? 0,
    presentHours_h: present.labour_h_by_week[week] ?? 0,
    mostHours_h: figures.labourCap_h_by_week[week] ?? null,
    water_L: figures.water_L_by_week.map((line) => line[week] ?? 0),
    presentWater_L: present.water_L_by_week.map((line) => line[week] ?? 0),
    mostWater_L: figures.waterCap_L_by_week.map((line) => line[week] ?? null),
    hourWorth_minor: Math.round(shadow?.labour_minor_per_h[week] ?? 0),
    bedWorth_minor: Math.round(shadow?.bed_minor_per_m2[week] ?? 0),
    waterWorth_minor: shadow?.water_minor_per_L.map((line) => line[week] ?? 0) ?? [],
  }));
}

/** A sentence about the week in which something is worth most; null where it is worth nothing all season. */
export function dearestWeek(
  rows: readonly WeekRow[],
  worth: (row: WeekRow) => number,
  tell: (minor: number, monday: string) => string,
): string | null {
  const best = rows.reduce<WeekRow | null>((top, row) => (top === null || worth(row) > worth(top) ? row : top), null);
  return best === null || worth(best) <= 0 ? null : tell(worth(best), best.monday);
}
