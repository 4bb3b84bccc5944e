import { addDays, daysBetween, type IsoDate, parseIsoDate } from '../calendar.ts';

/** Days from turning raw manure in to the harvest: where the edible part touches soil or splash, and where it does not. */
export const MANURE_DAYS_TOUCHING = 120;
export const MANURE_DAYS_HELD_OFF = 90;

export type ManureInterval = { readonly interval_days: number; readonly firstHarvest: IsoDate };

/**
 * The first day on which a crop may be picked after raw manure was worked into the soil.
 *
 *   first harvest = day of incorporation + 120 days where the edible part touches soil or splash, else + 90 days
 *
 * Manure that is not worked in fits no interval. Processed manure (heated and dried) has none.
 * Source: 7 CFR 205.203(c)(1), seen. The federal produce rule leaves its own interval open (21 CFR 112.56); the organic
 * one is a prudent default for everybody.
 * @throws InputError when the date is none
 */
export function manureInterval(incorporatedDate: string, ediblePartTouchesSoil: boolean): ManureInterval {
  const from = parseIsoDate(incorporatedDate, 'incorporatedDate');
  const interval_days = ediblePartTouchesSoil ? MANURE_DAYS_TOUCHING : MANURE_DAYS_HELD_OFF;
  return { interval_days, firstHarvest: addDays(from, interval_days) };
}

/** Crop groups whose edible part grows in or lies on the soil, or is splashed: roots, bulbs, leaves and vines. */
const touching = /root|bulb|tuber|leaf|green|salad|herb|vine|squash|melon|cucurbit|berry|brassica/i;

/** Whether a crop's edible part is taken to touch soil: yes unless its group is one held off the ground. Common practice, no source. */
export const touchesSoil = (cropGroup: string, trellised: boolean): boolean => !trellised || touching.test(cropGroup);

export type ManureConflict = { readonly firstHarvest: IsoDate; readonly interval_days: number; readonly daysShort: number };

/** The clash of a dressing of raw manure with a planned harvest, or `null` where the interval is over by then. */
export function manureConflict(
  incorporatedDate: string,
  ediblePartTouchesSoil: boolean,
  plannedHarvest: IsoDate,
): ManureConflict | null {
  const { firstHarvest, interval_days } = manureInterval(incorporatedDate, ediblePartTouchesSoil);
  const daysShort = daysBetween(plannedHarvest, firstHarvest);
  return daysShort > 0 ? { firstHarvest, interval_days, daysShort } : null;
}
