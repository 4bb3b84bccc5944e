import { daysBetween, type IsoDate } from '../calendar.ts';
import { refuse, requirePositive, requireRange } from '../errors.ts';
import { entry, practice, type Working } from '../working.ts';

/** Something bought that serves for years: what was paid, what it will still be worth, how long it lasts. */
export type Asset = { readonly purchase_minor: number; readonly salvage_minor: number; readonly life_years: number };

const DAYS_PER_YEAR = 365;

/**
 * Depreciation by the straight line.
 *
 *   D = (P - S) / n
 *
 *   P  price paid              minor units   0 or more
 *   S  salvage (resale) value  minor units   0 to P
 *   n  service life            years         above 0
 *
 * The answer is a yearly rate and is not rounded; round when it is entered in the books.
 * Holds interest out: for the cost of the money tied up see `capital-recovery.ts`, and never add the two.
 * Source: University of Maryland Extension, New Farmer: The DIRTI-5 (30,000 to 10,000 over 10 years: 2,000 a year).
 * @throws InputError naming the field
 */
export function straightLine_minor_per_year(asset: Asset): number {
  requireAsset(asset);
  return (asset.purchase_minor - asset.salvage_minor) / asset.life_years;
}

/**
 * Book value after a number of years of the straight line, never below the salvage value: `max(S, P - k D)`.
 *
 *   k  years since bought  0 or more
 *
 * Source: standard form, common practice.
 * @throws InputError naming the field
 */
export function bookValue_minor(asset: Asset, after_years: number): number {
  requireRange('after_years', after_years, 0, Infinity, 'years');
  return Math.max(asset.salvage_minor, asset.purchase_minor - after_years * straightLine_minor_per_year(asset));
}

/** Book values at the end of each full year of the life. @throws InputError naming the field */
export function bookValues_minor(asset: Asset): readonly number[] {
  requireAsset(asset);
  return Array.from({ length: Math.ceil(asset.life_years) }, (_, at) => bookValue_minor(asset, at + 1));
}

/**
 * The straight-line charge for the days on which a part stood, first and last day counted: `D x days / 365`.
 * The days past the end of the part's life carry no charge where `until` lies beyond it.
 *
 * Common practice, no source.
 * @throws InputError naming the field, also when `until` lies before `from`
 */
export function partYear(asset: Asset, from: IsoDate, until: IsoDate): { readonly days: number; readonly charge_minor: number } {
  const days = daysBetween(from, until) + 1;
  if (days < 1) refuse('until', 'too-early', 'The last day lies before the first.');
  return { days, charge_minor: (straightLine_minor_per_year(asset) * days) / DAYS_PER_YEAR };
}

/**
 * Salvage value as a share of the list price of a like new machine, not of the price paid.
 *
 *   S = share x list price
 *
 * Source: Iowa State University Extension, Ag Decision Maker A3-29, Estimating Farm Machinery Costs.
 * @throws InputError naming the field
 */
export function salvageOfList_minor(listPrice_minor: number, remainingShare: number): number {
  requireRange('listPrice_minor', listPrice_minor, 0, Infinity, '');
  requireRange('remainingShare', remainingShare, 0, 1, '');
  return listPrice_minor * remainingShare;
}

/** What an asset loses over its whole life: `P - S`. */
export function totalDepreciation_minor(purchase_minor: number, salvage_minor: number): number {
  return purchase_minor - salvage_minor;
}

/**
 * A building judged by its market value: depreciation `D = M (1 - SV) / RL`, interest on the value at mid-year
 * `IC = (M - D / 2) i`.
 *
 *   M   market value          minor units   0 or more
 *   SV  salvage share         0 to 1
 *   RL  remaining life        years         above 0
 *   i   interest              share a year  0 to 1
 *
 * Source: Texas Agricultural Extension Service, MBMS budget system, building cost equations.
 * @throws InputError naming the field
 */
