import { refuse, requireRange } from '../errors.ts';

/** Lengths of the four stages of a planting, in days. */
export type StageDays = readonly [initial: number, development: number, middle: number, late: number];

export type CropCurve = {
  readonly stages_days: StageDays;
  readonly kcIni: number;
  readonly kcMid: number;
  readonly kcEnd: number;
};

/**
 * Crop coefficient on a day of a planting.
 *
 *   Kc = Kprev + (i - sum of earlier stages)/L (Knext - Kprev) in a sloping stage, flat in the first and third
 *
 *   i   day of the planting, 1 for the first   -   past the last day the curve stays at Kc end
 *   L   length of the stage                     days
 *
 * Source: FAO Irrigation and Drainage Paper 56 (1998), eq. 66; checked with Example 28.
 * @throws InputError naming the field
 */
export function cropCoefficient(curve: CropCurve, day: number): number {
  requireCurve(curve);
  return kcAt(curve, day);
}

/** The curve without its checks, for the daily loop. */
export function kcAt({ stages_days, kcIni, kcMid, kcEnd }: CropCurve, day: number): number {
  const [initial, development, middle, late] = stages_days;
  if (day <= initial) return kcIni;
  const rising = day - initial;
  if (rising <= development) return kcIni + (rising / development) * (kcMid - kcIni);
  if (rising <= development + middle) return kcMid;
  if (late <= 0) return kcEnd;
  return kcMid + Math.min(1, (rising - development - middle) / late) * (kcEnd - kcMid);
}

/** Mean of the curve over the days `from` to `to`, both included. */
export function meanCoefficient(curve: CropCurve, from: number, to: number): number {
  requireCurve(curve);
  let sum = 0;
  for (let day = from; day <= to; day += 1) sum += kcAt(curve, day);
  return sum / (to - from + 1);
}

export const seasonDays = (stages_days: StageDays): number => stages_days.reduce((sum, days) => sum + days, 0);

/**
 * A published set of stages brought to a planting's own length: the shares stay, the total changes.
 * Source: FAO-56, text at Table 11 ("adjust to local conditions"); keeping the shares is common practice, no source.
 */
export function scaledStages(stages_days: StageDays, total_days: number): StageDays {
  requireRange('total_days', total_days, 1, 1500, 'days');
  const whole = seasonDays(stages_days);
  if (whole <= 0) refuse('stages_days', 'too-small', 'The stages of a crop need at least one day.');
  const [a, b, c, d] = stages_days;
  const by = total_days / whole;
  return [a * by, b * by, c * by, d * by];
}

function requireCurve({ stages_days, kcIni, kcMid, kcEnd }: CropCurve): void {
  for (const [at, days] of stages_days.entries()) requireRange(`stages_days.${at}`, days, 0, 1500, 'days');
  for (const [name, value] of Object.entries({ kcIni, kcMid, kcEnd })) requireRange(name, value, 0, 2.5, '');
}
