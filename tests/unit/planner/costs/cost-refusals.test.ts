import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { labourCost_minor, shareByArea } from '../../../../planner/costs/allocate.ts';
import {
  breakEvenBeds,
  breakEvenPrice_minor,
  breakEvenYield,
  labourShare,
  stayingCost_minor,
} from '../../../../planner/costs/break-even.ts';
import {
  capitalRecoveryFactor,
  loanPayment_minor_per_year,
  realRate_share_per_year,
} from '../../../../planner/costs/capital-recovery.ts';
import { chanceOfCover } from '../../../../planner/costs/chance.ts';
import { csvFields } from '../../../../planner/costs/csv-field.ts';
import { cost_minor_per_m, cost_minor_per_m2, lengthOnArea_m, plotAreas } from '../../../../planner/costs/denominators.ts';
import {
  averageInvestment,
  bookValue_minor,
  buildingCost,
  partYear,
  salvageOfList_minor,
  straightLine_minor_per_year,
  usedMachine,
  yearlyShare_minor,
} from '../../../../planner/costs/depreciation.ts';
import { energyCost_minor, runningCost } from '../../../../planner/costs/energy-cost.ts';
import { lineTotal_minor } from '../../../../planner/costs/enterprise-budget.ts';
import { lineHours_h } from '../../../../planner/costs/line-hours.ts';
import { averageInterest_minor, monthlyInterest_minor } from '../../../../planner/costs/operating-interest.ts';
import {
  packagesOf,
  packedWeight_kg,
  packOut,
  perPersonHour,
  relativeHarvest_kg,
  yieldOnRow_kg,
} from '../../../../planner/costs/pack-out.ts';
import { exemptionFigures, keepUntil } from '../../../../planner/costs/records.ts';
import { marginRates, returnToLabour } from '../../../../planner/costs/returns.ts';
import { productSpread, triangleSpread } from '../../../../planner/costs/uncertainty.ts';
import { dryMeasuresOf_L, netWeight_kg, weighedUnit } from '../../../../planner/costs/units-of-sale.ts';
import { revenueVariance } from '../../../../planner/costs/variance.ts';
import { yieldPer_m2 } from '../../../../planner/costs/yield-against.ts';
import { refusal } from '../../../builders/faults-of.ts';

const asset = { purchase_minor: 100, salvage_minor: 10, life_years: 5 };
const building = { marketValue_minor: 100, salvageShare: 0.1, remainingLife_years: 10, interest_share_per_year: 0.05 };
const breakEven = { fixed_minor: 100, price_minor_per_unit: 10, following_minor_per_unit: 1, sellingShare: 0.1 };
const interest = { cost_minor: 100, interest_share_per_year: 0.1, months: 6, outstandingShare: 0.5 };
const running = { power_W: 10, run_h_per_day: 2, days: 3, price_minor_per_kWh: 20 };
const plot = { beds: 1, bedWidth_m: 1, bedLength_m: 1, access_m2: 0 };
const packing = { harvested_kg: 1, cullShare: 0, unsoldShare: 0 };
const stand = { gross_minor: 1, variable_minor: 1, bedArea_m2: 1, beds: 1, occupied_days: 1 };
const labour = { gross_minor: 1, total_minor: 1, labour_minor: 1, managementFee_minor: 0, labour_h: 1 };
const result = { area_m2: 1, yield_kg_per_m2: 1, price_minor_per_kg: 1 };
const spread = { low: 1, typical: 2, high: 3 };
const chance = {
  sold: spread,
  price_minor_per_unit: spread,
  fixed_minor: 1,
  following_minor_per_unit: 1,
  correlation: 0,
  draws: 1,
  seed: 1,
};

