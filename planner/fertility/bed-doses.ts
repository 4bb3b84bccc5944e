import { refuse } from '../errors.ts';
import type { BedNeed } from './bed-groups.ts';
import { type FarmBlendInput, type FeedMaterial, neededRange, type Range } from './farm-blend.ts';
import { measureFor } from './measures.ts';
import { mapNutrients, type Nutrient, type NutrientMasses } from './nutrients.ts';

export type BedDose = { readonly materialId: string; readonly dose_kg: number };
export type Standing = 'met' | 'under' | 'over';

/** What one bed is given, what that brings within reach, and whether each nutrient that counts is met. */
export type FedBed = {
  readonly bedId: string;
  readonly doses: readonly BedDose[];
  readonly brings: NutrientMasses;
  readonly need: NutrientMasses;
  readonly standing: Readonly<Partial<Record<Nutrient, Standing>>>;
};

/** Without a density a dose is weighed out, to 5 g. Common practice, no source. */
const WEIGHED_STEP_KG = 0.005;
const HAIR = 1e-9;

/**
 * Turns rates into whole measures for each bed: of the roundings up and down of every material the one that misses its
 * nutrients least, then the cheapest. No bed gets more of a material than its rate allows, and no material goes beyond what
 * there is of it: then the beds that are given most in relation step down. What is met is found by plain arithmetic on the
 * rounded doses, never taken from the solver.
 */
export function bedDoses(
  input: FarmBlendInput,
  rates_kg_per_m2: readonly (readonly number[])[],
  supply_kg: readonly number[],
  scoop_L: number,
): readonly FedBed[] {
  if (supply_kg.length !== input.materials.length) refuse('supply_kg', 'other-count', 'A supply is needed for each material.');
  const fed = input.groups.flatMap((group, j) =>
    group.beds.map((bed) => ({ bed, steps: roundedSteps(input, bed, rates_kg_per_m2[j] ?? [], scoop_L) })),
  );
  input.materials.forEach((_, i) => {
    keepWithin(fed, i, supply_kg[i] ?? 0);
  });
  return fed.map(({ bed, steps }) =>
    fedBed(
      input,
      bed,
      steps.map((step) => step.count * step.size_kg),
    ),
  );
}

/** So many measures of a size, and the most that the material's rate allows. */
type Step = { count: number; readonly size_kg: number; readonly most: number };
type Fed = { readonly bed: BedNeed; readonly steps: Step[] };

function stepSize_kg(material: FeedMaterial, wanted_kg: number, scoop_L: number): number {
  if (material.density_kg_per_m3 === null) return WEIGHED_STEP_KG;
  const volume_L = (1000 * wanted_kg) / material.density_kg_per_m3;
  return (measureFor(volume_L, scoop_L).volume_L * material.density_kg_per_m3) / 1000;
}

function roundedSteps(input: FarmBlendInput, bed: BedNeed, rates: readonly number[], scoop_L: number): Step[] {
  const wanted = input.materials.map((_, i) => (rates[i] ?? 0) * bed.area_m2);
  const sizes = input.materials.map((material, i) => stepSize_kg(material, wanted[i] ?? 0, scoop_L));
  const used = wanted.flatMap((kg, i) => (kg > HAIR ? [i] : []));
  const floors = wanted.map((kg, i) => Math.floor(kg / (sizes[i] ?? 1) + HAIR));
  const most = input.materials.map((material, i) =>
    Math.floor((material.maxRate_kg_per_m2 * bed.area_m2) / (sizes[i] ?? 1) + HAIR),
  );
  let best: { readonly counts: readonly number[]; readonly miss: number; readonly cost: number } | null = null;
  const free = used.filter((i) => (floors[i] ?? 0) < (most[i] ?? 0)).slice(0, 10);
  for (let bits = 0; bits < 2 ** free.length; bits += 1) {
    const counts = [...floors];
    free.forEach((i, at) => {
      if ((bits >> at) & 1) counts[i] = (counts[i] ?? 0) + 1;
    });
    const doses = counts.map((count, i) => count * (sizes[i] ?? 0));
    const miss = missOf(input, bed, doses);
    const cost = doses.reduce((sum, kg, i) => sum + kg * unitPrice(input.materials[i]), 0);
    if (best === null || miss < best.miss - HAIR || (miss < best.miss + HAIR && cost < best.cost)) best = { counts, miss, cost };
  }
  const steps = (best?.counts ?? floors).map((count, i) => ({ count, size_kg: sizes[i] ?? 0, most: most[i] ?? 0 }));
  stepNearer(input, bed, steps, used);
  return steps;
}

