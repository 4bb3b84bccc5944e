import { refuse, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { readBetween } from './between-rows.ts';
import type { SulfurTable } from './soil-tables.ts';

export type SulfurTexture = 'sand' | 'loam' | 'clay';

export type SulfurInput = {
  readonly toPh4_5: SulfurTable;
  readonly toPh6_5: SulfurTable;
  readonly soilPh: number;
  readonly targetPh: number;
  readonly texture: SulfurTexture;
};

export type Sulfur = {
  /** Pure sulfur for the top 6 to 7 in. */
  readonly sulfur_kg_per_m2: number;
  readonly heldAtEdge: boolean;
};

const LOW_TARGET_PH = 4.5;
const MILD_TARGET_PH = 6.5;

/**
 * Elemental sulfur to lower the pH of a soil free of lime, top 6 to 7 in.
 *
 *   to pH 4.5    S = table(pH, texture), linear between the rows
 *   to pH 6.5    the same in the second table
 *   to another   S(pH to 4.5) - S(target to 4.5); above pH 7 first to 6.5, then on from there
 *
 * By texture sand, loam or clay. First take out free lime ({@link freeLimeSulfur_kg_per_m2}); where there is much of it
 * sulfur is no use. Splitting the low table for other targets is ours.
 * Sources: Michigan State University data to pH 4.5; the table to pH 6.5 is from memory of vegetable handbooks.
 */
export function sulfurRate(input: SulfurInput): Sulfur {
  requireRange('soilPh', input.soilPh, 2.5, 10.5, '');
  requireRange('targetPh', input.targetPh, LOW_TARGET_PH, 8.4, '');
  if (input.soilPh <= input.targetPh) return { sulfur_kg_per_m2: 0, heldAtEdge: false };
  const low = tableReader(input.toPh4_5, LOW_TARGET_PH, input.texture);
  const mild = tableReader(input.toPh6_5, MILD_TARGET_PH, input.texture);
  let held = false;
  const take = (reader: (ph: number) => ReturnType<typeof readBetween>, ph: number) => {
    const reading = reader(ph);
    held ||= reading.outside !== 'no';
    return reading.value;
  };
  let lb_per_acre: number;
  if (input.targetPh >= MILD_TARGET_PH) lb_per_acre = take(mild, input.soilPh) - take(mild, input.targetPh);
  else if (input.soilPh <= 7) lb_per_acre = take(low, input.soilPh) - take(low, input.targetPh);
  else lb_per_acre = take(mild, input.soilPh) + take(low, MILD_TARGET_PH) - take(low, input.targetPh);
  return { sulfur_kg_per_m2: convert(Math.max(0, lb_per_acre), 'lb_per_acre', 'kg_per_m2'), heldAtEdge: held };
}

function tableReader(table: SulfurTable, targetPh: number, texture: SulfurTexture) {
  const rows = Object.entries(table.rows).map(([ph, rates]) => {
    const rate = rates[texture];
    if (rate === undefined) refuse('texture', 'unknown', `texture: "${texture}" is none of sand, loam, clay.`);
    return [Number(ph), rate] as const;
  });
  return (ph: number) => readBetween([...rows, [targetPh, 0]], ph);
}

/** 32.06 g of S, oxidised, neutralise 100.09 g of CaCO3. */
export const SULFUR_PER_CALCITE = 32.06 / 100.09;

/**
 * Sulfur that free lime takes before the pH moves.
 *
 *   S = 0.3203 x CaCO3 share x soil mass      kg/m2 from kg/m2; CaCO3 share 0 to 1
 *
 * Source: stoichiometry. One percent in a 2,000,000 lb slice takes 6,406 lb/acre: advise against it.
 */
export function freeLimeSulfur_kg_per_m2(calciteShare: number, soil_kg_per_m2: number): number {
  requireRange('calciteShare', calciteShare, 0, 1, '');
  requireRange('soil_kg_per_m2', soil_kg_per_m2, 0, 3000, 'kg/m²');
  return calciteShare * soil_kg_per_m2 * SULFUR_PER_CALCITE;
}

/** The texture class of the sulfur tables for a soil texture of the trade. */
export function sulfurTexture(texture: string): SulfurTexture {
  if (/sand/.test(texture)) return 'sand';
  if (/clay/.test(texture)) return 'clay';
  return 'loam';
}