describe('what cannot be meant is refused at its field', () => {
  test.each<readonly [string, () => unknown]>([
    ['share too-small', () => shareByArea(100, [{ share: 0.9, area_m2: 1 }])],
    ['labour_h too-small h', () => labourCost_minor(-1, 1)],
    ['wage_minor_per_h too-small', () => labourCost_minor(1, -1)],
    ['cost_minor not-a-number', () => breakEvenPrice_minor(Number.NaN, 1)],
    ['sold not-positive', () => breakEvenPrice_minor(1, 0)],
    ['price_minor_per_unit too-small', () => breakEvenYield({ ...breakEven, price_minor_per_unit: -1 })],
    ['following_minor_per_unit too-small', () => breakEvenYield({ ...breakEven, following_minor_per_unit: -1 })],
    ['sellingShare too-large', () => breakEvenYield({ ...breakEven, sellingShare: 1.1 })],
    ['sold too-small', () => stayingCost_minor(1, 1, -1)],
    ['total_minor not-positive', () => labourShare([1], 0)],
    ['interest_share_per_year too-large', () => capitalRecoveryFactor(1.1, 5)],
    ['life_years not-positive years', () => capitalRecoveryFactor(0.1, 0)],
    ['loan_minor too-small', () => loanPayment_minor_per_year(-1, 0.1, 5)],
    ['nominal_share_per_year too-small', () => realRate_share_per_year(-0.1, 0)],
    ['inflation_share_per_year too-small', () => realRate_share_per_year(0.1, -0.6)],
    ['sold.low too-small', () => chanceOfCover({ ...chance, sold: { ...spread, low: -1 } })],
    ['sold not-in-order', () => chanceOfCover({ ...chance, sold: { ...spread, typical: 4 } })],
    ['price_minor_per_unit not-in-order', () => chanceOfCover({ ...chance, price_minor_per_unit: { ...spread, typical: 0.5 } })],
    ['correlation too-large', () => chanceOfCover({ ...chance, correlation: 1.1 })],
    ['draws not-whole', () => chanceOfCover({ ...chance, draws: 1.5 })],
    ['line bad-quotes', () => csvFields('a,"b')],
    ['line bad-quotes', () => csvFields('"a"b')],
    ['area_m2 not-positive m2', () => cost_minor_per_m2(1, 0)],
    ['area_m2 too-small m2', () => lengthOnArea_m(-1, 1)],
    ['distance_m not-positive m', () => lengthOnArea_m(1, 0)],
    ['distance_m not-positive m', () => cost_minor_per_m(1, 0)],
    ['beds too-small', () => plotAreas({ ...plot, beds: -1 })],
    ['bedWidth_m not-positive m', () => plotAreas({ ...plot, bedWidth_m: 0 })],
    ['bedLength_m not-positive m', () => plotAreas({ ...plot, bedLength_m: 0 })],
    ['access_m2 too-small m2', () => plotAreas({ ...plot, access_m2: -1 })],
    ['purchase_minor too-small', () => straightLine_minor_per_year({ ...asset, purchase_minor: -1 })],
    ['salvage_minor too-large', () => straightLine_minor_per_year({ ...asset, salvage_minor: 101 })],
    ['life_years not-positive years', () => straightLine_minor_per_year({ ...asset, life_years: 0 })],
    ['after_years too-small years', () => bookValue_minor(asset, -1)],
    ['until too-early', () => partYear(asset, '2025-02-02' as IsoDate, '2025-02-01' as IsoDate)],
    ['listPrice_minor too-small', () => salvageOfList_minor(-1, 0.5)],
    ['remainingShare too-large', () => salvageOfList_minor(1, 1.5)],
    ['marketValue_minor too-small', () => buildingCost({ ...building, marketValue_minor: -1 })],
    ['salvageShare too-large', () => buildingCost({ ...building, salvageShare: 1.1 })],
    ['remainingLife_years not-positive years', () => buildingCost({ ...building, remainingLife_years: 0 })],
    ['interest_share_per_year too-large', () => buildingCost({ ...building, interest_share_per_year: 1.1 })],
    ['purchase_minor too-small', () => averageInvestment(-1, 0, 0.1)],
    ['interest_share_per_year too-large', () => averageInvestment(1, 0, 1.1)],
    ['newPrice_minor too-small', () => usedMachine(-1, 5)],
    ['newLife_years not-positive years', () => usedMachine(1, 0)],
    ['amount too-small', () => yearlyShare_minor(-1, 1, 1)],
    ['interval_years not-positive years', () => yearlyShare_minor(1, 1, 0)],
    ['power_W too-small W', () => runningCost({ ...running, power_W: -1 })],
    ['run_h_per_day too-large h', () => runningCost({ ...running, run_h_per_day: 25 })],
    ['days too-small days', () => runningCost({ ...running, days: -1 })],
    ['power_W too-small W', () => energyCost_minor(-1, 1, 1)],
    ['run_h too-small h', () => energyCost_minor(1, -1, 1)],
    ['lime.quantity too-small', () => lineTotal_minor({ item: 'lime', quantity: -1, price_minor_per_unit: 1 })],
    [
      'every_days not-positive days',
      () => lineHours_h([{ month: 6, every_days: 0, run_min: 1 }], '2026-06-01' as IsoDate, '2026-06-02' as IsoDate),
    ],
    ['cost_minor too-small', () => averageInterest_minor({ ...interest, cost_minor: -1 })],
    ['interest_share_per_year too-large', () => averageInterest_minor({ ...interest, interest_share_per_year: 1.1 })],
    ['months too-large months', () => averageInterest_minor({ ...interest, months: 25 })],
    ['outstandingShare too-large', () => averageInterest_minor({ ...interest, outstandingShare: 1.1 })],
    ['interest_share_per_year too-small', () => monthlyInterest_minor([1], -0.1)],
    ['cashCost_minor.1 too-small', () => monthlyInterest_minor([1, -1], 0.1)],
    ['harvested_kg too-small kg', () => packOut({ ...packing, harvested_kg: -1 })],
    ['cullShare too-large', () => packOut({ ...packing, cullShare: 1.1 })],
    ['unsoldShare too-large', () => packOut({ ...packing, unsoldShare: 1.1 })],
    ['people not-positive', () => perPersonHour(1, 0, 1)],
    ['hours_h not-positive h', () => perPersonHour(1, 1, 0)],
    ['yield_kg_per_m2 too-small kg/m2', () => yieldOnRow_kg(-1, 1, 1)],
    ['rowSpacing_m not-positive m', () => yieldOnRow_kg(1, 0, 1)],
    ['packageAmount not-positive', () => packagesOf(1, 0)],
    ['packages too-small', () => packedWeight_kg(-1, 1)],
    ['net_kg too-small kg', () => packedWeight_kg(1, -1)],
    ['yieldShare too-large', () => relativeHarvest_kg(1, 11, 0)],
    ['years not-whole', () => keepUntil('2026-01-01' as IsoDate, 1.5)],
    ['years too-small', () => exemptionFigures([], 1)],
    ['limit_minor too-small', () => exemptionFigures([{ qualified_minor: 1, others_minor: 1 }], -1)],
    ['bedArea_m2 not-positive m2', () => marginRates({ ...stand, bedArea_m2: 0 })],
    ['beds not-positive', () => marginRates({ ...stand, beds: 0 })],
    ['occupied_days not-positive days', () => marginRates({ ...stand, occupied_days: 0 })],
    ['labour_h not-positive h', () => returnToLabour({ ...labour, labour_h: 0 })],
    ['amount.sd too-small', () => productSpread({ mean: 1, sd: -1 }, { mean: 1, sd: 1 })],
    ['price.sd too-small', () => productSpread({ mean: 1, sd: 1 }, { mean: 1, sd: -1 })],
    ['typical too-large', () => triangleSpread(1, 4, 3)],
    ['bushel_L too-small L', () => dryMeasuresOf_L(-1)],
    ['amount not-a-number', () => netWeight_kg(Number.NaN, 1, 'kg')],
    ['unit no-weight', () => netWeight_kg(1, null, 'stem')],
    ['weights empty', () => weighedUnit([])],
    ['weights.1 too-small kg', () => weighedUnit([1, -1])],
    ['plan.area_m2 too-small m2', () => revenueVariance({ ...result, area_m2: -1 }, result)],
    ['actual.yield_kg_per_m2 too-small kg/m2', () => revenueVariance(result, { ...result, yield_kg_per_m2: -1 })],
    ['actual.price_minor_per_kg too-small', () => revenueVariance(result, { ...result, price_minor_per_kg: -1 })],
    ['harvested too-small', () => yieldPer_m2(-1, 1)],
  ])('%s', (said, call) => {
    expect(refusal(call)).toBe(said);
  });
});

test('the ends of what makes sense are taken', () => {
  for (const call of [
    () => shareByArea(100, [{ share: 1, area_m2: 0 }]),
    () => breakEvenYield({ ...breakEven, sellingShare: 1 }),
    () => capitalRecoveryFactor(1, 5),
    () => bookValue_minor(asset, 0),
    () => averageInterest_minor({ ...interest, months: 24, outstandingShare: 1 }),
    () => packOut({ harvested_kg: 0, cullShare: 1, unsoldShare: 1 }),
    () => plotAreas({ ...plot, beds: 0 }),
    () => chanceOfCover({ ...chance, correlation: -1 }),
    () => triangleSpread(2, 2, 2),
    () => breakEvenBeds(0, 1),
  ])
    expect(refusal(call)).toBe('taken');
});