/** No bed needs more single steps than this to come as near as whole measures let it. */
const MOST_STEPS = 60;

/** A bed differs a little from its group: single measures more or less, as long as each brings it nearer to its own need. */
function stepNearer(input: FarmBlendInput, bed: BedNeed, steps: Step[], used: readonly number[]): void {
  let miss = missOf(input, bed, massesOf(steps));
  for (let round = 0; round < MOST_STEPS && miss > HAIR; round += 1) {
    let better: { readonly i: number; readonly by: number; readonly miss: number } | null = null;
    for (const i of used) {
      const step = steps[i];
      if (step === undefined) continue;
      for (const by of [-1, 1]) {
        if (step.count + by < 0 || step.count + by > step.most) continue;
        step.count += by;
        const tried = missOf(input, bed, massesOf(steps));
        step.count -= by;
        if (tried < (better?.miss ?? miss) - HAIR) better = { i, by, miss: tried };
      }
    }
    const step = better === null ? undefined : steps[better.i];
    if (better === null || step === undefined) return;
    step.count += better.by;
    miss = better.miss;
  }
}

const massesOf = (steps: readonly Step[]): readonly number[] => steps.map((step) => step.count * step.size_kg);

const unitPrice = (material: FeedMaterial | undefined): number =>
  Math.min(1e9, ...(material?.offers ?? []).map((offer) => offer.price_minor / offer.package_kg));

function missOf(input: FarmBlendInput, bed: BedNeed, doses: readonly number[]): number {
  return input.nutrients.reduce((sum, nutrient) => {
    const range = neededRange(bed.need[nutrient], bed.area_m2, input.toleranceShare);
    const brought = broughtOf(input, doses, nutrient);
    const size = Math.max(bed.need[nutrient], 0.002 * bed.area_m2);
    return sum + Math.max(0, range.least_kg - brought, brought - range.most_kg) / size;
  }, 0);
}

const broughtOf = (input: FarmBlendInput, doses: readonly number[], nutrient: Nutrient): number =>
  input.materials.reduce((sum, material, i) => sum + material.available[nutrient] * (doses[i] ?? 0), 0);

function keepWithin(fed: readonly Fed[], i: number, supply_kg: number): void {
  const given = () => fed.reduce((sum, each) => sum + (each.steps[i]?.count ?? 0) * (each.steps[i]?.size_kg ?? 0), 0);
  let over = given() - supply_kg;
  if (over <= HAIR) return;
  const order = [...fed].sort((a, b) => doseByArea(b, i) - doseByArea(a, i) || (a.bed.bedId < b.bed.bedId ? -1 : 1));
  while (over > HAIR) {
    let stepped = false;
    for (const each of order) {
      const step = each.steps[i];
      if (step === undefined || step.count <= 0 || over <= HAIR) continue;
      step.count -= 1;
      over -= step.size_kg;
      stepped = true;
    }
    if (!stepped) return;
  }
}

const doseByArea = (fed: Fed, i: number): number =>
  ((fed.steps[i]?.count ?? 0) * (fed.steps[i]?.size_kg ?? 0)) / Math.max(HAIR, fed.bed.area_m2);

function fedBed(input: FarmBlendInput, bed: BedNeed, doses: readonly number[]): FedBed {
  const brings = mapNutrients((name) => broughtOf(input, doses, name));
  const standing = Object.fromEntries(
    input.nutrients.map((nutrient) => [
      nutrient,
      standingOf(brings[nutrient], neededRange(bed.need[nutrient], bed.area_m2, input.toleranceShare)),
    ]),
  );
  return {
    bedId: bed.bedId,
    doses: input.materials.flatMap((material, i) =>
      (doses[i] ?? 0) > HAIR ? [{ materialId: material.materialId, dose_kg: doses[i] ?? 0 }] : [],
    ),
    brings,
    need: bed.need,
    standing,
  };
}

function standingOf(brought_kg: number, range: Range): Standing {
  const hair = HAIR + range.most_kg * 1e-9;
  if (brought_kg < range.least_kg - hair) return 'under';
  return brought_kg > range.most_kg + hair ? 'over' : 'met';
}
