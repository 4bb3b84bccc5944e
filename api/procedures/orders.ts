import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { stockBalances } from '../../db/repositories/bed-history.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { seasonOfId } from '../../db/repositories/seasons.ts';
import {
  addMoves,
  addPurchase,
  addReceived,
  addReturned,
  budgetsOfSeason,
  callOffRest,
  dropCharges,
  markBought,
  materialFacts,
  needChoices,
  offersInForce,
  purchaseLines,
  purchaseOfId,
  putBudget,
  putNeedChoice,
  removeNeed,
  replaceShoppingList,
  setReceived,
  setShoppingPackages,
  standIns,
  tickShoppingLine,
} from '../../db/repositories/stock.ts';
import { suppliersOfFarm } from '../../db/repositories/suppliers.ts';
import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { refuse } from '../../planner/errors.ts';
import { orderBy } from '../../planner/orders/needs.ts';
import { landedCost, type ReceiptLine, sentBack } from '../../planner/orders/receipt.ts';
import { seasonBudget } from '../../planner/orders/season-budget.ts';
import { Refusal } from '../errors.ts';
import { categoryOf } from '../orders/category-of.ts';
import { explainLine } from '../orders/explain-line.ts';
import { goodsToCome } from '../orders/goods-to-come.ts';
import { slowestLeads } from '../orders/leads.ts';
import { listReasons } from '../orders/list-reasons.ts';
import { needsOfSeason } from '../orders/needs-of-season.ts';
import { packageCautions } from '../orders/package-cautions.ts';
import { problemOfSeason } from '../orders/problem-of-season.ts';
import { receivedLots } from '../orders/received-lots.ts';
import { billOfRows, shoppingView } from '../orders/shopping-view.ts';
import { spendingOfFarm } from '../orders/spending-of-farm.ts';
import { unpricedOfSeason } from '../orders/unpriced-of-season.ts';
import { wantedDays } from '../orders/wanted-days.ts';
import { change, job, read } from '../procedure.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-03-09.');
const inSeason = z.object({ seasonId: z.string().min(1) });
const wishes = inSeason.extend({
  mostSuppliers: z.int().min(1, 'One supplier at least.').max(50).nullable().default(null),
  inTime: z.boolean().default(true),
});
const packagesNow = z
  .array(
    z.object({
      lineId: z.string(),
      packages: z.number().min(0, 'This cannot be negative.'),
      /** The lot as it stands on the package, with its date; empty where it has none. */
      lot: z.string().trim().max(60).default(''),
      expiresDate: isoDate.nullable().default(null),
    }),
  )
  .min(1)
  .max(500);

