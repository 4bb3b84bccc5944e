import { describe, expect, test } from 'vitest';
import { explainReading } from '../../../../planner/fertility/explain-reading.ts';
import { testClass } from '../../../../planner/fertility/test-class.ts';
import { layerNutrient_kg_per_m2, testValue_mg_per_kg, unlikelyValue } from '../../../../planner/fertility/test-value.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { faultPaths } from '../../../builders/faults-of.ts';

const slice = { depth_m: convert(6.6667, 'in', 'm'), bulkDensity_kg_per_m3: 1323.8 };

describe('figures of a laboratory', () => {
  test('lb/acre is twice the ppm in a slice of 2,000,000 lb only', () => {
    const ppm = testValue_mg_per_kg({ nutrient: 'P', value: 50, unit: 'lb/acre', ...slice });
    expect(ppm).toBeCloseTo(25, 1);
    const light = testValue_mg_per_kg({ nutrient: 'P', value: 50, unit: 'lb/acre', depth_m: 0.3, bulkDensity_kg_per_m3: 450 });
    expect(light).toBeGreaterThan(1.6 * ppm);
  });
  test('there and back: lb/acre of a layer is the layer again', () => {
    const ppm = testValue_mg_per_kg({ nutrient: 'K', value: 300, unit: 'lb/acre', ...slice });
    const rate = layerNutrient_kg_per_m2(ppm, slice.bulkDensity_kg_per_m3, slice.depth_m);
    expect(convert(rate, 'kg_per_m2', 'lb_per_acre')).toBeCloseTo(300, 6);
  });
  test('1 meq/100 g of calcium is 200 mg/kg (molar mass)', () => {
    expect(testValue_mg_per_kg({ nutrient: 'Ca', value: 1, unit: 'meq/100g', ...slice })).toBeCloseTo(200.4, 6);
  });
  test('meq of phosphorus and negative values are refused', () => {
    expect(faultPaths(() => testValue_mg_per_kg({ nutrient: 'P', value: 1, unit: 'meq/100g', ...slice }))).toEqual(['unit']);
    expect(faultPaths(() => testValue_mg_per_kg({ nutrient: 'P', value: -1, unit: 'ppm', ...slice }))).toEqual(['value']);
  });
  test('warns where the magnitude speaks of another unit', () => {
    expect(unlikelyValue('P', 900, 'ppm')?.code).toBe('unlikely-high');
    expect(unlikelyValue('Ca', 6.5, 'ppm')?.code).toBe('unlikely-low');
    expect(unlikelyValue('K', 180, 'ppm')).toBeNull();
  });
});

describe('classes', () => {
  test('Olsen P: low below 15, high above 25 ppm (University of California)', () => {
    expect([10, 20, 30].map((value) => testClass('olsen', 'P', value)?.class)).toEqual(['low', 'medium', 'high']);
  });
  test('each method has its own scale', () => {
    expect(testClass('morgan', 'P', 8)?.class).toBe('high');
    expect(testClass('mehlich-3', 'P', 8)?.class).toBe('very-low');
    expect(testClass('olsen', 'B', 1)).toBeNull();
  });
});

test('the working of a reading ends in the figure read, with the bounds of its method', () => {
  const working = explainReading({ nutrient: 'P', method: 'olsen', entered: '20 ppm', value_mg_per_kg: 20 });
  expect(working.result.value).toBe(20);
  expect(working.symbols.map((each) => each.figure.value)).toEqual([20, 15, 25]);
});
