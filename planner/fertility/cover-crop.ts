import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';

export type CoverCropNitrogen = {
  /** Plant-available nitrogen for each kg of dry matter turned in, kg. */
  readonly availableShare: number;
  readonly warning: 'immobilization-possible' | 'above-fitted-range' | null;
};

/**
 * Plant-available nitrogen of a cover crop turned in, for the next 4 to 6 weeks and the season.
 *
 *   PAN = 17.5 (N - 1.5)      lb for a short ton of dry matter, N in percent of dry matter, 1.5 to 3.5
 *
 * Below 1.5 % nothing, and the soil's own nitrogen may be tied up (cereals as much as 50 lb/acre); above 3.5 % it is
 * held at 35 lb. Source: Oregon State University PNW 636 (2012).
 */
export function coverCropNitrogen(nShareOfDry: number): CoverCropNitrogen {
  requireRange('nShareOfDry', nShareOfDry, 0, 0.1, '');
  const lb_per_ton = 17.5 * (100 * nShareOfDry - 1.5);
  const held = Math.min(35, Math.max(0, lb_per_ton));
  return {
    availableShare: convert(held, 'lb', 'kg') / convert(1, 'us_ton', 'kg'),
    warning: nShareOfDry < 0.015 ? 'immobilization-possible' : nShareOfDry > 0.035 ? 'above-fitted-range' : null,
  };
}
