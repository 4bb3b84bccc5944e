import { type Fault, InputError } from '../errors.ts';

/** Something wanted: an amount that any of the accepted materials may serve. */
export type PurchaseNeed = {
  readonly id: string;
  readonly amount: number;
  /** `ratio`: how much of this material does the work of one unit of the need. */
  readonly materials: readonly { readonly materialId: string; readonly ratio: number }[];
  /** Only these suppliers will do (must come from, in time for the date); empty for any. Stock on hand always does. */
  readonly supplierIds?: readonly string[];
};

/** All-units price: from this many packages on, each package costs this. */
export type PriceStep = { readonly fromPackages: number; readonly price_minor: number };

export type PurchaseOffer = {
  readonly id: string;
  readonly supplierId: string;
  readonly materialId: string;
  /** What one package holds, in the material's base unit. */
  readonly packageAmount: number;
  /** Rising `fromPackages`; the first is the least that can be bought. */
  readonly steps: readonly PriceStep[];
  /** No more than this can be had. */
  readonly availablePackages?: number;
  /** Carried in loads of so many packages, each load at a fee. */
  readonly trip?: { readonly packages: number; readonly fee_minor: number };
};

export type PurchaseSupplier = {
  readonly id: string;
  readonly deliveryFee_minor: number;
  /** Goods of this value are brought without the fee; empty where they never are. */
  readonly freeFrom_minor: number | null;
  readonly minimumOrder_minor: number;
  readonly taxShare: number;
};

export type PurchaseProblem = {
  readonly needs: readonly PurchaseNeed[];
  readonly stock: readonly { readonly materialId: string; readonly amount: number }[];
  readonly offers: readonly PurchaseOffer[];
  readonly suppliers: readonly PurchaseSupplier[];
  /** At most this many suppliers; empty for any number. */
  readonly mostSuppliers: number | null;
};

/** Packages bought of one offer. */
export type Bought = { readonly offerId: string; readonly packages: number };

/**
 * Refuses a problem that cannot be meant: a package of nothing, price steps that do not rise, an offer of a supplier that is not there.
 * @throws InputError with every fault, each at its path
 */
export function requireProblem(problem: PurchaseProblem): void {
  const faults: Fault[] = [];
  const say = (path: string, code: string, message: string) => faults.push({ path, code, message });
  const suppliers = new Set(problem.suppliers.map((each) => each.id));
  problem.needs.forEach((need, at) => {
    if (!(need.amount >= 0 && Number.isFinite(need.amount)))
      say(`needs.${at}.amount`, 'too-small', 'A need is a number of 0 or more.');
    for (const { ratio } of need.materials)
      if (!(ratio > 0)) say(`needs.${at}.ratio`, 'not-positive', 'A stand-in must do some of the work: more than 0.');
  });
  problem.offers.forEach((offer, at) => {
    const path = `offers.${at}`;
    if (!(offer.packageAmount > 0)) say(`${path}.packageAmount`, 'not-positive', 'A package must hold more than nothing.');
    if (!suppliers.has(offer.supplierId)) say(`${path}.supplierId`, 'not-found', 'This offer has no supplier.');
    if (offer.steps.length === 0) say(`${path}.steps`, 'empty', 'An offer needs a price.');
    offer.steps.forEach((step, n) => {
      const before = offer.steps[n - 1];
      if (!Number.isInteger(step.fromPackages) || step.fromPackages < 1)
        say(`${path}.steps.${n}.fromPackages`, 'not-whole', 'A price holds from a whole number of packages on.');
      if (before !== undefined && step.fromPackages <= before.fromPackages)
        say(`${path}.steps.${n}.fromPackages`, 'not-in-order', 'Price steps must rise.');
      if (!Number.isSafeInteger(step.price_minor) || step.price_minor < 0)
        say(`${path}.steps.${n}.price_minor`, 'too-small', 'A price is a whole number of minor units, 0 or more.');
    });
  });
  problem.suppliers.forEach((supplier, at) => {
    if (supplier.deliveryFee_minor < 0) say(`suppliers.${at}.deliveryFee_minor`, 'too-small', 'A fee cannot be negative.');
    if (supplier.taxShare < 0 || supplier.taxShare > 1)
      say(`suppliers.${at}.taxShare`, 'too-large', 'A tax lies between 0 and 100 %.');
  });
  if (problem.mostSuppliers !== null && (!Number.isInteger(problem.mostSuppliers) || problem.mostSuppliers < 1))
    say('mostSuppliers', 'too-small', 'At least one supplier is needed.');
  if (faults.length > 0) throw new InputError(faults);
}

/** Price of one package when so many are bought; `null` below the least that can be bought. */
export function priceAt_minor(offer: PurchaseOffer, packages: number): number | null {
  let price: number | null = null;
  for (const step of offer.steps) if (packages >= step.fromPackages) price = step.price_minor;
  return price;
}

/** Amounts that differ by less than this share are the same: sizes and needs come from conversions. */
export const SAME_SHARE = 1e-9;
