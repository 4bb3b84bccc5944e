import { splitMoney } from '../money.ts';
import type { ShareKey } from './allocate.ts';
import { type BedGround, type BedSpan, groundOf, type Stay } from './ground.ts';

/** What a cost is for. */
export type CostKind =
  | 'parts'
  | 'fill'
  | 'inputs'
  | 'seed'
  | 'packing'
  | 'labour'
  | 'water'
  | 'power'
  | 'line-parts'
  | 'overhead'
  | 'stock-loss';

/** What a cost belongs to, as far as that is known. */
export type ChargeTarget =
  | { readonly to: 'planting'; readonly plantingId: string }
  | { readonly to: 'bed'; readonly bedId: string }
  | { readonly to: 'planting-in-bed'; readonly plantingId: string; readonly bedId: string }
  | { readonly to: 'beds'; readonly weights: readonly { readonly bedId: string; readonly weight: number }[] }
  | { readonly to: 'all'; readonly key: ShareKey }
  | { readonly to: 'nobody' };

export type Charge = { readonly kind: CostKind; readonly amount_minor: number; readonly target: ChargeTarget };

/** Whether a cost is shared by hours worked or income: by what plantings weigh, beside their plants. */
export const followsWork = (target: ChargeTarget): boolean =>
  target.to === 'all' && (target.key === 'hours' || target.key === 'income');

/** What a planting weighs for keys that are not ground: its plants, hours and income. */
export type PlantingWeights = {
  readonly plantingId: string;
  readonly plants: number;
  readonly labour_h: number;
  readonly income_minor: number;
};

/** A cost where it came to rest: a planting in a bed, a bed without planting (idle), or nowhere. */
export type Posting = {
  readonly bedId: string | null;
  readonly plantingId: string | null;
  readonly kind: CostKind;
  readonly amount_minor: number;
};

export type SpreadInput = {
  readonly beds: readonly BedSpan[];
  readonly stays: readonly Stay[];
  readonly plantings: readonly PlantingWeights[];
  readonly charges: readonly Charge[];
};

/**
 * Brings every cost of a season to plantings and beds, each exactly once: the postings add up to the charges to the minor
 * unit, whatever is given.
 *
 *   cost of a planting   over its beds by ground taken
 *   cost of a bed        over its plantings by m2-days; what fell on idle days stays with the bed, without planting
 *   cost of several beds over the beds by the weights given, then as above
 *   shared cost          by area or m2-days over beds, then as above; by plants, hours or income over plantings
 *   all weights zero, or belonging to nobody: kept as a posting without bed and planting
 *
 * Parts are whole minor units by largest remainder, ties to the earlier. The order of beds and plantings decides ties only.
 * Common practice, no source, for the keys.
 * @throws InputError on an amount that is not whole or a negative weight
 */
