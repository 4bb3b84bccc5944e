import { requireRange } from '../errors.ts';
import { entry, source, type Working } from '../working.ts';
import { evaporated_mm } from './radiation.ts';

export type HargreavesInput = {
  readonly tmax_C: number;
  readonly tmin_C: number;
  /** A mean measured on its own; without it the mean of the extremes. */
  readonly tmean_C?: number;
  readonly extraterrestrial_MJ_per_m2: number;
};

/**
 * Reference evapotranspiration from temperatures alone.
 *
 *   ETo = 0.0023 (Tmean + 17.8) sqrt(Tmax - Tmin) x 0.408 Ra
 *
 * For five days and longer; a single day can be a third off. Runs high in damp places, low in wind.
 * Source: FAO-56 eq. 52; checked with Example 20.
 * @throws InputError naming the field
 */
export function hargreaves_mm_per_day(input: HargreavesInput): number {
  requireRange('tmax_C', input.tmax_C, -90, 60, 'C');
  requireRange('tmin_C', input.tmin_C, -90, input.tmax_C, 'C');
  requireRange('extraterrestrial_MJ_per_m2', input.extraterrestrial_MJ_per_m2, 0, 50, 'MJ/m2');
  const mean_C = input.tmean_C ?? (input.tmax_C + input.tmin_C) / 2;
  return Math.max(
    0,
    0.0023 * (mean_C + 17.8) * Math.sqrt(input.tmax_C - input.tmin_C) * evaporated_mm(input.extraterrestrial_MJ_per_m2),
  );
}

export function explainHargreaves(input: HargreavesInput): Working {
  const eto = hargreaves_mm_per_day(input);
  return {
    title: 'Reference evapotranspiration, from temperatures alone',
    formula: 'ETo = 0.0023 (Tmean + 17.8) √(Tmax − Tmin) × 0.408 Ra',
    symbols: [
      {
        symbol: 'Tmax',
        name: 'highest temperature of the day',
        figure: { value: input.tmax_C, unit: 'C' },
        origin: entry('the weather record'),
      },
      {
        symbol: 'Tmin',
        name: 'lowest temperature of the day',
        figure: { value: input.tmin_C, unit: 'C' },
        origin: entry('the weather record'),
      },
      {
        symbol: 'Ra',
        name: 'sunlight above the air',
        figure: { value: input.extraterrestrial_MJ_per_m2, unit: 'MJ_per_m2' },
        origin: source('FAO Irrigation and Drainage Paper 56, eq. 21'),
      },
    ],
    steps: [
      {
        text: 'the sunlight as a depth of water',
        figures: `0.408 × ${input.extraterrestrial_MJ_per_m2.toPrecision(4)}`,
        result: { value: evaporated_mm(input.extraterrestrial_MJ_per_m2), unit: 'mm_per_day' },
      },
    ],
    result: { value: eto, unit: 'mm_per_day' },
    sources: ['FAO Irrigation and Drainage Paper 56 (1998), eq. 52'],
    notes: ['A single day can be a third off; sums over a week are closer.'],
  };
}
