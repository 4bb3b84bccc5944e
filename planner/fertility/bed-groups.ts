import { mapNutrients, type NutrientMasses, nutrientNames } from './nutrients.ts';

export type BedNeed = { readonly bedId: string; readonly area_m2: number; readonly need: NutrientMasses };

/** Beds of like need by area: one rate by area feeds them all. */
export type BedGroup = {
  readonly beds: readonly BedNeed[];
  readonly area_m2: number;
  readonly need: NutrientMasses;
};

const FIRST_STEP_KG_PER_M2 = 0.0005;
const MOST_GROUPS = 80;

/**
 * Puts beds together whose needs by area round to the same step, half a gram to the square metre at first, coarser until
 * there are no more groups than the solver takes in its stride. Order of beds does not matter; groups come in a fixed order.
 */
export function groupBeds(beds: readonly BedNeed[]): readonly BedGroup[] {
  for (let step = FIRST_STEP_KG_PER_M2; ; step *= 2) {
    const groups = new Map<string, BedNeed[]>();
    for (const bed of [...beds].sort((a, b) => (a.bedId < b.bedId ? -1 : 1))) {
      if (bed.area_m2 <= 0) continue;
      const key = nutrientNames.map((name) => Math.round(bed.need[name] / bed.area_m2 / step)).join(' ');
      const group = groups.get(key) ?? [];
      group.push(bed);
      groups.set(key, group);
    }
    if (groups.size > MOST_GROUPS && step < 1) continue;
    return [...groups.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, members]) => groupOf(members));
  }
}

const groupOf = (beds: readonly BedNeed[]): BedGroup => ({
  beds,
  area_m2: beds.reduce((sum, bed) => sum + bed.area_m2, 0),
  need: mapNutrients((name) => beds.reduce((sum, bed) => sum + bed.need[name], 0)),
});
