import { requirePositive, requireRange } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { convert } from '../units/convert.ts';

/**
 * Power of the water a pump moves, P = rho g Q H.
 * @throws InputError naming the field
 */
export function waterPower_W(flow_m3_per_s: number, head_m: number, density_kg_per_m3: number): number {
  requireRange('flow_m3_per_s', flow_m3_per_s, 0, 100, 'm3/s');
  requireRange('head_m', head_m, 0, 1000, 'm');
  requirePositive('density_kg_per_m3', density_kg_per_m3, 'kg/m3');
  return density_kg_per_m3 * STANDARD_GRAVITY_M_PER_S2 * flow_m3_per_s * head_m;
}

/** Share of the electric power that ends in the water. Small pumps: 0.05 to 0.3. @throws InputError on no power */
export function pumpEfficiency(water_W: number, electric_W: number): number {
  requirePositive('electric_W', electric_W, 'W');
  return water_W / electric_W;
}

export type TradePumpPower = { readonly water_hp: number; readonly input_hp: number };

/**
 * The US trade's form, water hp = gal/min x ft / 3960; input hp = that over the efficiency.
 *
 *   efficiency   share of shaft power that ends in the water   -   above 0 to 1
 *
 * Source: Hydraulic Institute eq. 1.B.4.
 * @throws InputError naming the field
 */
export function tradePumpPower(flow_m3_per_s: number, head_m: number, efficiency: number): TradePumpPower {
  requirePositive('efficiency', efficiency, '');
  requireRange('efficiency', efficiency, 0, 1, '');
  const water_hp = (convert(flow_m3_per_s, 'm3_per_s', 'us_gal_per_min') * convert(head_m, 'm', 'ft')) / 3960;
  return { water_hp, input_hp: water_hp / efficiency };
}

/**
 * Current a load draws, I = P/V (power factor taken as 1; a small motor draws more).
 * Source: a fountain-pump explainer page (withheld).
 * @throws InputError on no voltage
 */
export function current_A(power_W: number, volts_V: number): number {
  requireRange('power_W', power_W, 0, 1e6, 'W');
  requirePositive('volts_V', volts_V, 'V');
  return power_W / volts_V;
}
