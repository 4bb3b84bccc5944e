import { requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { headOfPressure_m } from './head-and-pressure.ts';

/**
 * Loss coefficient of a valve from its flow coefficient, K = 890 d^4/Cv^2 on the velocity in the bore.
 *
 *   Cv   flow in US gal/min at a loss of 1 psi   gal/min/psi^0.5
 *   d    bore                                    in
 *
 * Source: hand form, from memory; equals the conversion of an open fluid-flow library.
 * @throws InputError naming the field
 */
export function valveK(flowCoefficient_us: number, bore_m: number): number {
  requirePositive('flowCoefficient_us', flowCoefficient_us, 'gal/min/psi^0.5');
  requirePositive('bore_m', bore_m, 'm');
  return (890 * convert(bore_m, 'm', 'in') ** 4) / flowCoefficient_us ** 2;
}

/**
 * Pressure lost in a valve, dP = (Q/Cv)2 for water, and the same as head of cold water.
 * Source: a plastic-fittings maker's engineering sheet (withheld).
 * @throws InputError naming the field
 */
export function valvePressureLoss(
  flowCoefficient_us: number,
  flow_m3_per_s: number,
): { readonly loss_Pa: number; readonly loss_m: number } {
  requirePositive('flowCoefficient_us', flowCoefficient_us, 'gal/min/psi^0.5');
  requireRange('flow_m3_per_s', flow_m3_per_s, 0, 100, 'm3/s');
  const loss_psi = (convert(flow_m3_per_s, 'm3_per_s', 'us_gal_per_min') / flowCoefficient_us) ** 2;
  const loss_Pa = convert(loss_psi, 'psi', 'Pa');
  return { loss_Pa, loss_m: headOfPressure_m(loss_Pa) };
}
