import { requirePositive } from '../errors.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../units/constants.ts';
import { waterDensity_kg_per_m3 } from './water-properties.ts';

/** Water at 4 C, the density behind the trade's 2.31 ft to the psi (common practice). */
const COLD_WATER_C = 4;

/**
 * Height of water that has a pressure, H = p / (rho g): 1 psi is 2.31 ft, 1 kPa is 0.102 m.
 * Source: Hydraulic Institute eq. 1.A.1.
 * @throws InputError when the density is not above zero
 */
export function headOfPressure_m(pressure_Pa: number, density_kg_per_m3 = waterDensity_kg_per_m3(COLD_WATER_C)): number {
  requirePositive('density_kg_per_m3', density_kg_per_m3, 'kg/m3');
  return pressure_Pa / (density_kg_per_m3 * STANDARD_GRAVITY_M_PER_S2);
}

/** Pressure under a height of water, p = rho g H. @throws InputError when the density is not above zero */
export function pressureOfHead_Pa(head_m: number, density_kg_per_m3 = waterDensity_kg_per_m3(COLD_WATER_C)): number {
  requirePositive('density_kg_per_m3', density_kg_per_m3, 'kg/m3');
  return head_m * density_kg_per_m3 * STANDARD_GRAVITY_M_PER_S2;
}
