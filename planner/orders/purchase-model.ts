import { createMilp, type MilpBuilder, type MilpModel } from '../milp.ts';
import { mostPackages, mostUseful } from './demand-on-materials.ts';
import { type PurchaseNeed, type PurchaseOffer, type PurchaseProblem, requireProblem } from './purchase-problem.ts';

/** Where each decision stands in the model's columns. */
export type PurchaseColumns = {
  /** By offer, one column for each price step. */
  readonly packages: readonly (readonly number[])[];
  /** What of a source (stock or a supplier's material) goes to a need, as shares of the material's own scale. */
  readonly uses: readonly {
    readonly column: number;
    readonly need: number;
    readonly materialId: string;
    readonly scale: number;
  }[];
  readonly short: readonly { readonly column: number; readonly need: number; readonly scale: number }[];
};

export type PurchaseModel = { readonly model: MilpModel; readonly columns: PurchaseColumns };

/** Money enters the model in this many minor units, so that coefficients stay within solvers' reach. */
const MONEY_SCALE = 100;

/**
 * The purchase as a linear model with whole numbers.
 *
 *   min  sum p_ib x_ib + sum F_s (w_s - f_s) + sum g_i k_i + penalty short_n
 *   sum of uses for need n + short_n >= q_n  (short only where a supplier could fail it);      uses of a source <= stock, or sum z_i x_ib of its offers
 *   lo_ib t_ib <= x_ib <= hi_ib t_ib;  sum_b t_ib <= 1;  t_ib <= w_s     (one price from one package on: x_i <= hi_i w_s)
 *   sum p x >= T_s f_s;  f_s <= w_s;  sum p x >= N_s w_s;  sum w_s <= most suppliers;  x_i <= load_i k_i
 *
 *   x packages, w supplier is ordered from, f its delivery is free, t price step taken, k loads
 *
 * Needs meet only through a material's own unit; amounts enter as shares of what all needs want of the material. A source is all that
 * there is of a material, or stock and each supplier apart where a need takes certain suppliers only.
 * Source: fixed-charge purchase model, standard form, from memory; checked against complete enumeration.
 * @throws InputError on a problem that cannot be meant
 */
export function purchaseModel(problem: PurchaseProblem): PurchaseModel {
  requireProblem(problem);
  const milp = createMilp('minimise');
  const useful = mostUseful(problem);
  const scaleOf = (materialId: string): number => Math.max(useful.get(materialId) ?? 0, 1e-9);
  const stockOf = new Map<string, number>();
  for (const { materialId, amount } of problem.stock) stockOf.set(materialId, (stockOf.get(materialId) ?? 0) + amount);

  const ordered = new Map<string, number>();
  const free = new Map<string, number>();
  for (const supplier of problem.suppliers) {
    const fee = supplier.deliveryFee_minor / MONEY_SCALE;
    const w = milp.column({ cost: fee, upper: 1, integer: true });
    ordered.set(supplier.id, w);
    if (supplier.freeFrom_minor === null || supplier.deliveryFee_minor === 0) continue;
    const f = milp.column({ cost: -fee, upper: 1, integer: true });
    free.set(supplier.id, f);
    milp.row({
      upper: 0,
      entries: [
        [f, 1],
        [w, -1],
      ],
    });
  }

  const taxOf = new Map(problem.suppliers.map((supplier) => [supplier.id, 1 + supplier.taxShare]));
  const packages = problem.offers.map((offer) => {
    const w = ordered.get(offer.supplierId);
    const most = mostPackages(problem, offer, useful.get(offer.materialId) ?? 0);
    if (w === undefined || !useful.has(offer.materialId) || most < (offer.steps[0]?.fromPackages ?? 1)) return [];
    const tax = taxOf.get(offer.supplierId) ?? 1;
    return offerColumns(milp, offer, w, most, tax);
  });

  for (const supplier of problem.suppliers) {
    const goods = problem.offers.flatMap((offer, at) =>
      offer.supplierId === supplier.id
        ? (packages[at] ?? []).map((column, step) => [column, (offer.steps[step]?.price_minor ?? 0) / MONEY_SCALE] as const)
        : [],
    );
    const f = free.get(supplier.id);
    const w = ordered.get(supplier.id);
    if (f !== undefined && supplier.freeFrom_minor !== null)
      milp.row({ lower: 0, entries: [...goods, [f, -supplier.freeFrom_minor / MONEY_SCALE]] });
    if (w !== undefined && supplier.minimumOrder_minor > 0)
      milp.row({ lower: 0, entries: [...goods, [w, -supplier.minimumOrder_minor / MONEY_SCALE]] });
  }
  if (problem.mostSuppliers !== null)
    milp.row({ upper: problem.mostSuppliers, entries: [...ordered.values()].map((w) => [w, 1] as const) });

  const apart = materialsApart(problem);
  const uses: PurchaseColumns['uses'][number][] = [];
  const short: PurchaseColumns['short'][number][] = [];
  const drawn = new Map<string, number[]>();
  const penalty = penaltyOf(problem);
  problem.needs.forEach((need, at) => {
    const entries: [number, number][] = [];
    const scale = Math.max(need.amount, 1e-9);
    for (const { materialId, ratio } of need.materials)
      for (const source of sourcesOf(problem, need, materialId, apart.has(materialId))) {
        const column = milp.column({ cost: 0 });
        uses.push({ column, need: at, materialId, scale: scaleOf(materialId) });
        drawn.set(source, [...(drawn.get(source) ?? []), column]);
        entries.push([column, scaleOf(materialId) / ratio / scale]);
      }
    const missing = isSurelyServed(problem, need) ? [] : [shortColumn(milp, penalty)];
    for (const column of missing) short.push({ column, need: at, scale });
    if (need.amount > 0) milp.row({ lower: 1, entries: [...entries, ...missing.map((column) => [column, 1] as const)] });
  });

  for (const [source, columns] of drawn) {
    const [materialId = '', supplierId = ''] = JSON.parse(source) as [string, string];
    const scale = scaleOf(materialId);
    const filled = problem.offers.flatMap((offer, at) =>
      offer.materialId === materialId && (supplierId === '*' || supplierId === offer.supplierId)
        ? (packages[at] ?? []).map((column) => [column, -offer.packageAmount / scale] as const)
        : [],
    );
    const stock = supplierId === '*' || supplierId === 'stock' ? (stockOf.get(materialId) ?? 0) / scale : 0;
    milp.row({ upper: stock, entries: [...columns.map((column) => [column, 1] as const), ...filled] });
  }
  return { model: milp.build(), columns: { packages, uses, short } };
}

