import { refuse } from '../errors.ts';
import { createMilp, type MilpBuilder, type MilpModel } from '../milp.ts';
import type { BedGroup } from './bed-groups.ts';
import { type Nutrient, type NutrientMasses, nutrientNames } from './nutrients.ts';

export type FeedOffer = { readonly offerId: string; readonly package_kg: number; readonly price_minor: number };

/** A material the grower lets the blend use. */
export type FeedMaterial = {
  readonly materialId: string;
  readonly name: string;
  /** Share of its mass within reach this season. */
  readonly available: NutrientMasses;
  readonly stock_kg: number;
  readonly offers: readonly FeedOffer[];
  readonly maxRate_kg_per_m2: number;
  readonly density_kg_per_m3: number | null;
};

export type FarmBlendInput = {
  readonly groups: readonly BedGroup[];
  readonly materials: readonly FeedMaterial[];
  /** Nutrients that count; the others ride along. */
  readonly nutrients: readonly Nutrient[];
  /** How far a bed may miss its need either way, share of it. */
  readonly toleranceShare: number;
};

/** Between what amounts a nutrient counts as met, kg. */
export type Range = { readonly least_kg: number; readonly most_kg: number };

/** A need smaller than this by area is not chased: 1 g/m2 more of it does no harm. Common practice, no source. */
const IDLE_KG_PER_M2 = 0.001;

/** Groups are solved within this share of the tolerance: the rest is room for whole measures. Common practice, no source. */
const INNER_SHARE = 0.5;

/** The range of a nutrient for beds of so large an area. A need of nothing may still be passed by a gram to the square metre. */
export function neededRange(need_kg: number, area_m2: number, toleranceShare: number): Range {
  const idle_kg = IDLE_KG_PER_M2 * area_m2;
  return {
    least_kg: need_kg <= idle_kg ? 0 : need_kg * (1 - toleranceShare),
    most_kg: need_kg * (1 + toleranceShare) + idle_kg,
  };
}

/** A model with the places of its columns and rows, to read the answer with. */
export type FarmBlendModel = {
  readonly model: MilpModel;
  /** Column of kg of material i on group j: `doses[i][j]`. */
  readonly doses: readonly (readonly number[])[];
  /** Column of packages, by material and offer. */
  readonly packages: readonly (readonly number[])[];
  /** Rows of the need of nutrient k in group j, with the size that one unit of the row has in kg. */
  readonly needs: readonly { readonly group: number; readonly nutrient: Nutrient; readonly row: number }[];
  readonly missColumns: readonly {
    readonly group: number;
    readonly nutrient: Nutrient;
    readonly under: number;
    readonly over: number;
    readonly size: number;
  }[];
};

const G_PER_KG = 1000;
/** Misses this small, added up over all beds, are rounding of the solver. */
const NO_MISS = 1e-6;
/** So that of equal prices the lighter blend is taken, minor units a kg. */
const TIE_BREAK_MINOR_PER_KG = 1e-3;

/**
 * The farm's blend as a linear model with whole packages.
 *
 *   x_ij   kg of material i on group j        0 .. rate_i A_j
 *   y_io   packages of offer o of material i  whole numbers
 *   sum_j x_ij <= stock_i + sum_o size_io y_io
 *   lo_jk - u_jk <= sum_i c_ik x_ij <= hi_jk + o_jk        k = the nutrients that count
 *
 * Two solves, not one weighted sum: `misses` finds the least total of (u + o), each as a share of its need; `cost` then
 * holds that and finds the least money (stock costs nothing: it is paid). With one weighted sum a miss would be bought
 * whenever it is cheaper than a bag.
 * Source: the form of goal programming in two lexicographic steps.
 * @param leastMiss from the first solve; `null` builds the first
 * @throws InputError when there is no material or no bed to feed
 */