export const orders = {
  /** Everything needed with its reason, what is on hand of it, and by when it must be ordered. */
  needs: read({
    input: inSeason,
    run({ db, today }, { seasonId }) {
      const { needs, open } = needsOfSeason(db, seasonId, today);
      const facts = materialFacts(db);
      const choices = needChoices(db, seasonId);
      const suppliers = suppliersOfFarm(db).filter((each) => !each.retired);
      const slowest = slowestLeads(offersInForce(db));
      const anywhere = Math.max(0, ...suppliers.map((each) => each.lead_days));
      const stock = stockBalances(db);
      const toCome = goodsToCome(db);
      const instead = Map.groupBy(standIns(db), (row) => row.materialId);
      return {
        open,
        suppliers: suppliers.map((each) => ({ supplierId: each.id, name: each.name })),
        needs: needs.map((need) => {
          const material = facts.get(need.materialId);
          const choice = choices.get(need.key);
          const wanted = (choice?.wantedDate ?? need.wanted) as IsoDate;
          const lead_days = slowest.get(need.materialId) ?? anywhere;
          return {
            ...need,
            wanted,
            computedWanted: need.wanted,
            material: material?.name ?? '',
            kind: material?.kind ?? '',
            baseUnit: material?.baseUnit ?? 'count',
            amount: choice?.amount ?? need.amount,
            computed: need.amount,
            changed: choice?.amount !== null && choice?.amount !== undefined,
            /** Why the amount is another than the computed one. */
            amountReason: choice?.reason ?? '',
            supplierId: choice?.supplierId ?? null,
            supplier: suppliers.find((each) => each.id === choice?.supplierId)?.name ?? '',
            left: choice?.left ?? false,
            needChoiceId: need.source === 'hand' ? need.key : null,
            onHand: Math.max(0, stock.get(need.materialId) ?? 0),
            /** Ordered and not here yet: it is not bought again. */
            onTheWay: toCome.get(need.materialId)?.onTheWay ?? 0,
            expectedDate: toCome.get(need.materialId)?.expectedDate ?? null,
            standIns: (instead.get(need.materialId) ?? []).map((row) => row.instead),
            standInsAllowed: choice?.standIns ?? true,
            orderBy: orderBy(wanted, lead_days),
            late: orderBy(wanted, lead_days) < today,
          };
        }),
      };
    },
  }),
  /** What of the needs has no price that anyone knows: the list and the budget are at least what they say. */
  unpriced: read({ input: inSeason, run: ({ db, today }, { seasonId }) => unpricedOfSeason(db, seasonId, today) }),
  addNeed: change({
    note: ({ materialId }, { db }) => `Add a need of ${nameOf(db, 'material', materialId)}`,
    input: inSeason.extend({
      materialId: z.string().min(1, 'Choose a material.'),
      amount: z.number('Enter an amount.').positive('A need is more than nothing.'),
      reason: z.string().trim().max(200).default(''),
      wantedDate: isoDate,
    }),
    run({ db }, input) {
      const needChoiceId = newId<string>();
      putNeedChoice(db, { ...input, id: needChoiceId, needKey: null });
      return { needChoiceId };
    },
  }),
  removeNeed: change({
    note: ({ needChoiceId }, { db }) => `Take away the need of ${nameOf(db, 'need', needChoiceId)}`,
    input: z.object({ needChoiceId: z.string() }),
    run({ db }, { needChoiceId }) {
      removeNeed(db, needChoiceId);
      return { needChoiceId };
    },
  }),
  setNeeds: change({
    note: ({ choices }, { db }) =>
      choices.length === 1
        ? `Change the need of ${nameOf(db, 'material', choices[0]?.materialId ?? null)}`
        : `Change ${choices.length} needs`,
    input: inSeason.extend({
      choices: z
        .array(
          z.object({
            key: z.string(),
            materialId: z.string(),
            amount: z.number().nonnegative('A need cannot be negative.').nullable(),
            supplierId: z.string().nullable(),
            left: z.boolean(),
            wantedDate: isoDate.nullable().default(null),
            standIns: z.boolean().default(true),
          }),
        )
        .min(1)
        .max(5000),
    }),
    run({ db }, { seasonId, choices }) {
      const before = needChoices(db, seasonId);
      for (const { key, ...choice } of choices) {
        const reason = choice.amount === null ? '' : (before.get(key)?.reason ?? '');
        putNeedChoice(db, { ...choice, reason, id: newId(), seasonId, needKey: key });
      }
      return { changed: choices.length };
    },
  }),
  /** Another amount than the computed one, with the reason for it; empty goes back to the computed one. */
  setNeedAmount: change({
    note: ({ amount, materialId }, { db }) =>
      amount === null
        ? `Need the computed amount of ${nameOf(db, 'material', materialId)}`
        : `Need another amount of ${nameOf(db, 'material', materialId)}`,
    input: inSeason
      .extend({
        key: z.string().min(1),
        materialId: z.string().min(1),
        amount: z.number('Enter an amount.').nonnegative('A need cannot be negative.').nullable(),
        reason: z.string().trim().max(200),
      })
      .refine(({ amount, reason }) => amount === null || reason !== '', {
        path: ['reason'],
        message: 'Say why it is another amount.',
      }),
    run({ db }, { seasonId, key, ...given }) {
      const before = needChoices(db, seasonId).get(key);
      putNeedChoice(db, { ...before, ...given, id: newId(), seasonId, needKey: key });
      return { amount: given.amount };
    },
  }),
  /** Looks for the list of least total cost. */
  optimise: job({
    kind: 'purchase-list',
    input: wishes,
    gather: ({ db, today }, input) => problemOfSeason(db, input.seasonId, today, input).problem,
  }),
  /** Takes a list found by the search as the season's shopping list, in place of what was not bought yet. */
  keepList: change({
    note: ({ bought }) =>
      bought.length === 1 ? 'Take over a shopping list of one line' : `Take over a shopping list of ${bought.length} lines`,
    input: inSeason.extend({ bought: z.array(z.object({ offerId: z.string(), packages: z.int().positive() })).max(5000) }),
    run({ db, today }, { seasonId, bought }) {
      const { needs, problem } = problemOfSeason(db, seasonId, today, { mostSuppliers: null, inTime: false });
      const reasons = listReasons(needs);
      const offers = new Map(problem.offers.map((each) => [each.id, each]));
      const unknown = bought.find((each) => !offers.has(each.offerId));
      if (unknown !== undefined) throw new Refusal({ code: 'changed-meanwhile', what: 'offer' });
      replaceShoppingList(
        db,
        seasonId,
        bought.map((each) => ({
          id: newId(),
          seasonId,
          ...each,
          reason: reasons.get(offers.get(each.offerId)?.materialId ?? '') ?? '',
        })),
      );
      return { lines: bought.length };
    },
  }),
  list: read({
    input: inSeason,
    run: ({ db, today }, { seasonId }) => shoppingView(db, seasonId, wantedDays(db, seasonId, today)),
  }),
  explainLine: read({
    input: inSeason.extend({ shoppingLineId: z.string() }),
    run: ({ db, today }, { seasonId, shoppingLineId }) => explainLine(db, seasonId, shoppingLineId, today),
  }),
  setPackages: change({
    note: ({ lines }, { db }) =>
      lines.length === 1
        ? `Change the packages of ${nameOf(db, 'shoppingLine', lines[0]?.shoppingLineId ?? null)}`
        : `Change the packages of ${lines.length} list lines`,
    input: z.object({
      lines: z.array(z.object({ shoppingLineId: z.string(), packages: z.int().nonnegative('This cannot be negative.') })).min(1),
    }),
    run({ db }, { lines }) {
      for (const line of lines) setShoppingPackages(db, line.shoppingLineId, line.packages);
      return { changed: lines.length };
    },
  }),
  tick: change({
    note: ({ ticked, shoppingLineId }, { db }) =>
      ticked
        ? `Tick off ${nameOf(db, 'shoppingLine', shoppingLineId)}`
        : `Take back the tick at ${nameOf(db, 'shoppingLine', shoppingLineId)}`,
    input: z.object({ shoppingLineId: z.string(), ticked: z.boolean() }),
    run({ db }, { shoppingLineId, ticked }) {
      tickShoppingLine(db, shoppingLineId, ticked);
      return { ticked };
    },
  }),
  /** Makes the ticked lines of a supplier into a purchase. Nothing is in stock until it is received. */
  order: change({
    note: ({ supplierId }, { db }) => `Order from ${nameOf(db, 'supplier', supplierId)}`,
    input: inSeason.extend({ supplierId: z.string(), date: isoDate, documentNumber: z.string().max(60).default('') }),
    run({ db, today }, { seasonId, supplierId, date, documentNumber }) {
      const list = shoppingView(db, seasonId, wantedDays(db, seasonId, today)).find((each) => each.supplierId === supplierId);
      const rows = list?.rows.filter((row) => row.ticked) ?? [];
      if (list === undefined || rows.length === 0)
        throw new Refusal({ code: 'not-found', what: 'line' }, 'Tick the lines that were bought first.');
      const supplier = suppliersOfFarm(db).find((each) => each.id === supplierId);
      if (supplier === undefined) throw new Refusal({ code: 'not-found', what: 'supplier' });
      // what is ordered apart is brought apart: fee and tax are those of the ticked lines alone
      const bill = billOfRows(supplier, rows);
      const facts = materialFacts(db);
      const purchaseId = newId<string>();
      addPurchase(
        db,
        {
          id: purchaseId,
          supplierId,
          orderedDate: date,
          delivery_minor: bill.delivery_minor,
          tax_minor: bill.tax_minor,
          documentNumber,
        },
        rows.map((row) => ({
          id: newId(),
          purchaseId,
          materialId: row.materialId,
          offerId: row.offerId,
          packages: row.packages,
          packageAmount: row.packageAmount,
          price_minor: row.price_minor,
          category: categoryOf(facts.get(row.materialId)?.kind ?? ''),
        })),
      );
      markBought(
        db,
        rows.map((row) => row.shoppingLineId),
        purchaseId,
      );
      return { purchaseId };
    },
  }),
  purchases: read({
    input: z.void(),
    run: ({ db }) =>
      purchaseLines(db, null).map(({ handling, density_kg_per_m3, ...line }) => ({
        ...line,
        cautions: packageCautions(handling, { ...line, density_kg_per_m3, packageWeight_kg: null }),
        amount: line.packages * line.packageAmount,
        total_minor: Math.round(line.packages * line.price_minor),
        open: line.packages - line.receivedPackages,
        state: stateOf(line),
      })),
  }),
  /** Takes what came into stock at landed cost; a part of an order is taken in as far as it came. */
  receive: change({
    note: ({ purchaseId, lines }, { db }) =>
      lines.length === 1
        ? `Receive one line from ${nameOf(db, 'purchase', purchaseId)}`
        : `Receive ${lines.length} lines from ${nameOf(db, 'purchase', purchaseId)}`,
    input: z.object({
      purchaseId: z.string(),
      date: isoDate,
      lines: packagesNow,
      charges_minor: z.int().nonnegative().nullable().default(null),
      who: z.string().max(60).default(''),
    }),
    run({ db }, { purchaseId, date, lines, charges_minor, who }) {
      const purchase = purchaseOfId(db, purchaseId);
      if (purchase === undefined) throw new Refusal({ code: 'not-found', what: 'purchase' });
      const known = purchaseLines(db, purchaseId);
      const receipt = known.map(
        (line): ReceiptLine => receiptLine(line, lines.find((each) => each.lineId === line.lineId)?.packages ?? 0),
      );
      const first = known.every((line) => line.receivedPackages === 0);
      const lots = receivedLots(db, known, lines);
      const landed = landedCost(receipt, charges_minor ?? (first ? purchase.delivery_minor + purchase.tax_minor : 0));
      addMoves(
        db,
        landed.map((each) => ({
          id: newId(),
          materialId: known.find((line) => line.lineId === each.lineId)?.materialId ?? '',
          date,
          kind: 'purchase' as const,
          amount: each.amount,
          value_minor: each.value_minor,
          purchaseLineId: each.lineId,
          lotId: lots.get(each.lineId) ?? null,
          who,
          reason: 'received',
        })),
      );
      for (const { lineId, now } of receipt) if (now > 0) addReceived(db, lineId, now, lots.get(lineId) ?? null);
      const left = receipt.reduce((sum, line) => sum + line.ordered - line.received - line.now, 0);
      if (left <= 1e-9) setReceived(db, purchaseId, date);
      return { received: landed.length, value_minor: landed.reduce((sum, each) => sum + each.value_minor, 0) };
    },
  }),
  /** What is still to come of a purchase will not come: it is no longer on the way, and may be bought again. */
  callOff: change({
    note: ({ purchaseId }, { db }) => `Call off what has not come from ${nameOf(db, 'purchase', purchaseId)}`,
    input: z.object({ purchaseId: z.string(), date: isoDate }),
    run({ db }, { purchaseId, date }) {
      if (purchaseOfId(db, purchaseId) === undefined) throw new Refusal({ code: 'not-found', what: 'purchase' });
      const cameNothing = purchaseLines(db, purchaseId).every((line) => line.receivedPackages === 0);
      const lines = callOffRest(db, purchaseId, date);
      if (lines === 0) throw new Refusal({ code: 'not-found', what: 'line' }, 'All of this purchase is here already.');
      if (cameNothing) dropCharges(db, purchaseId);
      return { lines };
    },
  }),
  sendBack: change({
    note: ({ purchaseId }, { db }) => `Send goods back to ${nameOf(db, 'purchase', purchaseId)}`,
    input: z.object({
      purchaseId: z.string(),
      lineId: z.string(),
      packages: z.number().positive('Something must go back.'),
      date: isoDate,
      reason: z.string().trim().min(1, 'Say why.').max(200),
      who: z.string().max(60).default(''),
    }),
    run({ db }, { purchaseId, lineId, packages, date, reason, who }) {
      const line = purchaseLines(db, purchaseId).find((each) => each.lineId === lineId);
      if (line === undefined) throw new Refusal({ code: 'not-found', what: 'purchase' });
      const back = sentBack(receiptLine(line, packages));
      addReturned(db, lineId, packages);
      addMoves(db, [
        {
          id: newId(),
          materialId: line.materialId,
          date,
          kind: 'return',
          amount: -back.amount,
          value_minor: -back.value_minor,
          purchaseLineId: lineId,
          who,
          reason,
        },
      ]);
      return { refund_minor: back.value_minor };
    },
  }),
  budget: read({
    input: inSeason,
    run({ db }, { seasonId }) {
      const season = seasonOfId(db, seasonId);
      if (season === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
      return seasonBudget(
        { seasonId, startDate: season.startDate as IsoDate, endDate: season.endDate as IsoDate },
        spendingOfFarm(db),
        budgetsOfSeason(db, seasonId),
      );
    },
  }),
  /** Sets budgets of months, or without a month those of the whole season: what the months do not hold of it is left to no month. */
  setBudgets: change({
    note: ({ budgets }) =>
      budgets.length === 1 ? `Set the budget of ${budgets[0]?.category ?? ''}` : `Set ${budgets.length} budgets`,
    input: inSeason.extend({
      budgets: z
        .array(
          z.object({
            category: z.string().trim().min(1, 'Name the category.').max(60),
            month: z.int().min(1).max(12).nullable().default(null),
            amount_minor: z
              .int({ error: ({ input }) => (input == null ? 'Enter an amount.' : 'Money is kept in whole minor units.') })
              .nonnegative('A budget cannot be negative.'),
          }),
        )
        .min(1)
        .max(500),
    }),
    run({ db }, { seasonId, budgets }) {
      budgets.forEach(({ category, month, amount_minor: wanted_minor }, at) => {
        const inMonths = budgetsOfSeason(db, seasonId)
          .filter((each) => each.category === category && each.month !== null)
          .reduce((sum, each) => sum + each.amount_minor, 0);
        const amount_minor = month === null ? wanted_minor - inMonths : wanted_minor;
        if (amount_minor < 0)
          refuse(
            `budgets.${at}.amount_minor`,
            'less-than-months',
            'More than that is set aside in its months: lower those first.',
          );
        putBudget(db, { seasonId, category, month, amount_minor, id: newId() });
      });
      return { budgets: budgets.length };
    },
  }),
};

const stateOf = ({ packages, receivedPackages }: { readonly packages: number; readonly receivedPackages: number }) => {
  if (packages <= 0) return 'called-off' as const;
  if (receivedPackages === 0) return 'ordered' as const;
  return receivedPackages < packages ? ('partly-here' as const) : ('here' as const);
};

function receiptLine(line: ReturnType<typeof purchaseLines>[number], now: number): ReceiptLine {
  return {
    lineId: line.lineId,
    ordered: line.packages,
    received: line.receivedPackages,
    returned: line.returnedPackages,
    packageAmount: line.packageAmount,
    price_minor: line.price_minor,
    now,
  };
}
