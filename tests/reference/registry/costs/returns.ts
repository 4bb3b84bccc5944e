import { allocate_minor, labourCost_minor, shareByArea } from '../../../../planner/costs/allocate.ts';
import { cost_minor_per_m, cost_minor_per_m2, lengthOnArea_m, plotAreas } from '../../../../planner/costs/denominators.ts';
import {
  grossMargin_minor,
  marginRates,
  partialBudget_minor,
  rangingTable_minor,
  returnToLabour,
} from '../../../../planner/costs/returns.ts';
import { productSpread } from '../../../../planner/costs/uncertainty.ts';
import { revenueVariance, type StandResult } from '../../../../planner/costs/variance.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { forEach } from '../../for-each.ts';
import type { Registry } from '../../registry.ts';
import { minor, usd } from './case-money.ts';

const m2 = (value: number, unit: 'acre' | 'ft2'): number => convert(value, unit, 'm2');
const m = (value: number, unit: 'ft' | 'in'): number => convert(value, unit, 'm');
const perAcre = (minorPerM2: number): number => usd(minorPerM2 * m2(1, 'acre'));

type CaseStand = { area_m2: number; yield_kgPerM2: number; price_usdPerKg: number };
const stand = (of: CaseStand): StandResult => ({
  area_m2: of.area_m2,
  yield_kg_per_m2: of.yield_kgPerM2,
  price_minor_per_kg: minor(of.price_usdPerKg),
});

