import { unitOfName } from '../../../planner/units/symbol.ts';

/** Facts whose name does not end in the unit they are read in. Plain numbers carry their unit in their title. */
const own: Readonly<Record<string, string>> = {
  weeks_indoors_min: 'weeks',
  weeks_indoors_max: 'weeks',
  gdd_to_harvest_C_days: '',
  seeds_per_g: '',
  salinity_slope_share_per_dS_per_m: 'share',
};

/** The unit in which a fact of a crop is shown and entered. */
export function unitOfFact(name: string): string {
  const unit = own[name] ?? unitOfName(name) ?? '';
  return unit === 'm' ? 'm_short' : unit;
}
