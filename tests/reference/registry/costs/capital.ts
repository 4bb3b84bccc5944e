import type { IsoDate } from '../../../../planner/calendar.ts';
import {
  capitalRecovery_minor_per_year,
  capitalRecoveryFactor,
  loanPayment_minor_per_year,
  realRate_share_per_year,
  realRateBySubtraction_share_per_year,
  yearlyCharges,
} from '../../../../planner/costs/capital-recovery.ts';
import {
  type Asset,
  averageInvestment,
  bookValues_minor,
  buildingCost,
  partYear,
  salvageOfList_minor,
  straightLine_minor_per_year,
  totalDepreciation_minor,
  usedMachine,
  yearlyShare_minor,
} from '../../../../planner/costs/depreciation.ts';
import { averageInterest_minor, monthlyInterest_minor } from '../../../../planner/costs/operating-interest.ts';
import { yearlyCostOfParts_minor } from '../../../../planner/costs/yearly-cost.ts';
import { forEach } from '../../for-each.ts';
import type { Registry } from '../../registry.ts';
import { minor, usd, usdAll } from './case-money.ts';

type Bought = { purchase_usd: number; salvage_usd: number; life_years: number };
type AtRate = Bought & { interestRate_perYear: number };

const asset = (of: Bought): Asset => ({
  purchase_minor: minor(of.purchase_usd),
  salvage_minor: minor(of.salvage_usd),
  life_years: of.life_years,
});

