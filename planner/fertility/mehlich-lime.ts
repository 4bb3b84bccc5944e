import { refuse, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** The buffer's own pH, from which acidity is counted. */
const BUFFER_START_PH = 6.6;

/**
 * Acidity found by the Mehlich buffer.
 *
 *   Ac = 4 (6.6 - buffer pH)     meq/100 cm3, buffer pH up to 6.6; never below 0
 *
 * Source: North Carolina Department of Agriculture, Agronomic Division, notes to the Mehlich lime table.
 */
export function mehlichAcidity_meq_per_100cm3(bufferPh: number): number {
  requireRange('bufferPh', bufferPh, 3.5, 9, '');
  return Math.max(0, 4 * (BUFFER_START_PH - bufferPh));
}

export type MehlichLimeInput = {
  readonly soilPh: number;
  readonly targetPh: number;
  readonly acidity_meq_per_100cm3: number;
  /** What earlier lime still does, from {@link limeCredit_kg_per_m2}. */
  readonly credit_kg_per_m2: number;
};

export type MehlichLime = { readonly factor: number; readonly lime_kg_per_m2: number };

/**
 * Lime requirement from Mehlich buffer acidity, for the ploughed 8 in, as a rate of 100-score lime.
 *
 *   R = Ac (target - pH)/(6.6 - pH) - credit      US short ton/acre, given here in kg/m2; never below 0
 *
 *   Ac      buffer acidity    meq/100 cm3   0 to 12
 *   target  wanted pH         -             4 to 6.6
 *   pH      soil pH in water  -             below 6.6
 *
 * Source: North Carolina Department of Agriculture, notes to the Mehlich lime table (its example prints 0.76 for 0.75).
 * @throws InputError when the soil is at pH 6.6 or above: the formula has no meaning there
 */
export function mehlichLime(input: MehlichLimeInput): MehlichLime {
  requireRange('soilPh', input.soilPh, 2.5, 10.5, '');
  requireRange('targetPh', input.targetPh, 4, BUFFER_START_PH, '');
  requireRange('acidity_meq_per_100cm3', input.acidity_meq_per_100cm3, 0, 20, 'meq/100 cm³');
  requireRange('credit_kg_per_m2', input.credit_kg_per_m2, 0, 10, 'kg/m²');
  if (input.soilPh >= BUFFER_START_PH)
    refuse(
      'soilPh',
      'too-large',
      `soilPh: at pH ${input.soilPh} the Mehlich buffer gives no lime requirement; it works below 6.6.`,
    );
  const factor = Math.max(0, (input.targetPh - input.soilPh) / (BUFFER_START_PH - input.soilPh));
  const rate_kg_per_m2 = convert(input.acidity_meq_per_100cm3 * factor, 'us_ton_per_acre', 'kg_per_m2');
  return { factor, lime_kg_per_m2: Math.max(0, rate_kg_per_m2 - input.credit_kg_per_m2) };
}

/** Share of a lime's effect lost in a month. */
const LOST_PER_MONTH = { mineral: 0.08, 'mineral-organic': 0.16, organic: 0.16 } as const;
export type LimeSoilClass = keyof typeof LOST_PER_MONTH;

/**
 * What earlier lime is still worth.
 *
 *   credit = last rate x max(0, 1 - loss x months)      loss 0.08 a month on mineral soil, 0.16 on organic classes
 *
 * Source: North Carolina Department of Agriculture, notes to the Mehlich lime table; read as a straight-line loss.
 */
export function limeCredit_kg_per_m2(input: {
  readonly lastLime_kg_per_m2: number;
  readonly monthsSince: number;
  readonly soilClass: LimeSoilClass;
}): number {
  requireRange('lastLime_kg_per_m2', input.lastLime_kg_per_m2, 0, 10, 'kg/m²');
  requireRange('monthsSince', input.monthsSince, 0, 1200, 'months');
  const loss = LOST_PER_MONTH[input.soilClass];
  if (loss === undefined) refuse('soilClass', 'unknown', `soilClass: "${String(input.soilClass)}" is none of mineral, organic.`);
  return input.lastLime_kg_per_m2 * Math.max(0, 1 - loss * input.monthsSince);
}