export function buildingCost(building: {
  readonly marketValue_minor: number;
  readonly salvageShare: number;
  readonly remainingLife_years: number;
  readonly interest_share_per_year: number;
}): { readonly depreciation_minor_per_year: number; readonly interest_minor_per_year: number } {
  requireRange('marketValue_minor', building.marketValue_minor, 0, Infinity, '');
  requireRange('salvageShare', building.salvageShare, 0, 1, '');
  requirePositive('remainingLife_years', building.remainingLife_years, 'years');
  requireRange('interest_share_per_year', building.interest_share_per_year, 0, 1, '');
  const depreciation = (building.marketValue_minor * (1 - building.salvageShare)) / building.remainingLife_years;
  return {
    depreciation_minor_per_year: depreciation,
    interest_minor_per_year: (building.marketValue_minor - depreciation / 2) * building.interest_share_per_year,
  };
}

/**
 * Interest on the average investment: `(P + S) / 2 x i`. Slightly different from capital recovery: say which one is on.
 *
 * Source: rule of extension budgets, from memory.
 * @throws InputError naming the field
 */
export function averageInvestment(
  purchase_minor: number,
  salvage_minor: number,
  interest_share_per_year: number,
): { readonly average_minor: number; readonly interest_minor_per_year: number } {
  requireRange('purchase_minor', purchase_minor, 0, Infinity, '');
  requireRange('interest_share_per_year', interest_share_per_year, 0, 1, '');
  const average = (purchase_minor + salvage_minor) / 2;
  return { average_minor: average, interest_minor_per_year: average * interest_share_per_year };
}

/**
 * A used machine where nothing better is known: half of the new price and two thirds of the new life.
 *
 * Source: extension small-acreage vegetable cost study (title not established), credited there to Painter 2011.
 * @throws InputError naming the field
 */
export function usedMachine(newPrice_minor: number, newLife_years: number): Asset {
  requireRange('newPrice_minor', newPrice_minor, 0, Infinity, '');
  requirePositive('newLife_years', newLife_years, 'years');
  return { purchase_minor: newPrice_minor / 2, salvage_minor: 0, life_years: (newLife_years * 2) / 3 };
}

/**
 * A material put on once for several years, charged by the year: `rate x price / interval`.
 *
 * Source: Carolina Farm Stewardship Association, Organic enterprise budget: tomatoes, 2014, note on lime.
 * @throws InputError naming the field
 */
export function yearlyShare_minor(amount: number, price_minor_per_unit: number, interval_years: number): number {
  requireRange('amount', amount, 0, Infinity, '');
  requirePositive('interval_years', interval_years, 'years');
  return (amount * price_minor_per_unit) / interval_years;
}

/** Working of {@link straightLine_minor_per_year}. */
export function explainStraightLine(asset: Asset): Working {
  const rate = straightLine_minor_per_year(asset);
  return {
    title: 'Yearly cost by the straight line',
    formula: 'D = (P - S) / n',
    symbols: [
      { symbol: 'P', name: 'price paid', figure: { value: asset.purchase_minor, unit: 'minor' }, origin: entry() },
      { symbol: 'S', name: 'salvage value', figure: { value: asset.salvage_minor, unit: 'minor' }, origin: entry() },
      { symbol: 'n', name: 'service life', figure: { value: asset.life_years, unit: 'years' }, origin: practice() },
    ],
    steps: [
      {
        text: 'What it loses over its life',
        figures: `${asset.purchase_minor} - ${asset.salvage_minor}`,
        result: { value: totalDepreciation_minor(asset.purchase_minor, asset.salvage_minor), unit: 'minor' },
      },
    ],
    result: { value: rate, unit: 'minor' },
    sources: ['University of Maryland Extension, New Farmer: The DIRTI-5'],
    notes: ['Interest on the money tied up is not in it.'],
    parts: [],
  };
}

/** @throws InputError naming the field */
export function requireAsset(asset: Asset): void {
  requireRange('purchase_minor', asset.purchase_minor, 0, Infinity, '');
  requireRange('salvage_minor', asset.salvage_minor, 0, asset.purchase_minor, '');
  requirePositive('life_years', asset.life_years, 'years');
}
