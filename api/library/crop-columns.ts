/** A column of the shipped crop table, the fact it becomes in the farm file (canonical unit in its name), and its source group. */
export type CropColumn = {
  readonly column: string;
  readonly fact: string;
  readonly factor: number | null;
  readonly group: string;
};

const number = (column: string, fact: string, group: string, factor = 1): CropColumn => ({ column, fact, factor, group });
const words = (column: string, group: string): CropColumn => ({ column, fact: column, factor: null, group });

const CM = 0.01;
const PERCENT = 0.01;
const G_PER_KG = 0.001;

export const cropColumns: readonly CropColumn[] = [
  words('season', 'season'),
  words('frost_tolerance', 'frost'),
  words('sow_method', 'sow'),
  number('days_to_germ_at_optimum', 'germ_days', 'germ_days'),
  number('germ_temp_min_c', 'germ_min_C', 'germ_temp'),
  number('germ_temp_opt_c', 'germ_opt_C', 'germ_temp'),
  number('germ_temp_max_c', 'germ_max_C', 'germ_temp'),
  number('gdd_base_c', 'gdd_base_C', 'gdd_base'),
  number('weeks_indoors_min', 'weeks_indoors_min', 'weeks_indoors'),
  number('weeks_indoors_max', 'weeks_indoors_max', 'weeks_indoors'),
  number('days_to_maturity_min', 'maturity_min_days', 'maturity'),
  number('days_to_maturity_max', 'maturity_max_days', 'maturity'),
  words('days_counted_from', 'maturity'),
  number('harvest_window_days', 'harvest_window_days', 'harvest_window'),
  number('succession_interval_days', 'succession_days', 'succession'),
  number('in_row_spacing_cm', 'in_row_m', 'in_row', CM),
  number('row_spacing_cm', 'row_m', 'row', CM),
  number('intensive_spacing_cm', 'intensive_m', 'intensive', CM),
  number('sowing_depth_cm', 'sowing_depth_m', 'depth', CM),
  number('seeds_per_gram', 'seeds_per_g', 'seeds_per_gram'),
  number('min_germination_standard_pct', 'germination_share', 'min_germ', PERCENT),
  number('yield_low_per_m2', 'yield_low_per_m2', 'yield_low'),
  number('yield_typical_per_m2', 'yield_typical_per_m2', 'yield_typical'),
  number('yield_high_per_m2', 'yield_high_per_m2', 'yield_high'),
  words('yield_unit', 'yield_typical'),
  number('root_depth_cm', 'root_depth_m', 'root', CM),
  number('height_cm', 'height_m', 'height', CM),
  number('trellis', 'trellis', 'trellis'),
  number('kc_ini', 'kc_ini', 'kc'),
  number('kc_mid', 'kc_mid', 'kc'),
  number('kc_end', 'kc_end', 'kc'),
  number('stage_ini_days', 'stage_ini_days', 'stages'),
  number('stage_dev_days', 'stage_dev_days', 'stages'),
  number('stage_mid_days', 'stage_mid_days', 'stages'),
  number('stage_late_days', 'stage_late_days', 'stages'),
  words('stage_basis', 'stages'),
  number('depletion_fraction_p', 'depletion_share', 'depletion'),
  number('salinity_threshold_ds_per_m', 'salinity_threshold_dS_per_m', 'salinity'),
  number('salinity_slope_pct_per_ds_per_m', 'salinity_slope_share_per_dS_per_m', 'salinity', PERCENT),
  number('removal_n_g_per_kg', 'removal_n_kg_per_kg', 'removal', G_PER_KG),
  number('removal_p2o5_g_per_kg', 'removal_p2o5_kg_per_kg', 'removal', G_PER_KG),
  number('removal_k2o_g_per_kg', 'removal_k2o_kg_per_kg', 'removal', G_PER_KG),
  number('min_soil_depth_cm', 'min_soil_depth_m', 'soil_depth', CM),
  words('shade_tolerance', 'shade'),
];
