import { addDays, dayNumber, type IsoDate } from '../calendar.ts';
import { daysFromLastFrost, type HardinessClass } from '../crops/hardiness.ts';
import { refuse, requireRange } from '../errors.ts';
import { computed, practice, source, type Working } from '../working.ts';

export type SpringWindow = { readonly earliest: IsoDate; readonly latest: IsoDate };

/**
 * When a class may go outside in spring, from the last frost at the chance the grower chose.
 *
 *   hardy F - 28 to F - 14      half-hardy F - 14 to F      tender from F      very tender from F + 14
 *
 * Soil must also be warm enough for seed: see `crops/emergence.ts`.
 * Source: Colorado State University Extension, GardenNotes 720; very tender from memory.
 */
export function springWindow(hardiness: HardinessClass, lastFrost: IsoDate): SpringWindow {
  const [from, to] = daysFromLastFrost[hardiness];
  return { earliest: addDays(lastFrost, from), latest: addDays(lastFrost, to) };
}

/** Crops whose plants wait longer than their seed: cucumber and summer squash, as very tender. Source: as above. */
const waitsAsPlants: ReadonlySet<string> = new Set(['cucumber', 'summer-squash']);

/** The class that counts for a crop put out as a plant or sown. */
export const classWhenPlanted = (cropId: string, hardiness: HardinessClass, raised: boolean): HardinessClass =>
  raised && waitsAsPlants.has(cropId) ? 'very-tender' : hardiness;

/** Days from which to which to sow indoors for a planting-out date: 7 days for each week. @throws InputError */
export function sowIndoors(
  plantOut: IsoDate,
  weeks: { readonly min: number; readonly max: number },
): { readonly from: IsoDate; readonly to: IsoDate } {
  requireRange('weeks.min', weeks.min, 0, 60, 'weeks');
  requireRange('weeks.max', weeks.max, weeks.min, 60, 'weeks');
  return { from: addDays(plantOut, -Math.round(7 * weeks.max)), to: addDays(plantOut, -Math.round(7 * weeks.min)) };
}

/** Growth slows in autumn: two weeks more. Source: Virginia Cooperative Extension fall formula. */
export const FALL_FACTOR_DAYS = 14;
/** A tender crop must be done two weeks before. Source: as above. */
export const TENDER_DAYS = 14;

export type CountBackInput = {
  readonly firstFrost: IsoDate;
  readonly maturity_days: number;
  readonly seedToTransplant_days: number;
  readonly harvest_days: number;
  readonly fallFactor_days: number;
  readonly isTender: boolean;
};

/** Days from sowing in autumn: days to maturity and the autumn factor. @throws InputError naming the field */
export function autumnDays(maturity_days: number, fallFactor_days: number = FALL_FACTOR_DAYS): number {
  requireRange('maturity_days', maturity_days, 1, 1000, 'days');
  requireRange('fallFactor_days', fallFactor_days, 0, 120, 'days');
  return maturity_days + fallFactor_days;
}

/**
 * Latest sowing for an autumn crop, counted back from the first frost.
 *
 *   back = D + raising + harvest + autumn factor + 14 when frost-tender      sow = first frost - back
 *
 *   D         days to maturity                    days   1 to 1000
 *   raising   seed to transplant, when raised     days   0 to 365
 *   harvest   how long it is to be picked         days   0 to 365
 *
 * A rule for the middle latitudes; where daily normals are known, counting heat is better: show both.
 * Source: Virginia Cooperative Extension fall formula.
 * @throws InputError naming the field
 */
export function countBack(input: CountBackInput): { readonly back_days: number; readonly sow: IsoDate } {
  requireRange('seedToTransplant_days', input.seedToTransplant_days, 0, 365, 'days');
  requireRange('harvest_days', input.harvest_days, 0, 365, 'days');
  const back_days =
    autumnDays(input.maturity_days, input.fallFactor_days) +
    input.seedToTransplant_days +
    input.harvest_days +
    (input.isTender ? TENDER_DAYS : 0);
  return { back_days, sow: addDays(input.firstFrost, -back_days) };
}

/** Sowings that still fit before the count-back date; refuses when the season is over already. @throws InputError */
export function latestSowing(input: CountBackInput, seasonStart: IsoDate): IsoDate {
  const { sow } = countBack(input);
  if (dayNumber(sow) < dayNumber(seasonStart))
    refuse('date', 'before-season', `The crop would have to be sown on ${sow}, before the season starts on ${seasonStart}.`);
  return sow;
}

export function explainCountBack(input: CountBackInput): Working {
  const { back_days, sow } = countBack(input);
  const result = { value: back_days, unit: 'days' };
  const origin = source('Virginia Cooperative Extension fall formula');
  const symbol = (name: string, value: number) => ({ symbol: name, name, figure: { value, unit: 'days' }, origin: computed() });
  return {
    title: 'Latest sowing before the first frost',
    formula: 'back = days to maturity + raising + harvest + autumn factor + 14 when tender',
    symbols: [
      symbol('days to maturity', input.maturity_days),
      symbol('raising', input.seedToTransplant_days),
      { ...symbol('harvest', input.harvest_days), origin: practice() },
      { ...symbol('autumn factor', input.fallFactor_days), origin },
    ],
    steps: [{ text: `Sow on ${sow}`, figures: `${input.firstFrost} less ${back_days} days`, result }],
    result,
    sources: ['Virginia Cooperative Extension fall formula'],
    notes: [input.isTender ? 'Frost-tender: two weeks more are counted.' : 'Not frost-tender: no days are added for frost.'],
  };
}
