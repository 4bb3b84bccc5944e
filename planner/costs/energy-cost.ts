import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

/**
 * Energy and cost of something that runs some hours a day: `power x hours x days`, at a price of the kilowatt-hour.
 *
 *   power  W       0 or more
 *   hours  a day   0 to 24
 *
 * @throws InputError naming the field
 */
export function runningCost(input: {
  readonly power_W: number;
  readonly run_h_per_day: number;
  readonly days: number;
  readonly price_minor_per_kWh: number;
}): { readonly energy_Wh: number; readonly cost_minor: number } {
  requireRange('power_W', input.power_W, 0, Infinity, 'W');
  requireRange('run_h_per_day', input.run_h_per_day, 0, 24, 'h');
  requireRange('days', input.days, 0, Infinity, 'days');
  const energy = input.power_W * input.run_h_per_day * input.days;
  return {
    energy_Wh: energy,
    cost_minor: energyCost_minor(input.power_W, input.run_h_per_day * input.days, input.price_minor_per_kWh),
  };
}

/** Cost of something that runs for some hours in all: `power x hours`, at a price of the kilowatt-hour. @throws InputError */
export function energyCost_minor(power_W: number, run_h: number, price_minor_per_kWh: number): number {
  requireRange('power_W', power_W, 0, Infinity, 'W');
  requireRange('run_h', run_h, 0, Infinity, 'h');
  return convert(power_W * run_h, 'Wh', 'kWh') * price_minor_per_kWh;
}
