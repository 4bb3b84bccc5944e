import { refuse, requireRange } from '../errors.ts';
import { ownValue } from '../own-value.ts';
import { convert } from '../units/convert.ts';
import type { ClassRatesRow, FloridaRow } from './soil-tables.ts';
import type { TestClass } from './test-class.ts';

export type RecommendedRates = {
  readonly n_kg_per_m2: number;
  readonly p2o5_kg_per_m2: number;
  readonly k2o_kg_per_m2: number;
};

/**
 * The class as the tables name it: `Med` is `medium`, spaces and case do not matter.
 * @throws InputError for a word that is no class
 */
export function classWord(text: string, path = 'class'): TestClass {
  const word = text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
  const known: Readonly<Record<string, TestClass>> = {
    'very-low': 'very-low',
    low: 'low',
    med: 'medium',
    medium: 'medium',
    high: 'high',
    'very-high': 'very-high',
  };
  return (
    ownValue(known, word) ?? refuse(path, 'unknown', `${path}: "${text}" is none of very low, low, medium, high, very high.`)
  );
}

const threeClasses: Readonly<Record<TestClass, string>> = {
  'very-low': 'low',
  low: 'low',
  medium: 'med',
  high: 'high',
  'very-high': 'high',
};
const fourClasses: Readonly<Record<TestClass, number>> = { 'very-low': 0, low: 0, medium: 1, high: 2, 'very-high': 3 };

/**
 * Rates of a table with three soil-test classes (Mehlich-3): N in one figure, P2O5 and K2O by class.
 * Source: University of Florida IFAS, Nutrient Management Program, crop pages.
 */
export function threeClassRates(row: FloridaRow, phosphorus: TestClass, potassium: TestClass): RecommendedRates {
  return fromLb(row.N, row.P2O5[threeClasses[phosphorus]] ?? 0, row.K2O[threeClasses[potassium]] ?? 0);
}

/**
 * Rates of a table with four classes: the middle of the printed N range, P2O5 and K2O by class.
 * Source: Mid-Atlantic Commercial Vegetable Production Recommendations, from memory: a planning default, to be checked
 * against the current edition and after the laboratory's own recommendation.
 */
export function fourClassRates(row: ClassRatesRow, phosphorus: TestClass, potassium: TestClass): RecommendedRates {
  return fromLb((row.N_min + row.N_max) / 2, row.P2O5[fourClasses[phosphorus]] ?? 0, row.K2O[fourClasses[potassium]] ?? 0);
}

const fromLb = (n: number, p2o5: number, k2o: number): RecommendedRates => ({
  n_kg_per_m2: convert(n, 'lb_per_acre', 'kg_per_m2'),
  p2o5_kg_per_m2: convert(p2o5, 'lb_per_acre', 'kg_per_m2'),
  k2o_kg_per_m2: convert(k2o, 'lb_per_acre', 'kg_per_m2'),
});

/**
 * Phosphate to bring a low soil up over some years while replacing what the crop removes.
 *
 *   buildup = b (CL - ST)/years, never below 0      need = buildup + removal
 *
 *   b        P2O5 that moves the test by 1 ppm   kg/m2   20 lb/acre (Tri-State)
 *   CL, ST   critical level, soil test           ppm
 *   years    of buildup                          -       1 to 20, commonly 4
 *
 * Above the plateau of the region nothing is wanted: the caller decides by class.
 * Source: Michigan State Bulletin E-2567 (Tri-State, 1995).
 */
export function phosphateBuildup(input: {
  readonly critical_mg_per_kg: number;
  readonly test_mg_per_kg: number;
  readonly perStep_kg_per_m2: number;
  readonly years: number;
  readonly removal_kg_per_m2: number;
}): { readonly buildup_kg_per_m2: number; readonly need_kg_per_m2: number } {
  requireRange('years', input.years, 1, 20, 'years');
  requireRange('test_mg_per_kg', input.test_mg_per_kg, 0, 10_000, 'mg/kg');
  requireRange('removal_kg_per_m2', input.removal_kg_per_m2, 0, 1, 'kg/m²');
  const buildup_kg_per_m2 =
    (input.perStep_kg_per_m2 * Math.max(0, input.critical_mg_per_kg - input.test_mg_per_kg)) / input.years;
  return { buildup_kg_per_m2, need_kg_per_m2: buildup_kg_per_m2 + input.removal_kg_per_m2 };
}

/**
 * Potash for buildup, removal and a margin.
 *
 *   K2O = (CL - ST)(1 + 0.05 CEC) + removal + 20      lb/acre; the first part never below 0
 *
 * The region puts at most 300 lb/acre of K2O on in a year.
 * Source: Tri-State form, Michigan State Bulletin E-2567.
 */
export function potashNeed_kg_per_m2(input: {
  readonly critical_mg_per_kg: number;
  readonly test_mg_per_kg: number;
  readonly cec_meq_per_100g: number;
  readonly removal_kg_per_m2: number;
}): number {
  requireRange('test_mg_per_kg', input.test_mg_per_kg, 0, 10_000, 'mg/kg');
  requireRange('cec_meq_per_100g', input.cec_meq_per_100g, 0, 200, 'meq/100 g');
  const buildup_lb = Math.max(0, input.critical_mg_per_kg - input.test_mg_per_kg) * (1 + 0.05 * input.cec_meq_per_100g);
  return convert(buildup_lb + 20, 'lb_per_acre', 'kg_per_m2') + input.removal_kg_per_m2;
}