/** One column of packages for each price step, tied to the supplier's order. */
function offerColumns(milp: MilpBuilder, offer: PurchaseOffer, w: number, most: number, tax: number): number[] {
  const single = offer.steps.length === 1 && offer.steps[0]?.fromPackages === 1;
  const taken: number[] = [];
  const columns = offer.steps.map((step, at) => {
    const high = Math.min((offer.steps[at + 1]?.fromPackages ?? Infinity) - 1, most);
    const usable = high >= step.fromPackages;
    const x = milp.column({ cost: (step.price_minor * tax) / MONEY_SCALE, upper: usable ? high : 0, integer: true });
    if (!usable) return x;
    if (single) {
      milp.row({
        upper: 0,
        entries: [
          [x, 1],
          [w, -high],
        ],
      });
      return x;
    }
    const t = milp.column({ cost: 0, upper: 1, integer: true });
    taken.push(t);
    milp.row({
      upper: 0,
      entries: [
        [x, 1],
        [t, -high],
      ],
    });
    milp.row({
      lower: 0,
      entries: [
        [x, 1],
        [t, -step.fromPackages],
      ],
    });
    milp.row({
      upper: 0,
      entries: [
        [t, 1],
        [w, -1],
      ],
    });
    return x;
  });
  if (taken.length > 1) milp.row({ upper: 1, entries: taken.map((t) => [t, 1] as const) });
  if (offer.trip !== undefined) {
    const loads = milp.column({ cost: offer.trip.fee_minor / MONEY_SCALE, integer: true });
    milp.row({ upper: 0, entries: [...columns.map((x) => [x, 1] as const), [loads, -offer.trip.packages]] });
  }
  return columns;
}

/** Materials where some need takes certain suppliers only: their sources are kept apart. */
function materialsApart(problem: PurchaseProblem): ReadonlySet<string> {
  return new Set(
    problem.needs.flatMap((need) => (need.supplierIds === undefined ? [] : need.materials.map((each) => each.materialId))),
  );
}

const sourceKey = (materialId: string, of: string): string => JSON.stringify([materialId, of]);

function sourcesOf(problem: PurchaseProblem, need: PurchaseNeed, materialId: string, apart: boolean): readonly string[] {
  if (!apart) return [sourceKey(materialId, '*')];
  const suppliers = new Set(problem.offers.filter((offer) => offer.materialId === materialId).map((offer) => offer.supplierId));
  const open = [...suppliers].filter((id) => need.supplierIds === undefined || need.supplierIds.includes(id));
  return [sourceKey(materialId, 'stock'), ...open.map((id) => sourceKey(materialId, id))];
}

/** True where some supplier can bring as much of a need as it takes. */
function isSurelyServed(problem: PurchaseProblem, need: PurchaseNeed): boolean {
  if (problem.mostSuppliers !== null) return false;
  return problem.offers.some(
    (offer) =>
      offer.availablePackages === undefined &&
      need.materials.some((each) => each.materialId === offer.materialId) &&
      (need.supplierIds === undefined || need.supplierIds.includes(offer.supplierId)),
  );
}

/** The share of a need that is left short: any shortfall costs the whole penalty, so that a last package is never saved. */
function shortColumn(milp: MilpBuilder, penalty: number): number {
  const isShort = milp.column({ cost: penalty, upper: 1, integer: true });
  const share = milp.column({ cost: penalty, upper: 1 });
  milp.row({
    upper: 0,
    entries: [
      [share, 1],
      [isShort, -1],
    ],
  });
  return share;
}

/** More than any need could cost to serve whole, so that nothing is left short to save money. */
function penaltyOf(problem: PurchaseProblem): number {
  const useful = mostUseful(problem);
  const dearest = problem.offers.map((offer) => {
    const cover = Math.ceil((useful.get(offer.materialId) ?? 0) / offer.packageAmount) + (offer.steps[0]?.fromPackages ?? 1);
    return cover * Math.max(...offer.steps.map((step) => step.price_minor)) + (offer.trip?.fee_minor ?? 0) * cover;
  });
  const fees = problem.suppliers.reduce((sum, each) => sum + each.deliveryFee_minor + each.minimumOrder_minor, 0);
  return (2 * (Math.max(0, ...dearest) + fees)) / MONEY_SCALE + 1;
}
