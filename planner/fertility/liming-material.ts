import { refuse, requireRange } from '../errors.ts';
import { ownValue } from '../own-value.ts';

/** Molar mass over neutralised charge, against that of CaCO3 (100.087 g for two charges). */
const LIMING_COMPOUNDS: Readonly<Record<string, number>> = {
  CaCO3: 100.087,
  MgCO3: 84.313,
  'CaMg(CO3)2': 184.4 / 2,
  'Ca(OH)2': 74.093,
  CaO: 56.077,
  MgO: 40.304,
};
const CALCITE_G_PER_MOL = 100.087;

/**
 * Neutralising value of a pure compound against calcium carbonate.
 *
 *   CCE = molar mass of CaCO3 / molar mass per two charges      share: CaCO3 1.000, MgCO3 1.187, dolomite 1.085
 *
 * Source: stoichiometry. A crop file prints 108.5 % for MgCO3; that is the dolomite figure.
 * @throws InputError for a compound that is not here
 */
export function pureNeutralisingShare(compound: string): number {
  const mass = ownValue(LIMING_COMPOUNDS, compound);
  if (mass === undefined)
    return refuse('compound', 'unknown', `compound: "${compound}" is none of ${Object.keys(LIMING_COMPOUNDS).join(', ')}.`);
  return CALCITE_G_PER_MOL / mass;
}

/** Share of a lime that passes each sieve. */
export type SievePass = { readonly pass20Share: number; readonly pass60Share: number; readonly pass100Share: number };

/** What a lime retained on 20 mesh, between 20 and 60, between 60 and 100, and passing 100 is worth: New York factors. */
const SIZE_WORTH = { coarse: 0, medium: 0.4, fine: 0.8, dust: 1 } as const;

/**
 * Fineness of a lime by its sieve analysis.
 *
 *   F = 0 (1 - p20) + 0.40 (p20 - p60) + 0.80 (p60 - p100) + 1.00 p100
 *
 *   p20, p60, p100   share passing 20, 60, 100 mesh   0 to 1, each no more than the one before
 *
 * Source: Cornell, certified crop adviser study resources, soil fertility PO 41. Other states use other factors.
 */
export function limeFinenessShare(pass: SievePass): number {
  requireRange('pass20Share', pass.pass20Share, 0, 1, '');
  requireRange('pass60Share', pass.pass60Share, 0, pass.pass20Share, '');
  requireRange('pass100Share', pass.pass100Share, 0, pass.pass60Share, '');
  return (
    SIZE_WORTH.coarse * (1 - pass.pass20Share) +
    SIZE_WORTH.medium * (pass.pass20Share - pass.pass60Share) +
    SIZE_WORTH.fine * (pass.pass60Share - pass.pass100Share) +
    SIZE_WORTH.dust * pass.pass100Share
  );
}

/**
 * Effective neutralising value, share: CCE x fineness. 1 is pure, fine calcium carbonate ("score 100").
 * Source: as {@link limeFinenessShare}.
 */
export function effectiveNeutralisingShare(neutralisingShare: number, finenessShare: number): number {
  requireRange('neutralisingShare', neutralisingShare, 0.01, 2.5, '');
  requireRange('finenessShare', finenessShare, 0, 1, '');
  return neutralisingShare * finenessShare;
}

/**
 * How much of a liming material does the work of an amount of 100-score lime.
 *
 *   material = lime / effective neutralising value       any unit of mass; the share above 0 to 2.5
 *
 * Also wood ash in place of lime (half to two thirds of its worth, University of Georgia Extension).
 * Source: Penn State soil-test notes (5 lb at 70 % is 7.14 lb).
 */
export function limingMaterial_kg(lime_kg: number, effectiveShare: number): number {
  requireRange('lime_kg', lime_kg, 0, Infinity, 'kg');
  requireRange('effectiveShare', effectiveShare, 0.01, 2.5, '');
  return lime_kg / effectiveShare;
}
