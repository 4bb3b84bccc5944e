import { expect, test } from 'vitest';
import { checkInstance } from '../../../../../planner/season/optimise/check-instance.ts';
import type { SeasonInstance } from '../../../../../planner/season/optimise/instance.ts';
import { faultPaths } from '../../../../builders/faults-of.ts';
import { tinySeason } from '../../../../builders/tiny-season.ts';

const pathsOf = (instance: SeasonInstance): readonly string[] => faultPaths(() => checkInstance(instance));

test('a sound season passes; each unsound field is named', () => {
  const good = tinySeason(1);
  expect(pathsOf(good)).toEqual([]);
  const [crop, ...others] = good.crops;
  const [unit, ...rest] = good.units;
  if (crop === undefined || unit === undefined) throw new Error('nothing to break');
  const rising = {
    week: 3,
    contract: 0,
    contractPrice_minor: 0,
    penalty_minor: 0,
    tiers: [1, 2].map((k) => ({ cap: 1, price_minor: k })),
  };
  expect(pathsOf({ ...good, crops: [{ ...crop, demand: [rising] }, ...others] })).toEqual([
    'crops.0.demand.0.tiers.1.price_minor',
  ]);
  expect(pathsOf({ ...good, units: [{ ...unit, area_m2: 0 }, ...rest] })).toEqual(['units.0.area_m2']);
  expect(pathsOf({ ...good, units: [{ ...unit, zone: 9 }, ...rest] })).toEqual(['units.0.zone']);
  expect(pathsOf({ ...good, labourCap_h: [1] })).toEqual(['labourCap_h']);
  expect(pathsOf({ ...good, wage_minor_per_h: Number.NaN })).toEqual(['wage_minor_per_h']);
  const late = { ...(crop.options[0] as (typeof crop.options)[number]), startWeek: 23 };
  expect(pathsOf({ ...good, crops: [{ ...crop, options: [late] }, ...others] })).toEqual(['crops.0.options.0.startWeek']);
});
