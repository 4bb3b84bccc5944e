import { requireRange } from '../errors.ts';
import { fahrenheitOf } from '../units/convert.ts';

/**
 * How long water may stand before biting mosquitoes can leave it.
 * Sources: 72 h, UC IPM pest note on mosquitoes in stormwater devices; 7 to 10 days egg to adult, CDC leaflet CS310257-A
 * (2022); 4 days at the fastest, North Dakota Department of Health.
 */
export const STANDING_WATER = {
  limit_h: 72,
  eggToAdultLeast_days: 7,
  eggToAdultMost_days: 10,
  fastestReported_days: 4,
} as const;

/** Mean air temperature below which the caution is not raised, 10 C (common practice, no source). */
export const MOSQUITO_SEASON_C = 10;

const BASE_F = 45;
const DEGREE_DAYS_F = 350;

/**
 * Days from egg to adult of a western house mosquito (Culex tarsalis): 14 days at 70 F and 10 at 80 F, which is 350
 * degree-days above 45 F; the straight line of rate against temperature between and a little beyond them.
 *
 *   days = 350 / (T - 45)      T in F, 50 to 95
 *
 * Source: the two figures as printed by mosquito-control associations (memory); the rule between them is ours.
 * @throws InputError outside 10 to 35 C
 */
export function eggToAdult_days(temperature_C: number): number {
  requireRange('temperature_C', temperature_C, 10, 35, 'C');
  return DEGREE_DAYS_F / (fahrenheitOf(temperature_C) - BASE_F);
}

/**
 * Hours that a basin stands wet after a fill: its water over what the plants and the air take a day.
 * @throws InputError when nothing is drawn
 */
export function standing_h(volume_L: number, use_L_per_day: number): number {
  requireRange('volume_L', volume_L, 0, 1e9, 'L');
  requireRange('use_L_per_day', use_L_per_day, 1e-9, 1e9, 'L/day');
  return (volume_L / use_L_per_day) * 24;
}

/** True when the mosquito caution is due: longer than 72 h in the season of flying mosquitoes. */
export function standsTooLong(wet_h: number, meanAir_C: number): boolean {
  return wet_h > STANDING_WATER.limit_h && meanAir_C > MOSQUITO_SEASON_C;
}
