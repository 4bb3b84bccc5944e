import { requireRange } from '../errors.ts';
import { celsiusOf } from '../units/convert.ts';

/** 131 to 170 degrees Fahrenheit as the rule states it. */
export const HEAT_BAND_F = { least_C: celsiusOf(131), most_C: celsiusOf(170) } as const;
/** 55 to 77 degrees Celsius, as the rule is rounded in metric texts. */
export const HEAT_BAND_C = { least_C: 55, most_C: 77 } as const;

export type HeatBand = { readonly least_C: number; readonly most_C: number };
export type HeatMethod = 'turned-windrow' | 'static-aerated' | 'in-vessel';

/** A day of the log; a day without a reading is left out or has `null`. */
export type HeatDay = { readonly day: number; readonly temperature_C: number | null };

export type HeatRule = {
  readonly daysInBand: number;
  readonly longestRun_days: number;
  readonly wanted_days: number;
  readonly turnings: number;
  readonly wantedTurnings: number;
  readonly met: boolean;
};

const WINDROW_DAYS = 15;
const WINDROW_TURNINGS = 5;
const VESSEL_DAYS = 3;

/**
 * Time and temperature of a compost heap against the organic rule.
 *
 *   turned windrow              15 days in the band, not necessarily in a row, and at least 5 turnings
 *   static aerated, in-vessel    3 days in the band in a row
 *
 * A day counts when its reading lies inside the band, both ends included; a day without a reading does not count. The
 * rule also asks for a starting C:N of 25 to 40. It is arithmetic and no verdict: that is the certifier's.
 * Source: 7 CFR 205.203(c)(2), from memory; 55 C, 15 days and five turnings also Manitoba Agriculture, Compost.
 */
export function heatRule(input: {
  readonly method: HeatMethod;
  readonly log: readonly HeatDay[];
  readonly turnings: number;
  readonly band: HeatBand;
}): HeatRule {
  const inBand = new Set<number>();
  for (const [at, entry] of input.log.entries()) {
    if (entry.temperature_C === null) continue;
    requireRange(`log.${at}.temperature_C`, entry.temperature_C, -40, 110, '°C');
    if (entry.temperature_C >= input.band.least_C && entry.temperature_C <= input.band.most_C) inBand.add(entry.day);
  }
  const longestRun_days = longestRun(inBand);
  const windrow = input.method === 'turned-windrow';
  const wanted_days = windrow ? WINDROW_DAYS : VESSEL_DAYS;
  const wantedTurnings = windrow ? WINDROW_TURNINGS : 0;
  const met = (windrow ? inBand.size : longestRun_days) >= wanted_days && input.turnings >= wantedTurnings;
  return { daysInBand: inBand.size, longestRun_days, wanted_days, turnings: input.turnings, wantedTurnings, met };
}

function longestRun(days: ReadonlySet<number>): number {
  let best = 0;
  for (const start of days) {
    if (days.has(start - 1)) continue;
    let length = 1;
    while (days.has(start + length)) length += 1;
    best = Math.max(best, length);
  }
  return best;
}
