import type { Registry } from '../registry.ts';
import { plantingCalendar } from './planting-calendar.ts';
import { plantingCrops } from './planting-crops.ts';
import { plantingLayouts } from './planting-layouts.ts';
import { plantingSeason } from './planting-season.ts';
import { plantingSeed } from './planting-seed.ts';

export const planting: Registry = {
  ...plantingLayouts,
  ...plantingSeed,
  ...plantingCalendar,
  ...plantingCrops,
  ...plantingSeason,
};
