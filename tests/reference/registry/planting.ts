import type { Registry } from '../registry.ts';
import { plantingSeason } from './planting-season.ts';

export const planting: Registry = {
  ...plantingSeason,
};
