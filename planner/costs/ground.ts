/** A bed as far as it existed within the season. Days are day numbers; `toDay` is the first day after. */
export type BedSpan = { readonly bedId: string; readonly area_m2: number; readonly fromDay: number; readonly toDay: number };

/** A planting on a bed, or on a span of it. */
export type Stay = {
  readonly plantingId: string;
  readonly bedId: string;
  readonly area_m2: number;
  readonly fromDay: number;
  readonly toDay: number;
};

/** A stay with the part of it that lies within the bed's own days. */
export type GroundUse = Stay & { readonly m2_days: number };

export type BedGround = {
  readonly bed: BedSpan;
  readonly uses: readonly GroundUse[];
  readonly whole_m2_days: number;
  /** Ground and time on which nothing stood. Never below zero, also where plantings were entered over each other. */
  readonly idle_m2_days: number;
};

/**
 * Ground and time of each bed, and what of it each planting took.
 *
 *   bed    A x days that it existed in the season        m2 days
 *   stay   a x days between setting in and clearing       m2 days
 *   idle   bed - all its stays, not below 0               m2 days
 *
 * Common practice, no source: bed-days as a base for what the bed costs.
 */
export function groundOf(beds: readonly BedSpan[], stays: readonly Stay[]): ReadonlyMap<string, BedGround> {
  const byBed = new Map<string, GroundUse[]>();
  const bedOf = new Map(beds.map((bed) => [bed.bedId, bed]));
  for (const stay of stays) {
    const bed = bedOf.get(stay.bedId);
    if (bed === undefined) continue;
    const days = Math.max(0, Math.min(stay.toDay, bed.toDay) - Math.max(stay.fromDay, bed.fromDay));
    const list = byBed.get(stay.bedId);
    const use = { ...stay, m2_days: days * stay.area_m2 };
    if (list === undefined) byBed.set(stay.bedId, [use]);
    else list.push(use);
  }
  return new Map(
    beds.map((bed) => {
      const uses = byBed.get(bed.bedId) ?? [];
      const whole = bed.area_m2 * Math.max(0, bed.toDay - bed.fromDay);
      const taken = uses.reduce((sum, use) => sum + use.m2_days, 0);
      return [bed.bedId, { bed, uses, whole_m2_days: whole, idle_m2_days: Math.max(0, whole - taken) }];
    }),
  );
}
