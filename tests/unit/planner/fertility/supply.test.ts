import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wholeScoops } from '../../../../planner/fertility/bed-dose.ts';
import { coverCropNitrogen } from '../../../../planner/fertility/cover-crop.ts';
import { dressingNitrogen, materialFor_kg } from '../../../../planner/fertility/material-rate.ts';
import { releaseByYear, seriesFor } from '../../../../planner/fertility/release-years.ts';
import { harvestedPartOf, harvestRemoval } from '../../../../planner/fertility/removal.ts';
import { nitrogenBalance, waterNitrogen_kg_per_m2 } from '../../../../planner/fertility/seasonal-nitrogen.ts';
import { faultPaths } from '../../../builders/faults-of.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const shares = fc.array(fc.double({ min: 0, max: 0.3, noNaN: true }), { minLength: 1, maxLength: 4 });
const amounts = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 8 });

describe('release over years', () => {
  test('dressings add up: two sets freed together are the sum of each alone', () => {
    fc.assert(
      fc.property(amounts, shares, (put, series) => {
        const twice = releaseByYear(
          put.map((each) => 2 * each),
          series,
        );
        for (const [year, freed] of releaseByYear(put, series).entries()) expect(twice[year]).toBeCloseTo(2 * freed, 9);
      }),
    );
  });
  test('never frees more than was put on', () => {
    for (const [kind, series] of Object.entries(soilTables.decay_series_organic_N.rows))
      expect(
        series.reduce((sum, share) => sum + share, 0),
        kind,
      ).toBeLessThanOrEqual(1);
    for (const firstYearNShare of [0, 0.07, 0.25, 0.6, 0.8, 0.97, 1])
      for (const animalOrigin of ['raw', 'none']) {
        const series = seriesFor(soilTables.decay_series_organic_N.rows, { kind: 'organic', animalOrigin, firstYearNShare });
        expect(series.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-12);
      }
  });
});

describe('removal', () => {
  test('half the harvest takes half', () => {
    const part = harvestedPartOf(soilTables.removal_by_harvested_part.rows, 'spinach');
    expect(harvestRemoval(part, 20).k2o_kg * 2).toBeCloseTo(harvestRemoval(part, 40).k2o_kg, 12);
  });
  test('a crop without composition is refused at its field', () => {
    expect(faultPaths(() => harvestedPartOf([], 'dandelion'))).toEqual(['crop']);
  });
});

describe('supply', () => {
  test('a cover crop below 1.5 % N gives nothing and warns (Oregon State PNW 636)', () => {
    expect(coverCropNitrogen(0.01)).toEqual({ availableShare: 0, warning: 'immobilization-possible' });
    expect(coverCropNitrogen(0.05).warning).toBe('above-fitted-range');
  });
  test('applying nothing changes nothing', () => {
    const none = { organicMatter_kg_per_m2: 0, dressings_kg_per_m2: 0, legumes_kg_per_m2: 0, water_kg_per_m2: 0 };
    expect(nitrogenBalance({ need_kg_per_m2: 0.01, ...none }).balance_kg_per_m2).toBe(-0.01);
    expect(dressingNitrogen({ dressing_kg: 0, moistureShare: 0.3, nShareOfDry: 0.01, availableShare: 0.5 }).total_kg).toBe(0);
  });
  test('a metre of water at 10 mg/L of nitrate-N brings 10 g/m2', () => {
    expect(waterNitrogen_kg_per_m2(1000, 10)).toBeCloseTo(0.01, 12);
  });
  test('a material without the nutrient is refused', () => {
    expect(faultPaths(() => materialFor_kg(1, 0, 1))).toEqual(['contentShare']);
  });
  test('scoops rounded up never fall short and never miss by a whole scoop', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (mass, scoop) => {
          const { given_kg } = wholeScoops(mass, scoop, 'up');
          expect(given_kg).toBeGreaterThanOrEqual(mass * (1 - 1e-6));
          expect(given_kg).toBeLessThan(mass + scoop * (1 + 1e-6));
        },
      ),
    );
  });
});
