import { describe, expect, test } from 'vitest';
import { explainPhPlan, type PhPlanInput, phPlan } from '../../../../planner/fertility/ph-plan.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { faultPaths } from '../../../builders/faults-of.ts';
import { soilTables } from '../../../builders/soil-tables.ts';

const input: PhPlanInput = {
  tables: soilTables,
  kind: 'soil',
  soilPh: 5.4,
  bufferPh: 6,
  bufferMethod: 'sikora',
  texture: 'loam',
  targetPh: 6.8,
  area_m2: convert(32, 'ft2', 'm2'),
  depth_m: convert(6, 'in', 'm'),
  limeSince_kg_per_m2: 0,
  limeWorthShare: 1,
  sulfurShare: 0.9,
};

describe('the pH plan', () => {
  test('is the published rate on a bed: 4.6 ton/acre on 32 ft2 is 6.76 lb (Oregon State EM 9585)', () => {
    expect(convert(phPlan(input).material_kg, 'kg', 'lb')).toBeCloseTo(6.758, 3);
  });
  test('a lime of half the worth takes twice the weight', () => {
    expect(phPlan({ ...input, limeWorthShare: 0.5 }).material_kg).toBeCloseTo(2 * phPlan(input).material_kg, 9);
  });
  test('gives lime or sulfur, never both, and nothing near the target', () => {
    expect(phPlan(input).act).toBe('lime');
    expect(phPlan({ ...input, soilPh: 7.6, targetPh: 6.5 }).act).toBe('sulfur');
    expect(phPlan({ ...input, soilPh: 6.7 }).act).toBe('none');
  });
  test('lime since the test is taken off, and enough of it leaves nothing', () => {
    const half = phPlan(input).rate_kg_per_m2 / 2;
    expect(phPlan({ ...input, limeSince_kg_per_m2: half }).rate_kg_per_m2).toBeCloseTo(half, 9);
    expect(phPlan({ ...input, limeSince_kg_per_m2: 10 }).act).toBe('none');
  });
  test('much lime is split half a year apart (Penn State, home garden)', () => {
    expect(phPlan(input).applications).toBe(3);
    expect(phPlan({ ...input, targetPh: 5.6 }).applications).toBe(1);
  });
  test('without a buffer reading the texture table serves, and says it is rough', () => {
    expect(phPlan({ ...input, bufferPh: null, bufferMethod: null }).method).toMatch(/rough/);
  });
  test('a medium is limed by volume and never given sulfur', () => {
    expect(phPlan({ ...input, kind: 'media', soilPh: 4, targetPh: 6, depth_m: 0.3 }).rate_kg_per_m2).toBeCloseTo(1.35, 9);
    expect(phPlan({ ...input, kind: 'media', soilPh: 7.5, targetPh: 6 }).act).toBe('none');
  });
  test('its working ends in the dose; a pH that cannot be is refused', () => {
    expect(explainPhPlan(input).result.value).toBe(phPlan(input).material_kg);
    expect(faultPaths(() => phPlan({ ...input, soilPh: 14 }))).toEqual(['soilPh']);
  });
});