export const returns: Registry = {
  'costs.per-area-denominators': forEach((of: { cost_usdPerAcre: number; bedCentreToCentre_ft: number }) => {
    const perM2 = cost_minor_per_m2(minor(of.cost_usdPerAcre), m2(1, 'acre'));
    const apart = m(of.bedCentreToCentre_ft, 'ft');
    return {
      cost_usdPerFt2: usd(perM2 * m2(1, 'ft2')),
      cost_usdPerM2: usd(perM2),
      bedFeet_perAcre: convert(lengthOnArea_m(m2(1, 'acre'), apart), 'm', 'ft'),
      cost_usdPerBedFoot: usd(cost_minor_per_m(perM2, apart) * m(1, 'ft')),
      cost_usdPer100BedFeet: usd(cost_minor_per_m(perM2, apart) * m(100, 'ft')),
    };
  }),
  'costs.row-feet-per-acre': forEach((of: { rowSpacing_in: number }) => ({
    rowFeet_perAcre: convert(lengthOnArea_m(m2(1, 'acre'), m(of.rowSpacing_in, 'in')), 'm', 'ft'),
  })),
  'costs.return-to-labour-tomato': forEach(
    (of: { gross_usd: number; totalCost_usd: number; labour_usd: number; labour_h: number }) => {
      const found = returnToLabour({
        gross_minor: minor(of.gross_usd),
        total_minor: minor(of.totalCost_usd),
        labour_minor: minor(of.labour_usd),
        managementFee_minor: 0,
        labour_h: of.labour_h,
      });
      return { returnToLabourAndManagement_usd: usd(found.return_minor), perHour_usd: usd(found.return_minor_per_h) };
    },
  ),
  'costs.return-to-labour-corn': forEach(
    (of: {
      gross_usd: number;
      totalCost_usd: number;
      operatorLabour_usd: number;
      managementFee_usd: number;
      operator_h: number;
    }) => {
      const found = returnToLabour({
        gross_minor: minor(of.gross_usd),
        total_minor: minor(of.totalCost_usd),
        labour_minor: minor(of.operatorLabour_usd),
        managementFee_minor: minor(of.managementFee_usd),
        labour_h: of.operator_h,
      });
      return {
        returnToOperatorLabourAndManagement_usd: usd(found.return_minor),
        perOperatorHour_usd: usd(found.return_minor_per_h),
      };
    },
  ),
  'costs.gross-margin-per-bed-week': forEach(
    (of: { gross_usd: number; variable_usd: number; bedArea_m2: number; occupied_days: number; beds: number }) => {
      const found = marginRates({
        gross_minor: minor(of.gross_usd),
        variable_minor: minor(of.variable_usd),
        bedArea_m2: of.bedArea_m2,
        occupied_days: of.occupied_days,
        beds: of.beds,
      });
      return {
        grossMargin_usd: usd(grossMargin_minor(minor(of.gross_usd), minor(of.variable_usd))),
        marginShareOfGross: found.marginShare,
        perBedWeek_usd: usd(found.margin_minor_per_bed_week),
        perM2Day_usd: usd(found.margin_minor_per_m2_day),
      };
    },
  ),
  'costs.ranging-tomato': forEach(
    (of: {
      price_usdPerCase: readonly number[] | number;
      yield_cases: readonly number[] | number;
      costNotFollowingYield_usd: number;
      costFollowingYield_usdPerCase: number;
    }) => ({
      netReturn_usd_rowsByYield: rangingTable_minor({
        yields: [of.yield_cases].flat(),
        prices_minor_per_unit: [of.price_usdPerCase].flat().map(minor),
        fixed_minor: minor(of.costNotFollowingYield_usd),
        following_minor_per_unit: minor(of.costFollowingYield_usdPerCase),
      }).map((row) => row.map(usd)),
    }),
    ['price_usdPerCase', 'yield_cases'],
  ),
  'costs.partial-budget': forEach(
    (of: { addedReturns_usd: number; reducedCosts_usd: number; reducedReturns_usd: number; addedCosts_usd: number }) => ({
      change_usd: usd(
        partialBudget_minor({
          addedReturns_minor: minor(of.addedReturns_usd),
          reducedCosts_minor: minor(of.reducedCosts_usd),
          reducedReturns_minor: minor(of.reducedReturns_usd),
          addedCosts_minor: minor(of.addedCosts_usd),
        }),
      ),
    }),
  ),
  'costs.plan-actual-variance': forEach((of: { plan: CaseStand; actual: CaseStand }) => {
    const found = revenueVariance(stand(of.plan), stand(of.actual));
    return {
      planRevenue_usd: usd(found.plan_minor),
      actualRevenue_usd: usd(found.actual_minor),
      areaPart_usd: usd(found.area_minor),
      yieldPart_usd: usd(found.yield_minor),
      pricePart_usd: usd(found.price_minor),
      sumOfParts_usd: usd(found.sum_minor),
    };
  }),
  'costs.alloc-msu-squash': forEach(
    (of: { totalLabour_usd: number; share: Readonly<Record<string, number>>; area_acre: Readonly<Record<string, number>> }) => {
      const names = Object.keys(of.share);
      const parts = names.map((name) => ({ share: of.share[name] ?? 0, area_m2: m2(of.area_acre[name] ?? 0, 'acre') }));
      const found = shareByArea(minor(of.totalLabour_usd), parts);
      const [whole] = shareByArea(minor(of.totalLabour_usd), [
        { share: 1, area_m2: parts.reduce((sum, part) => sum + part.area_m2, 0) },
      ]);
      return {
        ...Object.fromEntries(names.map((name, at) => [`${name}_usd`, usd(found[at]?.amount_minor ?? Number.NaN)])),
        ...Object.fromEntries(
          names.map((name, at) => [`${name}_usdPerAcre`, perAcre(found[at]?.amount_minor_per_m2 ?? Number.NaN)]),
        ),
        whole_usdPerAcre: perAcre(whole?.amount_minor_per_m2 ?? Number.NaN),
      };
    },
  ),
  'costs.alloc-usu-labour': forEach(
    (of: {
      labour_h: number;
      wage_usdPerHour: number;
      farm_acre: number;
      landRent_usdPerAcre: number;
      irrigationFee_usd: number;
      seedlingWater_usd: number;
    }) => {
      const farm_m2 = m2(of.farm_acre, 'acre');
      const labour = labourCost_minor(of.labour_h, minor(of.wage_usdPerHour));
      const rentPerM2 = cost_minor_per_m2(minor(of.landRent_usdPerAcre), m2(1, 'acre'));
      return {
        labour_usd: usd(labour),
        labour_usdPerAcre: perAcre(cost_minor_per_m2(labour, farm_m2)),
        landRent_usd: usd(rentPerM2 * farm_m2),
        water_usdPerAcre: perAcre(cost_minor_per_m2(minor(of.irrigationFee_usd) + minor(of.seedlingWater_usd), farm_m2)),
      };
    },
  ),
  'costs.alloc-overhead-area': forEach(
    (of: { overhead_cents: number; weights: Readonly<Record<string, readonly number[]>> | readonly number[] }) => {
      const weights = Array.isArray(of.weights)
        ? (of.weights as readonly number[])
        : (Object.values(of.weights as Readonly<Record<string, readonly number[]>>)[0] ?? []);
      const { parts_minor, unallocated_minor } = allocate_minor(of.overhead_cents, weights);
      return {
        share_cents: parts_minor,
        sum_cents: parts_minor.reduce((sum, part) => sum + part, 0),
        unallocated_cents: unallocated_minor,
      };
    },
    ['weights'],
  ),
  'costs.alloc-three-way': forEach(
    (of: { overhead_cents: number; weights: readonly number[] }) => ({
      share_cents: allocate_minor(of.overhead_cents, of.weights).parts_minor,
    }),
    ['weights'],
  ),
  'costs.alloc-zero-weight': forEach(
    (of: { overhead_cents: number; weights: readonly number[] }) => {
      const found = allocate_minor(of.overhead_cents, of.weights);
      return { share_cents: found.parts_minor, unallocated_cents: found.unallocated_minor };
    },
    ['weights'],
  ),
  'costs.unce-beds-area': forEach((of: { beds: number; bedWidth_ft: number; bedLength_ft: number; access_ft2: number }) => {
    const found = plotAreas({
      beds: of.beds,
      bedWidth_m: m(of.bedWidth_ft, 'ft'),
      bedLength_m: m(of.bedLength_ft, 'ft'),
      access_m2: m2(of.access_ft2, 'ft2'),
    });
    return {
      cultivated_ft2: convert(found.cultivated_m2, 'm2', 'ft2'),
      total_ft2: convert(found.total_m2, 'm2', 'ft2'),
      acres: convert(found.total_m2, 'm2', 'acre'),
      cultivatedShare: found.cultivatedShare,
    };
  }),
  'costs.revenue-uncertainty': forEach(
    (of: { yieldMean_lb: number; yieldSd_lb: number; priceMean_usdPerLb: number; priceSd_usdPerLb: number }) => {
      const found = productSpread(
        { mean: of.yieldMean_lb, sd: of.yieldSd_lb },
        { mean: minor(of.priceMean_usdPerLb), sd: minor(of.priceSd_usdPerLb) },
      );
      return { mean_usd: usd(found.mean), sd_usd: usd(found.sd) };
    },
  ),
};
