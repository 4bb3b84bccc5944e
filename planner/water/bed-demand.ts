import { computed, entry, library, practice, source, type Working } from '../working.ts';
import type { BedStore } from './bed-store.ts';
import type { BedYear } from './bed-year.ts';

export type BedDemandInput = {
  readonly store: BedStore;
  readonly year: BedYear;
  readonly yearDay: number;
  readonly eto_mm_per_day: number;
};

/**
 * Litres a bed uses on a day when it never runs short: crops, bare ground and permeable walls.
 *
 *   V = ETo (sum Kc A + k A_wall)
 *
 * Source: FAO-56 eq. 58; the wall's factor k is common practice, no source.
 */
export const bedUse_L_per_day = ({ store, year, yearDay, eto_mm_per_day }: BedDemandInput): number =>
  eto_mm_per_day * ((year.use_m2[yearDay] ?? 0) + store.wallFactor * store.wall_m2);

/** How {@link bedUse_L_per_day} came to its figure. */
export function explainBedUse(input: BedDemandInput & { readonly code: string }): Working {
  const { store, year, yearDay, eto_mm_per_day } = input;
  const use_m2 = year.use_m2[yearDay] ?? 0;
  const result = { value: bedUse_L_per_day(input), unit: 'L_per_day' };
  const wall_L = eto_mm_per_day * store.wallFactor * store.wall_m2;
  return {
    title: `Water use of ${input.code}`,
    formula: 'V = ETo (Σ Kc A + k A_wall)',
    symbols: [
      {
        symbol: 'ETo',
        name: 'reference evapotranspiration',
        figure: { value: eto_mm_per_day, unit: 'mm_per_day' },
        origin: computed('the weather of the day'),
      },
      {
        symbol: 'Σ Kc A',
        name: 'crop coefficients by the area they cover',
        figure: { value: use_m2, unit: 'm2' },
        origin: library('crop curve and planting dates'),
      },
      { symbol: 'A', name: 'surface of the bed', figure: { value: store.area_m2, unit: 'm2' }, origin: entry('the design') },
      { symbol: 'A_wall', name: 'permeable wall', figure: { value: store.wall_m2, unit: 'm2' }, origin: entry('the design') },
      {
        symbol: 'k',
        name: 'loss through the wall, share of ETo',
        figure: { value: store.wallFactor, unit: 'share' },
        origin: practice(),
      },
    ],
    steps: [
      {
        text: 'crops and bare ground',
        figures: `${eto_mm_per_day.toPrecision(3)} mm × ${use_m2.toPrecision(3)} m²`,
        result: { value: result.value - wall_L, unit: 'L_per_day' },
      },
      {
        text: 'through the wall',
        figures: `${eto_mm_per_day.toPrecision(3)} mm × ${store.wallFactor} × ${store.wall_m2.toPrecision(3)} m²`,
        result: { value: wall_L, unit: 'L_per_day' },
      },
    ],
    result,
    sources: [source('FAO Irrigation and Drainage Paper 56, eq. 58').text],
    notes: ['Water the bed would use if it never ran short. 1 mm over 1 m² is 1 L.'],
  };
}
