import type { MaterialFacts } from '../../db/repositories/stock.ts';
import type { FarmNeed } from '../../planner/orders/needs.ts';
import { kgPerBaseUnit, litresPerBaseUnit } from '../../planner/soil/base-unit.ts';

/** Something needed that cannot be bought until something is entered: a material for it, or what turns it into the material's unit. */
export type OpenNeed = {
  readonly key: string;
  readonly name: string;
  readonly amount: number;
  readonly unit: string;
  readonly reason: string;
  readonly lacks: 'material' | 'density' | 'seeds-per-gram' | 'tray-mix';
};

/** Needs from one part of the farm. */
export type Gathered = { readonly needs: readonly FarmNeed[]; readonly open: readonly OpenNeed[] };

export const gathered = (all: readonly (FarmNeed | OpenNeed)[]): Gathered => ({
  needs: all.filter((each): each is FarmNeed => 'source' in each),
  open: all.filter((each): each is OpenNeed => 'lacks' in each),
});

type Measured = Omit<FarmNeed, 'amount'> & ({ readonly loose_L: number } | { readonly mass_kg: number });

/** A need by volume or weight in the unit its material is kept in; left open where the density for it is not known. */
export function inBaseUnit(facts: MaterialFacts, measured: Measured): FarmNeed | OpenNeed {
  const { key, source, materialId, reason, wanted } = measured;
  const kept = facts.get(materialId);
  const [amount, unit, per] =
    'loose_L' in measured
      ? ([measured.loose_L, 'L', kept === undefined ? null : litresPerBaseUnit(kept)] as const)
      : ([measured.mass_kg, 'kg', kept === undefined ? null : kgPerBaseUnit(kept)] as const);
  return per === null
    ? { key, name: kept?.name ?? '', amount, unit, reason, lacks: 'density' }
    : { key, source, materialId, amount: amount / per, reason, wanted };
}
