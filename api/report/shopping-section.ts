import type { FarmDb } from '../../db/file/open-farm.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import { materialFacts, offersInForce } from '../../db/repositories/stock.ts';
import { suppliersOfFarm } from '../../db/repositories/suppliers.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { MilpSolver } from '../../planner/milp.ts';
import { leastCost } from '../../planner/orders/least-cost.ts';
import { printMoney } from '../../planner/units/print-money.ts';
import { problemOfSeason } from '../orders/problem-of-season.ts';
import type { Cell, ReportSection } from './section.ts';

/** The search for the cheapest list ends here at the latest; the best list so far is then shown with its gap. */
const SEARCH_LIMIT_MS = 4000;

/** What must be bought or dug, why, and where it is cheapest. */
export function shoppingSection(
  db: FarmDb,
  season: SeasonRecord,
  today: IsoDate,
  currency: string,
  solve: MilpSolver,
): ReportSection {
  const { problem, needs } = problemOfSeason(db, season.id, today, { mostSuppliers: null, inTime: false });
  const until = performance.now() + SEARCH_LIMIT_MS;
  const best = leastCost(problem, solve, { shouldStop: () => performance.now() > until });
  const materials = materialFacts(db);
  const offers = new Map(offersInForce(db).map(({ offer }) => [offer.id, offer]));
  const suppliers = new Map(suppliersOfFarm(db).map((each) => [each.id, each.name]));
  const plan = best.plan;
  const lines = plan.state === 'found' ? plan.bill.suppliers.flatMap((each) => each.lines) : [];
  const rows = lines
    .map((line): readonly Cell[] => {
      const offer = offers.get(line.offerId);
      const material = offer === undefined ? undefined : materials.get(offer.materialId);
      return [
        suppliers.get(offer?.supplierId ?? '') ?? '',
        material?.name ?? '',
        offer?.name ?? '',
        line.packages,
        line.price_minor,
        line.total_minor,
      ];
    })
    .sort((a, b) => String(a[0]).localeCompare(String(b[0])) || String(a[1]).localeCompare(String(b[1])));
  const bySupplier = Map.groupBy(rows, (row) => String(row[0]));
  const says =
    plan.state === 'found'
      ? [
          `${needs.length} needs; the list comes to ${printMoney(plan.bill.total_minor, currency)} with delivery, within ${(plan.gapShare * 100).toFixed(1)} % of the least possible.`,
          ...(best.saving_minor !== null && best.saving_minor > 0
            ? [`The cheapest basket of one supplier costs ${printMoney(best.saving_minor, currency)} more.`]
            : []),
        ]
      : [`${needs.length} needs, but no list could be found that serves them with the offers in force.`];
  return {
    title: 'What to buy or dig',
    says,
    charts:
      rows.length === 0
        ? []
        : [
            {
              title: 'Goods by supplier',
              unit: 'minor',
              bars: [...bySupplier].map(([label, own]) => ({
                label,
                parts: [{ name: 'Goods', value: own.reduce((sum, row) => sum + Number(row[5] ?? 0), 0) }],
              })),
            },
          ],
    tables: [
      {
        name: 'shopping-list',
        title: 'Shopping list',
        columns: [
          { head: 'Supplier', unit: null, name: 'supplier' },
          { head: 'Material', unit: null, name: 'material' },
          { head: 'Package', unit: null, name: 'package' },
          { head: 'Packages', unit: '', name: 'packages' },
          { head: 'Price', unit: 'minor', name: 'price_minor' },
          { head: 'Together', unit: 'minor', name: 'cost_minor' },
        ],
        rows,
      },
      {
        name: 'needs',
        title: 'Why each is needed',
        columns: [
          { head: 'Material', unit: null, name: 'material' },
          { head: 'Amount', unit: 'count', name: 'amount' },
          { head: 'Unit', unit: null, name: 'unit' },
          { head: 'Reason', unit: null, name: 'reason' },
          { head: 'Wanted', unit: null, name: 'wanted' },
        ],
        rows: needs.map((need) => [
          materials.get(need.materialId)?.name ?? need.materialId,
          need.amount,
          materials.get(need.materialId)?.baseUnit ?? '',
          need.reason,
          need.wanted,
        ]),
      },
    ],
    cautions: [],
    sources: ['prices as entered; mixed-integer programme solved by HiGHS'],
  };
}
