/** What is known of a material that tells how it is to be handled. */
export type HandledMaterial = {
  readonly name: string;
  readonly kind: string;
  readonly dusty: boolean;
  readonly animalOrigin: string;
  readonly registrationNumber: string | null;
};

const lime = /\blime|sulfur|sulphur|ash\b|gypsum/i;
const mineralDust = /perlite|vermiculite|sand|pumice|rock dust/i;
const wood = /board|post|pallet|sleeper|lumber|timber|wood/i;
const vessel = /basin|trough|tank|drum|tote|bucket|barrel|liner/i;
const stored = /meal|nitrate|sulfate|urea|ammonium|acid/i;

/** Two thirds of 23 kg, the load constant of the revised NIOSH lifting equation (1994): a bag above it is heavy to lift alone. */
const HEAVY_KG = 16;

/** The cautions that belong to handling a material, by what is known of it. */
export function cautionsOfMaterial(material: HandledMaterial): readonly string[] {
  const { name, kind } = material;
  return [
    ...(material.animalOrigin === 'raw' ? ['raw-manure'] : []),
    ...(material.animalOrigin === 'composted' ? ['compost-heat'] : []),
    ...(kind === 'liming' || lime.test(name) ? ['lime-sulfur-ash'] : []),
    ...(mineralDust.test(name) || (material.dusty && kind !== 'liming') ? ['dust-perlite-silica'] : []),
    ...(kind === 'hardware' && wood.test(name) ? ['treated-wood-tyres-pallets'] : []),
    ...(vessel.test(name) ? ['food-grade-containers'] : []),
    ...(kind === 'tubing' ? ['heat-gun-vinyl-solvents'] : []),
    ...(kind === 'pump' || kind === 'power' ? ['electricity-near-water'] : []),
    ...(/battery|lithium/i.test(name) ? ['power-pack-heat'] : []),
    ...(stored.test(name) ? ['fertilizer-storage'] : []),
    ...(material.registrationNumber === null || material.registrationNumber === '' ? [] : ['pesticide-label']),
  ];
}

/** Whether a package is heavy to lift alone; one of unknown weight is not told. */
export const isHeavyPackage = (package_kg: number | null): boolean => package_kg !== null && package_kg > HEAVY_KG;

/** The cautions of a line that is bought or received: those of its material, and of lifting where its package is heavy. */
export function cautionsOfPackage(material: HandledMaterial, package_kg: number | null): readonly string[] {
  return [...cautionsOfMaterial(material), ...(isHeavyPackage(package_kg) ? ['saturated-weight-lifting'] : [])];
}
