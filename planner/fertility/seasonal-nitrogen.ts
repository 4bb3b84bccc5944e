import { requireRange } from '../errors.ts';

/** Nitrogen of a season: need against every supply, any one mass unit by area. */
export type NitrogenBalanceInput = {
  readonly need_kg_per_m2: number;
  readonly organicMatter_kg_per_m2: number;
  readonly dressings_kg_per_m2: number;
  readonly legumes_kg_per_m2: number;
  readonly water_kg_per_m2: number;
};

/**
 * Season's nitrogen balance.
 *
 *   supply = organic matter + dressings + legumes and residues + nitrate in the water      balance = supply - need
 *
 * A negative balance is still to be fed; a positive one is a surplus that may leach.
 * Source: form of UC Santa Cruz, Teaching Organic Farming and Gardening, unit 1.11, appendix 3.
 */
export function nitrogenBalance(input: NitrogenBalanceInput): {
  readonly supply_kg_per_m2: number;
  readonly balance_kg_per_m2: number;
} {
  for (const [name, value] of Object.entries(input)) requireRange(name, value, 0, 1, 'kg/m²');
  const supply_kg_per_m2 =
    input.organicMatter_kg_per_m2 + input.dressings_kg_per_m2 + input.legumes_kg_per_m2 + input.water_kg_per_m2;
  return { supply_kg_per_m2, balance_kg_per_m2: supply_kg_per_m2 - input.need_kg_per_m2 };
}

/**
 * Nitrogen that irrigation water brings: volume x nitrate-N concentration.
 *
 *   N = V c      V L/m2 (a mm of water is 1 L/m2), c mg/L of nitrate-N, 0 to 200
 */
export function waterNitrogen_kg_per_m2(water_L_per_m2: number, nitrateN_mg_per_L: number): number {
  requireRange('water_L_per_m2', water_L_per_m2, 0, 10_000, 'L/m²');
  requireRange('nitrateN_mg_per_L', nitrateN_mg_per_L, 0, 200, 'mg/L');
  return (water_L_per_m2 * nitrateN_mg_per_L) / 1_000_000;
}
