import {
  type BreakEven,
  breakEvenPrice_minor,
  breakEvenYield,
  labourShare,
  stayingCost_minor,
} from '../../../../planner/costs/break-even.ts';
import { type BudgetLine, budgetTotals } from '../../../../planner/costs/enterprise-budget.ts';
import { packedWeight_kg, perPersonHour } from '../../../../planner/costs/pack-out.ts';
import { forEach } from '../../for-each.ts';
import type { Answer, Registry } from '../../registry.ts';
import { minor, usd } from './case-money.ts';

type CaseLine = { item: string; price_usd: number; quantity: number; printed_usd?: number };
type CaseBudget = {
  lines: readonly CaseLine[];
  receipts?: readonly CaseLine[];
  interestOnOperatingCapital_usd?: number;
  fixedLines: readonly { item: string; printed_usd: number }[];
  managementFee?: { rate: number; excludedFromBase_usd: number };
};

const line = (of: CaseLine): BudgetLine => ({
  item: of.item,
  quantity: of.quantity,
  price_minor_per_unit: minor(of.price_usd),
  ...(of.printed_usd === undefined ? {} : { printed_minor: minor(of.printed_usd) }),
});

const budget: Answer = (of: CaseBudget) => {
  const found = budgetTotals({
    receipts: (of.receipts ?? []).map(line),
    variable: of.lines.map(line),
    operatingInterest_minor: minor(of.interestOnOperatingCapital_usd ?? 0),
    fixed: of.fixedLines.map((each) => ({ item: each.item, printed_minor: minor(each.printed_usd) })),
    ...(of.managementFee === undefined
      ? {}
      : { managementFee: { share: of.managementFee.rate, leftOut_minor: minor(of.managementFee.excludedFromBase_usd) } }),
  });
  return {
    gross_usd: usd(found.gross_minor),
    subtotalFromPrintedLines_usd: usd(found.subtotal_minor),
    subtotalFromProducts_usd: usd(found.subtotalOfProducts_minor),
    totalVariable_usd: usd(found.variable_minor),
    totalFixed_usd: usd(found.fixed_minor),
    totalFixedAndVariable_usd: usd(found.fixedAndVariable_minor),
    managementFee_usd: usd(found.managementFee_minor),
    totalCost_usd: usd(found.total_minor),
    returnAboveVariable_usd: usd(found.overVariable_minor),
    netReturn_usd: usd(found.net_minor),
  };
};

const amountOf = (found: BreakEven): number | null => (found.state === 'found' ? found.amount : null);
const priceOver = (cost_usd: number, sold: number): number => usd(breakEvenPrice_minor(minor(cost_usd), sold));
const yieldFor = (cost_usd: number, price_usd: number, following_usd = 0): number | null =>
  amountOf(
    breakEvenYield({
      fixed_minor: minor(cost_usd),
      price_minor_per_unit: minor(price_usd),
      following_minor_per_unit: minor(following_usd),
      sellingShare: 0,
    }),
  );

type CaseEven = { price_usdPerCase: number; totalCost_usd: number; totalVariable_usd: number; yield_cases: number };

const evenOfCases = (of: CaseEven) => ({
  breakEvenPriceTotal_usdPerCase: priceOver(of.totalCost_usd, of.yield_cases),
  breakEvenPriceVariable_usdPerCase: priceOver(of.totalVariable_usd, of.yield_cases),
  breakEvenYield_cases: yieldFor(of.totalCost_usd, of.price_usdPerCase),
});

export const budgets: Registry = {
  'costs.bud-sweetcorn-icm': budget,
  'costs.bud-leaf-lettuce-org': budget,
  'costs.bud-bell-pepper-org': budget,
  'costs.bud-tomato-org': budget,
  'costs.be-tomato': forEach(
    (of: { totalCost_usd: number; yield_cases: number; price_usdPerCase: number; costThatFollowsYield_usdPerCase: number }) => {
      const following = of.costThatFollowsYield_usdPerCase;
      const staying = usd(stayingCost_minor(minor(of.totalCost_usd), minor(following), of.yield_cases));
      return {
        breakEvenPrice_usdPerCase: priceOver(of.totalCost_usd, of.yield_cases),
        breakEvenYieldAllFixed_cases: yieldFor(of.totalCost_usd, of.price_usdPerCase),
        breakEvenYieldSplit_cases: yieldFor(staying, of.price_usdPerCase, following),
      };
    },
  ),
  'costs.be-squash': forEach(evenOfCases),
  'costs.also-be-potato': forEach((of: CaseEven & { labour_h?: number; lbPerCase?: number }) => ({
    ...evenOfCases(of),
    ...(of.labour_h === undefined || of.lbPerCase === undefined
      ? {}
      : { labour_lbPerHour: perPersonHour(packedWeight_kg(of.yield_cases, of.lbPerCase), 1, of.labour_h) }),
  })),
  'costs.also-be-apple': forEach((of: { totalCost_usd: number; totalVariable_usd: number; yield_lb: number }) => ({
    breakEvenPriceTotal_usdPerLb: priceOver(of.totalCost_usd, of.yield_lb),
    breakEvenPriceVariable_usdPerLb: priceOver(of.totalVariable_usd, of.yield_lb),
  })),
  'costs.be-sweetcorn': forEach(
    (of: { totalVariable_usd: number; totalFixedAndVariable_usd: number; totalCost_usd: number; yield_crates: number }) => ({
      overVariable_usdPerCrate: priceOver(of.totalVariable_usd, of.yield_crates),
      overFixedAndVariable_usdPerCrate: priceOver(of.totalFixedAndVariable_usd, of.yield_crates),
      overTotal_usdPerCrate: priceOver(of.totalCost_usd, of.yield_crates),
    }),
  ),
  'costs.cost-per-crate-lettuce': forEach(
    (of: { totalCost_usd: number; crates: number; labour_usd: readonly number[] | number }) => {
      const labour = labourShare([of.labour_usd].flat().map(minor), minor(of.totalCost_usd));
      return {
        cost_usdPerCrate: priceOver(of.totalCost_usd, of.crates),
        labour_usd: usd(labour.labour_minor),
        labourShareOfTotal: labour.share,
      };
    },
    ['labour_usd'],
  ),
  'costs.cost-per-box-pepper': forEach((of: { totalCost_usd: number; boxes: number }) => ({
    cost_usdPerBox: priceOver(of.totalCost_usd, of.boxes),
  })),
};
