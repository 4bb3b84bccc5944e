import { refuse } from '../errors.ts';
import * as c from './constants.ts';

/** What a unit measures. Two units convert only within one dimension. */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'pressure'
  | 'energy'
  | 'power'
  | 'time'
  | 'flow'
  | 'speed'
  | 'density'
  | 'areaDensity'
  | 'count';

type Unit = { readonly dimension: Dimension; readonly factor: number };

const unit = (dimension: Dimension, factor: number): Unit => ({ dimension, factor });

/** Each unit's size in the canonical unit of its dimension: m, m2, L, kg, Pa, Wh, W, s, L/s, m/s, kg/m3, kg/m2. */
export const units = {
  m: unit('length', 1),
  cm: unit('length', 0.01),
  mm: unit('length', 0.001),
  km: unit('length', 1000),
  in: unit('length', c.M_PER_INCH),
  ft: unit('length', c.M_PER_FOOT),
  yd: unit('length', c.M_PER_YARD),
  mi: unit('length', c.M_PER_MILE),
  m2: unit('area', 1),
  cm2: unit('area', 1e-4),
  ha: unit('area', c.M2_PER_HECTARE),
  in2: unit('area', c.M_PER_INCH ** 2),
  ft2: unit('area', c.M2_PER_SQUARE_FOOT),
  acre: unit('area', c.M2_PER_ACRE),
  L: unit('volume', 1),
  mL: unit('volume', 0.001),
  m3: unit('volume', c.L_PER_CUBIC_METRE),
  in3: unit('volume', c.L_PER_CUBIC_INCH),
  ft3: unit('volume', c.L_PER_CUBIC_FOOT),
  yd3: unit('volume', c.L_PER_CUBIC_YARD),
  us_gal: unit('volume', c.L_PER_US_GALLON),
  us_qt: unit('volume', c.L_PER_US_GALLON / 4),
  us_pt: unit('volume', c.L_PER_US_GALLON / 8),
  us_cup: unit('volume', c.L_PER_US_CUP),
  us_fl_oz: unit('volume', c.L_PER_US_FLUID_OUNCE),
  us_tbsp: unit('volume', c.L_PER_US_TABLESPOON),
  us_tsp: unit('volume', c.L_PER_US_TEASPOON),
  us_dry_qt: unit('volume', c.L_PER_US_DRY_QUART),
  us_bu: unit('volume', c.L_PER_US_BUSHEL),
  imp_gal: unit('volume', c.L_PER_IMPERIAL_GALLON),
  trade_gal: unit('volume', c.L_PER_TRADE_GALLON),
  kg: unit('mass', 1),
  g: unit('mass', 0.001),
  mg: unit('mass', 1e-6),
  t: unit('mass', 1000),
  lb: unit('mass', c.KG_PER_POUND),
  oz: unit('mass', c.KG_PER_OUNCE),
  us_ton: unit('mass', c.KG_PER_SHORT_TON),
  Pa: unit('pressure', 1),
  kPa: unit('pressure', 1000),
  bar: unit('pressure', 100_000),
  psi: unit('pressure', c.PA_PER_PSI),
  Wh: unit('energy', 1),
  kWh: unit('energy', 1000),
  J: unit('energy', 1 / c.J_PER_WH),
  MJ: unit('energy', 1e6 / c.J_PER_WH),
  W: unit('power', 1),
  kW: unit('power', 1000),
  s: unit('time', 1),
  min: unit('time', 60),
  h: unit('time', 3600),
  d: unit('time', c.S_PER_DAY),
  L_per_s: unit('flow', 1),
  L_per_min: unit('flow', 1 / 60),
  L_per_h: unit('flow', 1 / 3600),
  m3_per_s: unit('flow', 1000),
  m3_per_h: unit('flow', 1000 / 3600),
  us_gal_per_min: unit('flow', c.L_PER_US_GALLON / 60),
  us_gal_per_h: unit('flow', c.L_PER_US_GALLON / 3600),
  ft3_per_s: unit('flow', c.L_PER_CUBIC_FOOT),
  m_per_s: unit('speed', 1),
  km_per_h: unit('speed', 1000 / 3600),
  mi_per_h: unit('speed', c.M_PER_MILE / 3600),
  ft_per_s: unit('speed', c.M_PER_FOOT),
  kg_per_m3: unit('density', 1),
  lb_per_ft3: unit('density', (c.KG_PER_POUND / c.L_PER_CUBIC_FOOT) * 1000),
  lb_per_yd3: unit('density', (c.KG_PER_POUND / c.L_PER_CUBIC_YARD) * 1000),
  kg_per_m2: unit('areaDensity', 1),
  g_per_m2: unit('areaDensity', 0.001),
  kg_per_ha: unit('areaDensity', 1 / c.M2_PER_HECTARE),
  lb_per_ft2: unit('areaDensity', c.KG_PER_POUND / c.M2_PER_SQUARE_FOOT),
  lb_per_1000ft2: unit('areaDensity', c.KG_PER_POUND / (1000 * c.M2_PER_SQUARE_FOOT)),
  lb_per_acre: unit('areaDensity', c.KG_PER_POUND / c.M2_PER_ACRE),
  us_ton_per_acre: unit('areaDensity', c.KG_PER_SHORT_TON / c.M2_PER_ACRE),
  count: unit('count', 1),
  dozen: unit('count', 12),
} as const satisfies Record<string, Unit>;

export type UnitSymbol = keyof typeof units;

/**
 * Converts a quantity between two units of one dimension.
 * @example convert(40, 'us_gal', 'L') // 151.41647136
 * @throws InputError when the units measure different things
 */
export function convert(value: number, from: UnitSymbol, to: UnitSymbol): number {
  const source = units[from];
  const target = units[to];
  if (source.dimension !== target.dimension)
    refuse('unit', 'other-dimension', `${from} is a ${source.dimension}, ${to} is a ${target.dimension}.`);
  return (value * source.factor) / target.factor;
}

export const celsiusOf = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
export const fahrenheitOf = (celsius: number): number => (celsius * 9) / 5 + 32;
export const radiansOf = (degrees: number): number => (degrees * Math.PI) / 180;
export const degreesOf = (radians: number): number => (radians * 180) / Math.PI;
/** A difference of temperatures, or degree days: no offset, 1.8 F to 1 C. */
export const celsiusStepsOf = (fahrenheitSteps: number): number => fahrenheitSteps / 1.8;
export const fahrenheitStepsOf = (celsiusSteps: number): number => celsiusSteps * 1.8;