export function spreadCharges(input: SpreadInput): readonly Posting[] {
  const ground = groundOf(input.beds, input.stays);
  const places = placesOf(ground);
  const areas = input.beds.map((bed) => ({ bedId: bed.bedId, weight: bed.area_m2 }));
  const days = input.beds.map((bed) => ({ bedId: bed.bedId, weight: ground.get(bed.bedId)?.whole_m2_days ?? 0 }));
  const sums = sumsOfPostings();

  const known = new Map<BedGround, readonly number[]>();
  /** What a bed's plantings and its idle days weigh, the idle days last. */
  const weightsOf = (of: BedGround): readonly number[] => {
    const weights = known.get(of) ?? [...of.uses.map((use) => use.m2_days), of.idle_m2_days];
    known.set(of, weights);
    return weights;
  };

  const post = (kind: CostKind, bedId: string | null, plantingId: string | null, amount: number): void => {
    if (amount !== 0) sums.of(kind, bedId, plantingId).amount_minor += amount;
  };

  const toPlanting = (kind: CostKind, plantingId: string, amount: number): void => {
    const at = places.get(plantingId) ?? [];
    const split = splitMoney(
      amount,
      at.map((place) => place.weight),
    );
    at.forEach((place, n) => {
      post(kind, place.bedId, plantingId, split.parts_minor[n] ?? 0);
    });
    post(kind, null, plantingId, split.unallocated_minor);
  };

  const toBed = (kind: CostKind, bedId: string, amount: number): void => {
    const of = ground.get(bedId);
    if (of === undefined) {
      post(kind, bedId, null, amount);
      return;
    }
    const split = splitMoney(amount, weightsOf(of));
    of.uses.forEach((use, n) => {
      post(kind, bedId, use.plantingId, split.parts_minor[n] ?? 0);
    });
    post(kind, bedId, null, (split.parts_minor.at(-1) ?? 0) + split.unallocated_minor);
  };

  const toBeds = (
    kind: CostKind,
    amount: number,
    weights: readonly { readonly bedId: string; readonly weight: number }[],
  ): void => {
    const split = splitMoney(
      amount,
      weights.map((each) => each.weight),
    );
    weights.forEach((each, n) => {
      const part = split.parts_minor[n] ?? 0;
      if (part !== 0) toBed(kind, each.bedId, part);
    });
    post(kind, null, null, split.unallocated_minor);
  };

  const toPlantings = (kind: CostKind, amount: number, weight: (of: PlantingWeights) => number): void => {
    const split = splitMoney(
      amount,
      input.plantings.map((each) => Math.max(0, weight(each))),
    );
    input.plantings.forEach((each, n) => {
      const part = split.parts_minor[n] ?? 0;
      if (part !== 0) toPlanting(kind, each.plantingId, part);
    });
    post(kind, null, null, split.unallocated_minor);
  };

  const toAll = (kind: CostKind, amount: number, key: ShareKey): void => {
    switch (key) {
      case 'area':
        toBeds(kind, amount, areas);
        break;
      case 'bed-days':
        toBeds(kind, amount, days);
        break;
      case 'plants':
        toPlantings(kind, amount, (each) => each.plants);
        break;
      case 'hours':
        toPlantings(kind, amount, (each) => each.labour_h);
        break;
      case 'income':
        toPlantings(kind, amount, (each) => each.income_minor);
        break;
    }
  };

  for (const { kind, amount_minor, target } of input.charges) {
    switch (target.to) {
      case 'planting':
        toPlanting(kind, target.plantingId, amount_minor);
        break;
      case 'planting-in-bed':
        post(kind, target.bedId, target.plantingId, amount_minor);
        break;
      case 'bed':
        toBed(kind, target.bedId, amount_minor);
        break;
      case 'beds':
        toBeds(kind, amount_minor, target.weights);
        break;
      case 'all':
        toAll(kind, amount_minor, target.key);
        break;
      case 'nobody':
        post(kind, null, null, amount_minor);
        break;
    }
  }
  return sums.postings.filter((each) => each.amount_minor !== 0);
}

type PostingSum = {
  readonly bedId: string | null;
  readonly plantingId: string | null;
  readonly kind: CostKind;
  amount_minor: number;
};

/** One sum for each kind, bed and planting, in the order in which they were first asked for. */
function sumsOfPostings() {
  const postings: PostingSum[] = [];
  const byKind = new Map<CostKind, Map<string | null, Map<string | null, PostingSum>>>();
  const within = <K, V>(map: Map<K, V>, key: K, make: () => V): V => {
    const known = map.get(key);
    if (known !== undefined) return known;
    const made = make();
    map.set(key, made);
    return made;
  };
  return {
    postings: postings as readonly PostingSum[],
    of(kind: CostKind, bedId: string | null, plantingId: string | null): PostingSum {
      const byBed = within(byKind, kind, () => new Map<string | null, Map<string | null, PostingSum>>());
      const byPlanting = within(byBed, bedId, () => new Map<string | null, PostingSum>());
      return within(byPlanting, plantingId, () => {
        const made = { bedId, plantingId, kind, amount_minor: 0 };
        postings.push(made);
        return made;
      });
    },
  };
}

/** The beds of each planting with what it weighs there: ground and time, or ground alone where it stood no day in the season. */
function placesOf(
  ground: ReadonlyMap<string, BedGround>,
): ReadonlyMap<string, readonly { readonly bedId: string; readonly weight: number }[]> {
  const places = new Map<string, { bedId: string; weight: number; area: number }[]>();
  for (const { uses } of ground.values())
    for (const use of uses) {
      const list = places.get(use.plantingId);
      const place = { bedId: use.bedId, weight: use.m2_days, area: use.area_m2 };
      if (list === undefined) places.set(use.plantingId, [place]);
      else list.push(place);
    }
  for (const list of places.values())
    if (list.every((place) => place.weight === 0)) for (const place of list) place.weight = place.area;
  return places;
}
