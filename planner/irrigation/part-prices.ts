import type { PartPrices } from './line-options.ts';

/** A material that a line is built of, with its least price of a base unit; null where nobody offers it. */
export type OfferedPart = {
  readonly materialId: string;
  readonly name: string;
  readonly kind: string;
  readonly baseUnit: string;
  readonly insideDiameter_m: number | null;
  readonly boreDiameter_m: number | null;
  readonly price_minor: number | null;
};

/** Bores of tube that are commonly sold, to compare even where the farm has no offer (common practice, no source). */
const USUAL_BORES_M = [0.0127, 0.01524, 0.01905, 0.0254, 0.0318] as const;

/**
 * Prices for comparing ways to build a line: tube by bore out of what is on offer (bores within 0.3 mm are one), the
 * cheapest fitting called a tee, the cheapest pump. Bores nobody offers are listed without a price.
 */
export function pricesOfParts(parts: readonly OfferedPart[]): PartPrices {
  const tubes = parts.flatMap((part) =>
    part.kind === 'tubing' && part.baseUnit === 'm' && part.insideDiameter_m !== null && !/drip|emitter/i.test(part.name)
      ? [{ insideDiameter_m: part.insideDiameter_m, price_minor_per_m: part.price_minor }]
      : [],
  );
  const missing = USUAL_BORES_M.filter((bore) => !tubes.some((tube) => Math.abs(tube.insideDiameter_m - bore) < 3e-4));
  const least = (test: (part: OfferedPart) => boolean): number | null => {
    const prices = parts.flatMap((part) => (test(part) && part.price_minor !== null ? [part.price_minor] : []));
    return prices.length === 0 ? null : Math.round(Math.min(...prices));
  };
  return {
    tubes: [...tubes, ...missing.map((insideDiameter_m) => ({ insideDiameter_m, price_minor_per_m: null }))].sort(
      (one, other) => one.insideDiameter_m - other.insideDiameter_m,
    ),
    tee_minor: least((part) => part.kind === 'fitting' && /tee/i.test(part.name)),
    pump_minor: least((part) => part.kind === 'pump'),
  };
}
