import type { PartPrices } from './line-options.ts';
import type { LinePart } from './line-parts.ts';

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

export type PartToOrder = { readonly materialId: string; readonly name: string; readonly amount: number; readonly why: string };

const words: Readonly<Record<LinePart['what'], RegExp>> = {
  tube: /tub|pipe|hose/i,
  tee: /\btee\b/i,
  adapter: /adapt|reduc/i,
  valve: /valve/i,
  clamp: /clamp/i,
  bulkhead: /bulkhead|grommet/i,
  strainer: /strain|filter/i,
  vent: /vent|vacuum/i,
  plug: /plug|end cap/i,
  pump: /pump/i,
};

/** The material a part is bought as: the one entered, else by its bore and name; undefined where none fits. */
export function materialOfPart(
  part: LinePart,
  parts: readonly OfferedPart[],
  pumpMaterialId: string | null,
): OfferedPart | undefined {
  const entered = part.what === 'pump' ? pumpMaterialId : part.materialId;
  const own = parts.find((each) => each.materialId === entered);
  if (own !== undefined) return own;
  const unit = part.unit === 'm' ? 'm' : 'count';
  const fitting = parts.filter(
    (each) => each.baseUnit === unit && words[part.what].test(each.name) && !/drip|emitter/i.test(each.name),
  );
  const sized = fitting.find((each) => {
    const bore = part.what === 'tube' ? each.insideDiameter_m : each.boreDiameter_m;
    return part.size_m !== null && bore !== null && Math.abs(bore - part.size_m) < 3e-4;
  });
  return sized ?? (part.what === 'tube' ? undefined : fitting[0]);
}

/** Parts of a line that a material stands for, added up by material. */
export function partsToOrder(
  parts: readonly LinePart[],
  offered: readonly OfferedPart[],
  pumpMaterialId: string | null,
): readonly PartToOrder[] {
  const wanted = new Map<string, PartToOrder>();
  for (const part of parts) {
    const material = materialOfPart(part, offered, pumpMaterialId);
    if (material === undefined) continue;
    const before = wanted.get(material.materialId)?.amount ?? 0;
    wanted.set(material.materialId, {
      materialId: material.materialId,
      name: material.name,
      amount: before + part.amount,
      why: part.why,
    });
  }
  return [...wanted.values()];
}
