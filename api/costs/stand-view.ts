import type { FarmDb } from '../../db/file/open-farm.ts';
import { pricesPaid } from '../../db/repositories/cost-facts.ts';
import { breakEvenPrice_minor, breakEvenYield } from '../../planner/costs/break-even.ts';
import { type ChanceInput, chanceOfCover, explainChance, tornado } from '../../planner/costs/chance.ts';
import { type EarningRow, earningRows } from '../../planner/costs/earning-rows.ts';
import { rangingTable_minor } from '../../planner/costs/returns.ts';
import { priceRange, yieldRange } from '../../planner/costs/stand-figures.ts';
import { Refusal } from '../errors.ts';
import type { SeasonLedger } from './season-ledger.ts';

const DRAWS = 20_000;
const SEED = 1;

/** A crop’s costs, and what of them comes with each unit sold: packing and the wages of the harvest. */
type Costs = { readonly row: EarningRow; readonly following_minor: number };

/** What a crop must bring and must give, how likely it covers its cost, and what matters most. */
export function standView(db: FarmDb, ledger: SeasonLedger, cropId: string, correlation: number) {
  const plantings = ledger.plantings.filter((each) => each.cropId === cropId);
  const first = plantings[0];
  if (first === undefined) throw new Refusal({ code: 'not-found', what: 'crop' });
  const ids = new Set(plantings.map((each) => each.plantingId));
  const { row, following_minor } = costsOf(ledger, ids);
  const sum = (of: (each: (typeof plantings)[number]) => number | null): number | null => {
    const known = plantings.map(of);
    return known.some((each) => each === null) ? null : known.reduce<number>((all, each) => all + (each ?? 0), 0);
  };
  const sold = plantings.reduce((all, each) => all + (ledger.soldInUnit.get(each.plantingId) ?? 0), 0);
  const typical = sum((each) => each.yieldTypical) ?? sold;
  const amount = sold > 0 ? sold : typical;
  const perUnit = amount > 0 ? following_minor / amount : 0;
  const staying = row.cost_minor - following_minor;
  const planned = first.price_minor ?? (sold > 0 ? row.income_minor / sold : 0);
  const price = priceRange(pricesPaid(db, cropId, first.yieldUnit), planned);
  const yields = yieldRange(
    { low: sum((each) => each.yieldLow), typical: sum((each) => each.yieldTypical), high: sum((each) => each.yieldHigh) },
    sold,
  );
  const input: ChanceInput = {
    sold: yields,
    price_minor_per_unit: price,
    fixed_minor: staying,
    following_minor_per_unit: perUnit,
    correlation,
    draws: DRAWS,
    seed: SEED,
  };
  const prices = [price.low, price.typical, price.high];
  const amounts = [yields.low, yields.typical, yields.high];
  return {
    cropId,
    crop: first.crop,
    unit: first.yieldUnit,
    sold,
    cost_minor: row.cost_minor,
    income_minor: row.income_minor,
    staying_minor: staying,
    following_minor_per_unit: perUnit,
    breakEvenPrice_minor: amount > 0 ? breakEvenPrice_minor(row.cost_minor, amount) : null,
    shortRunPrice_minor: amount > 0 ? breakEvenPrice_minor(row.direct_minor, amount) : null,
    breakEvenYield: breakEvenYield({
      fixed_minor: staying,
      price_minor_per_unit: planned,
      following_minor_per_unit: perUnit,
      sellingShare: 0,
    }),
    price_minor: planned,
    chance: chanceOfCover(input),
    chanceWorking: explainChance(input, first.yieldUnit),
    tornado: tornado({
      sold: yields,
      price_minor_per_unit: price,
      fixed_minor: { low: staying * 0.9, typical: staying, high: staying * 1.1 },
      following_minor_per_unit: { low: perUnit * 0.9, typical: perUnit, high: perUnit * 1.1 },
    }),
    ranging: {
      amounts,
      prices_minor: prices,
      net_minor: rangingTable_minor({
        yields: amounts,
        prices_minor_per_unit: prices,
        fixed_minor: staying,
        following_minor_per_unit: perUnit,
      }),
    },
  };
}

function costsOf(ledger: SeasonLedger, ids: ReadonlySet<string>): Costs {
  const postings = ledger.postings.filter((posting) => posting.plantingId !== null && ids.has(posting.plantingId));
  const [row] = earningRows(
    postings,
    ledger.incomes.filter((income) => income.plantingId !== null && ids.has(income.plantingId)),
    { of: () => 'crop' },
  );
  if (row === undefined)
    throw new Refusal({ code: 'not-found', what: 'crop' }, 'This crop has no costs and no sales in the season yet.');
  const packing = postings.reduce((sum, posting) => sum + (posting.kind === 'packing' ? posting.amount_minor : 0), 0);
  const harvesting = [...ids].reduce((sum, id) => sum + (ledger.harvestWages.get(id) ?? 0), 0);
  return { row, following_minor: Math.min(row.cost_minor, packing + harvesting) };
}