export function farmBlendModel(input: FarmBlendInput, leastMiss: number | null): FarmBlendModel {
  if (input.materials.length === 0) refuse('materialIds', 'empty', 'Choose the materials that the blend may use.');
  if (input.groups.length === 0) refuse('beds', 'empty', 'No bed wants feeding.');
  const builder = createMilp('minimise');
  const byCost = leastMiss !== null;
  const area_m2 = input.groups.reduce((sum, group) => sum + group.area_m2, 0);
  const doses = input.materials.map((material) =>
    input.groups.map((group) =>
      builder.column({ cost: byCost ? TIE_BREAK_MINOR_PER_KG : 0, upper: material.maxRate_kg_per_m2 * group.area_m2 }),
    ),
  );
  const packages = input.materials.map((material, i) =>
    addPackages(builder, material, doses[i] ?? [], byCost, material.maxRate_kg_per_m2 * area_m2),
  );
  const needs: FarmBlendModel['needs'][number][] = [];
  const missColumns: FarmBlendModel['missColumns'][number][] = [];
  input.groups.forEach((group, j) => {
    for (const nutrient of input.nutrients) {
      const range = neededRange(group.need[nutrient], group.area_m2, input.toleranceShare * INNER_SHARE);
      const size = Math.max(group.need[nutrient], 2 * IDLE_KG_PER_M2 * group.area_m2) * G_PER_KG;
      // where every need can be met nothing may be missed: the solver then sees it at once
      const most = leastMiss !== null && leastMiss < NO_MISS ? 0 : Infinity;
      const under = builder.column({ cost: byCost ? 0 : 1, upper: most });
      const over = builder.column({ cost: byCost ? 0 : 1, upper: most });
      const row = builder.row({
        lower: range.least_kg * G_PER_KG,
        upper: range.most_kg * G_PER_KG,
        entries: [
          ...input.materials.map((m, i) => [doses[i]?.[j] ?? 0, m.available[nutrient] * G_PER_KG] as const),
          [under, size],
          [over, -size],
        ],
      });
      needs.push({ group: j, nutrient, row });
      missColumns.push({ group: j, nutrient, under, over, size: size / G_PER_KG });
    }
  });
  if (leastMiss !== null)
    builder.row({ upper: leastMiss + 1e-6, entries: missColumns.flatMap((m) => [[m.under, 1] as const, [m.over, 1] as const]) });
  return { model: builder.build(), doses, packages, needs, missColumns };
}

function addPackages(
  builder: MilpBuilder,
  material: FeedMaterial,
  doses: readonly number[],
  byCost: boolean,
  most_kg: number,
): readonly number[] {
  const columns = material.offers.map((offer) =>
    builder.column({ cost: byCost ? offer.price_minor : 0, integer: byCost, upper: Math.ceil(most_kg / offer.package_kg) }),
  );
  builder.row({
    upper: material.stock_kg,
    entries: [
      ...doses.map((column) => [column, 1] as const),
      ...columns.map((column, o) => [column, -(material.offers[o]?.package_kg ?? 0)] as const),
    ],
  });
  return columns;
}

/** A price for a limit: what another gram of a nutrient would cost over all beds, minor units; below zero it would save. */
export type LimitPrice = {
  readonly nutrient: Nutrient;
  readonly limit: 'least' | 'most';
  readonly price_minor_per_g: number;
  readonly beds: number;
};

/** Reads the prices of the limits from the duals of the model without whole packages. */
export function limitPrices(input: FarmBlendInput, built: FarmBlendModel, rowDuals: Float64Array): readonly LimitPrice[] {
  return nutrientNames.flatMap((nutrient) =>
    (['least', 'most'] as const).flatMap((limit): LimitPrice[] => {
      const binding = built.needs.flatMap((need) => {
        const dual = rowDuals[need.row] ?? 0;
        const binds = limit === 'least' ? dual > 1e-7 : dual < -1e-7;
        return need.nutrient === nutrient && binds ? [{ dual, beds: input.groups[need.group]?.beds.length ?? 0 }] : [];
      });
      if (binding.length === 0) return [];
      const beds = binding.reduce((sum, each) => sum + each.beds, 0);
      const price = binding.reduce((sum, each) => sum + each.dual * each.beds, 0) / Math.max(1, beds);
      return [{ nutrient, limit, price_minor_per_g: price, beds }];
    }),
  );
}

/** Total miss of a solved model, shares added up. */
export function totalMiss(built: FarmBlendModel, values: Float64Array): number {
  return built.missColumns.reduce((sum, m) => sum + (values[m.under] ?? 0) + (values[m.over] ?? 0), 0);
}

/** kg of each material on a square metre of each group: `rates[j][i]`. */
export function groupRates(input: FarmBlendInput, built: FarmBlendModel, values: Float64Array): readonly (readonly number[])[] {
  return input.groups.map((group, j) =>
    input.materials.map((_, i) => Math.max(0, values[built.doses[i]?.[j] ?? 0] ?? 0) / Math.max(1e-9, group.area_m2)),
  );
}