export const capital: Registry = {
  'costs.crf-table-3p5pct': forEach(
    (of: { interestRate_perYear: number; lives_years: readonly number[] | number }) => ({
      factor: Array.isArray(of.lives_years)
        ? of.lives_years.map((life: number) => capitalRecoveryFactor(of.interestRate_perYear, life))
        : capitalRecoveryFactor(of.interestRate_perYear, of.lives_years as number),
    }),
    ['lives_years'],
  ),
  'costs.crf-loan-50k': forEach((of: { loan_usd: number; interestRate_perYear: number; life_years: number }) => ({
    payment_usdPerYear: usd(loanPayment_minor_per_year(minor(of.loan_usd), of.interestRate_perYear, of.life_years)),
  })),
  'costs.crf-zero-rate': forEach((of: { interestRate_perYear: number; life_years: number }) => ({
    factor: capitalRecoveryFactor(of.interestRate_perYear, of.life_years),
  })),
  'costs.cr-machine-100k': forEach((of: AtRate) => ({
    capitalRecovery_usdPerYear: usd(capitalRecovery_minor_per_year(asset(of), of.interestRate_perYear)),
  })),
  'costs.cr-yearly-identity': forEach((of: AtRate) => {
    const found = yearlyCharges(asset(of), of.interestRate_perYear);
    return {
      yearlyCharge_usd: usdAll(found.charges_minor),
      presentValue_usd: usd(found.presentValue_minor),
      levelled_usdPerYear: usd(found.levelled_minor_per_year),
    };
  }),
  'costs.isu-tractor-old': forEach(
    (of: {
      listPrice_usd: number;
      remainingValue_fractionOfList: number;
      purchase_usd: number;
      life_years: number;
      nominalRate_perYear: number;
      inflation_perYear: number;
    }) => {
      const salvage_minor = salvageOfList_minor(minor(of.listPrice_usd), of.remainingValue_fractionOfList);
      const purchase_minor = minor(of.purchase_usd);
      const real = realRateBySubtraction_share_per_year(of.nominalRate_perYear, of.inflation_perYear);
      return {
        salvage_usd: usd(salvage_minor),
        totalDepreciation_usd: usd(totalDepreciation_minor(purchase_minor, salvage_minor)),
        realRateApprox_perYear: real,
        capitalRecovery_usdPerYear: usd(
          capitalRecovery_minor_per_year({ purchase_minor, salvage_minor, life_years: of.life_years }, real),
        ),
      };
    },
  ),
  'costs.isu-tractor-new': forEach(
    (of: { listPrice_usd: number; remainingValue_fractionOfList: number; purchase_usd: number }) => {
      const salvage_minor = salvageOfList_minor(minor(of.listPrice_usd), of.remainingValue_fractionOfList);
      return {
        salvage_usd: usd(salvage_minor),
        totalDepreciation_usd: usd(totalDepreciation_minor(minor(of.purchase_usd), salvage_minor)),
      };
    },
  ),
  'costs.also-isu-75k': forEach((of: { purchase_usd: number; remainingValue_fraction: number; life_years: number }) => {
    const purchase_minor = minor(of.purchase_usd);
    const salvage_minor = salvageOfList_minor(purchase_minor, of.remainingValue_fraction);
    return {
      salvage_usd: usd(salvage_minor),
      straightLine_usdPerYear: usd(straightLine_minor_per_year({ purchase_minor, salvage_minor, life_years: of.life_years })),
    };
  }),
  'costs.real-rate-exact': forEach((of: { nominalRate_perYear: number; inflation_perYear: number }) => ({
    realExact_perYear: realRate_share_per_year(of.nominalRate_perYear, of.inflation_perYear),
    realApprox_perYear: realRateBySubtraction_share_per_year(of.nominalRate_perYear, of.inflation_perYear),
  })),
  'costs.sl-umd-tractor': forEach((of: Bought) => ({ straightLine_usdPerYear: usd(straightLine_minor_per_year(asset(of))) })),
  'costs.sl-book-value': forEach((of: Bought) => ({ bookValueEndOfYear_usd: usdAll(bookValues_minor(asset(of))) })),
  'costs.sl-part-year': forEach((of: Bought & { builtOn_iso: string; yearEnd_iso: string }) => {
    const found = partYear(asset(of), of.builtOn_iso as IsoDate, of.yearEnd_iso as IsoDate);
    return { days: found.days, charge_usd: usd(found.charge_minor) };
  }),
  'costs.bldg-mbms': forEach(
    (of: { marketValue_usd: number; salvage_fraction: number; remainingLife_years: number; interestRate_perYear: number }) => {
      const found = buildingCost({
        marketValue_minor: minor(of.marketValue_usd),
        salvageShare: of.salvage_fraction,
        remainingLife_years: of.remainingLife_years,
        interest_share_per_year: of.interestRate_perYear,
      });
      return {
        depreciation_usdPerYear: usd(found.depreciation_minor_per_year),
        interest_usdPerYear: usd(found.interest_minor_per_year),
      };
    },
  ),
  'costs.avg-investment': forEach((of: { purchase_usd: number; salvage_usd: number; interestRate_perYear: number }) => {
    const found = averageInvestment(minor(of.purchase_usd), minor(of.salvage_usd), of.interestRate_perYear);
    return { averageInvestment_usd: usd(found.average_minor), interest_usdPerYear: usd(found.interest_minor_per_year) };
  }),
  'costs.used-machine-rule': forEach((of: { newPrice_usd: number; newLife_years: number }) => {
    const used = usedMachine(minor(of.newPrice_usd), of.newLife_years);
    return {
      usedPrice_usd: usd(used.purchase_minor),
      usedLife_years: used.life_years,
      straightLine_usdPerYear: usd(straightLine_minor_per_year(used)),
    };
  }),
  'costs.lime-every-3-years': forEach((of: { rate_tonPerAcre: number; price_usdPerTon: number; interval_years: number }) => ({
    charge_usdPerAcreYear: usd(yearlyShare_minor(of.rate_tonPerAcre, minor(of.price_usdPerTon), of.interval_years)),
  })),
  'costs.bed-parts-annual': forEach(
    (of: { parts: readonly { cost_usd: number; salvage_usd: number; life_years: number }[]; interestRate_perYear: number }) => {
      const parts = of.parts.map((part) => asset({ ...part, purchase_usd: part.cost_usd }));
      return {
        straightLine_usdPerYear: usd(yearlyCostOfParts_minor(parts, 'straight-line', of.interestRate_perYear)),
        capitalRecovery_usdPerYear: usd(yearlyCostOfParts_minor(parts, 'capital-recovery', of.interestRate_perYear)),
      };
    },
    ['parts'],
  ),
  'costs.opint-half': forEach(
    (of: { operatingCost_usd: number; interestRate_perYear: number; months: number; averageShareOutstanding: number }) => ({
      interest_usd: usd(
        averageInterest_minor({
          cost_minor: minor(of.operatingCost_usd),
          interest_share_per_year: of.interestRate_perYear,
          months: of.months,
          outstandingShare: of.averageShareOutstanding,
        }),
      ),
    }),
  ),
  'costs.opint-monthly': forEach(
    (of: { cashCost_usd_byMonth: readonly number[]; interestRate_perYear: number }) => {
      const found = monthlyInterest_minor(of.cashCost_usd_byMonth.map(minor), of.interestRate_perYear);
      return { interest_usd: usd(found.interest_minor), cumulativeAtSale_usd: usd(found.cumulative_minor) };
    },
    ['cashCost_usd_byMonth'],
  ),
};
