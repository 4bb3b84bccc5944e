import { massOf_kg } from '../../planner/beds/density.ts';
import { cautionsOfPackage, type HandledMaterial } from '../../planner/orders/handling-cautions.ts';

type Package = {
  readonly packageAmount: number;
  readonly packageWeight_kg: number | null;
  readonly baseUnit: string;
  readonly density_kg_per_m3: number | null;
};

/** Cautions of a package by its material and its weight: as the supplier says, else by the material's own density. */
export function packageCautions(material: HandledMaterial, of: Package): readonly string[] {
  return cautionsOfPackage(material, weightOf(of));
}

function weightOf({ packageAmount, packageWeight_kg, baseUnit, density_kg_per_m3 }: Package): number | null {
  if (packageWeight_kg !== null) return packageWeight_kg;
  if (baseUnit === 'kg') return packageAmount;
  return baseUnit === 'L' && density_kg_per_m3 !== null ? massOf_kg(packageAmount, density_kg_per_m3) : null;
}
