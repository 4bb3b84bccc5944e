import type { FarmDb } from '../../db/file/open-farm.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import { materialFacts, offersInForce } from '../../db/repositories/stock.ts';
import { suppliersOfFarm } from '../../db/repositories/suppliers.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { LeastCost } from '../../planner/orders/least-cost.ts';
import type { PurchaseProblem } from '../../planner/orders/purchase-problem.ts';
import { tradeUnit } from '../../planner/units/trade-unit.ts';
import { problemOfSeason } from '../orders/problem-of-season.ts';
import { saysUnpriced, unpricedOfSeason } from '../orders/unpriced-of-season.ts';
import type { ReportReader } from './report-reader.ts';
import type { Cell, ReportSection } from './section.ts';

/** What the list is searched from, with the names of its parts: plain data for the worker. */
export type Shopping = {
  /** What of it has no price that anyone knows, as a sentence; empty where all has one. */
  readonly unpriced: string;
  readonly problem: PurchaseProblem;
  readonly offers: Readonly<Record<string, { readonly supplier: string; readonly material: string; readonly name: string }>>;
  readonly needs: readonly {
    readonly material: string;
    readonly amount: number;
    readonly unit: string;
    readonly reason: string;
    readonly wanted: IsoDate | null;
  }[];
};

export function shoppingOf(db: FarmDb, season: SeasonRecord, today: IsoDate): Shopping {
  const { problem, needs } = problemOfSeason(db, season.id, today, { mostSuppliers: null, inTime: false });
  const materials = materialFacts(db);
  const suppliers = new Map(suppliersOfFarm(db).map((each) => [each.id, each.name]));
  return {
    unpriced: saysUnpriced(unpricedOfSeason(db, season.id, today)),
    problem,
    offers: Object.fromEntries(
      offersInForce(db).map(({ offer }) => [
        offer.id,
        {
          supplier: suppliers.get(offer.supplierId) ?? '',
          material: materials.get(offer.materialId)?.name ?? '',
          name: offer.name,
        },
      ]),
    ),
    needs: needs.map((need) => ({
      material: materials.get(need.materialId)?.name ?? need.materialId,
      amount: need.amount,
      unit: materials.get(need.materialId)?.baseUnit ?? '',
      reason: need.reason,
      wanted: need.wanted,
    })),
  };
}

/** What must be bought or dug, why, and where it is cheapest. */
export function shoppingSection(
  { needs, offers, unpriced }: Shopping,
  { plan, saving_minor }: LeastCost,
  { money, number }: ReportReader,
): ReportSection {
  const lines = plan.state === 'found' ? plan.bill.suppliers.flatMap((each) => each.lines) : [];
  const rows = lines
    .map((line): readonly Cell[] => {
      const offer = offers[line.offerId];
      return [offer?.supplier ?? '', offer?.material ?? '', offer?.name ?? '', line.packages, line.price_minor, line.total_minor];
    })
    .sort((a, b) => String(a[0]).localeCompare(String(b[0])) || String(a[1]).localeCompare(String(b[1])));
  const bySupplier = Map.groupBy(rows, (row) => String(row[0]));
  const says =
    plan.state === 'found'
      ? [
          `${needs.length} needs; the list comes to ${money(plan.bill.total_minor)} with delivery, within ${number(plan.gapShare, 'share', 2)} % of the least possible.`,
          ...(saving_minor !== null && saving_minor > 0
            ? [`The cheapest basket of one supplier costs ${money(saving_minor)} more.`]
            : []),
        ]
      : [`${needs.length} needs, but no list could be found that serves them with the offers in force.`];
  return {
    title: 'What to buy or dig',
    says: unpriced === '' ? says : [...says, unpriced],
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
          { head: 'Amount', unit: '', name: 'amount' },
          { head: 'Unit', unit: null, name: 'unit', onlyInFile: true },
          { head: 'Reason', unit: null, name: 'reason' },
          { head: 'Wanted', unit: null, name: 'wanted' },
        ],
        rows: needs.map((need) => [
          need.material,
          { amount: need.amount, unit: tradeUnit(need.unit) },
          need.unit,
          need.reason,
          need.wanted,
        ]),
      },
    ],
    cautions: [],
    sources: ['prices as entered; mixed-integer programme solved by HiGHS'],
  };
}
