import { describe, expect, test } from 'vitest';
import { cropRates } from '../../../../planner/fertility/crop-rates.ts';
import { analysisFault, reachableShares } from '../../../../planner/fertility/material-content.ts';
import { bedBudget, explainToFeed, type PlantingNeed, surplusNutrients } from '../../../../planner/fertility/nutrient-budget.ts';
import { noNutrients } from '../../../../planner/fertility/nutrients.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const planting = (name: string, n: number, p: number, by: PlantingNeed['by'] = 'rate'): PlantingNeed => ({
  name,
  basis: 'test',
  area_m2: 4,
  by,
  need: { ...noNutrients, N: n, P2O5: p },
});
const credit = (n: number, p: number) => ({
  kind: 'earlier-dressings' as const,
  name: 'earlier',
  source: 'test',
  brings: { ...noNutrients, N: n, P2O5: p },
});

describe('the budget of a bed', () => {
  test('nitrogen is fed to every planting, phosphate by recommendation once a season', () => {
    const { need } = bedBudget(4, [planting('lettuce', 0.04, 0.03), planting('kale', 0.06, 0.05)], []);
    expect(need.N).toBeCloseTo(0.1, 12);
    expect(need.P2O5).toBeCloseTo(0.05, 12);
  });
  test('what leaves with two harvests is added up', () => {
    const { need } = bedBudget(4, [planting('a', 0.01, 0.02, 'removal'), planting('b', 0.01, 0.02, 'removal')], []);
    expect(need.P2O5).toBeCloseTo(0.04, 12);
  });
  test('need less supply is what is to feed; never both a surplus and a want', () => {
    const { toFeed, surplus } = bedBudget(4, [planting('kale', 0.06, 0.01)], [credit(0.02, 0.05)]);
    expect(toFeed.N).toBeCloseTo(0.04, 12);
    expect(toFeed.P2O5).toBe(0);
    expect(surplus.P2O5).toBeCloseTo(0.04, 12);
    expect(
      surplusNutrients({ need: { ...noNutrients, P2O5: 0.01 }, supply: { ...noNutrients, P2O5: 0.05 }, toFeed, surplus }),
    ).toEqual(['P2O5']);
  });
  test('applying nothing changes nothing', () => {
    const plantings = [planting('kale', 0.06, 0.01)];
    expect(bedBudget(4, plantings, [credit(0, 0)])).toEqual(bedBudget(4, plantings, []));
  });
  test('its working ends in the same number', () => {
    const args = [4, [planting('kale', 0.06, 0.01)], [credit(0.02, 0)]] as const;
    expect(explainToFeed('N', ...args).result.value).toBe(bedBudget(...args).toFeed.N);
  });
});

describe('rates of crops', () => {
  const rows = soilTables.fertilizer_by_class_midatlantic_lb_per_acre.rows;
  test('a higher class never asks for more', () => {
    for (const crop of ['tomato', 'kale', 'zinnia', 'lettuce-romaine']) {
      const at = (name: 'low' | 'medium' | 'high' | 'very-high') => cropRates(rows, crop, name, name).p2o5_kg_per_m2;
      expect(at('low')).toBeGreaterThanOrEqual(at('medium'));
      expect(at('medium')).toBeGreaterThanOrEqual(at('high'));
      expect(at('high')).toBeGreaterThanOrEqual(at('very-high'));
    }
  });
  test('a crop without its own row takes its kin’s, and a cover crop nothing', () => {
    expect(cropRates(rows, 'lettuce-romaine', 'low', 'low')).toMatchObject({ standing: 'memory' });
    expect(cropRates(rows, 'zinnia', 'low', 'low')).toMatchObject({ standing: 'practice' });
    expect(cropRates(rows, 'crimson-clover', 'low', 'low').n_kg_per_m2).toBe(0);
  });
});

describe('what a material brings', () => {
  const meal = {
    nShare: 0.12,
    p2o5Share: 0.01,
    k2oShare: 0,
    caShare: null,
    mgShare: null,
    sShare: null,
    firstYearNShare: 0.75,
    isMineral: false,
  };
  test('over the years never more than it holds', () => {
    const sum = [0, 1, 2, 3].reduce((total, year) => total + reachableShares(meal, [0.75, 0.05, 0.02], year).P2O5, 0);
    expect(sum).toBeCloseTo(0.01, 12);
  });
  test('an analysis over 100 % or below zero is a fault', () => {
    expect(analysisFault([0.6, 0.5])).toMatch(/110 %/);
    expect(analysisFault([-0.1])).toMatch(/below zero/);
    expect(analysisFault([0.12, null, 0.01])).toBeNull();
  });
});
