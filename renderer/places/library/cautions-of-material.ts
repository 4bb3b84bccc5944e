import type { MaterialRow } from './material-columns.ts';

const lime = /\blime|sulfur|sulphur|ash\b|gypsum/i;
const mineralDust = /perlite|vermiculite|sand|pumice|rock dust/i;
const wood = /board|post|pallet|sleeper|lumber|timber|wood/i;
const vessel = /basin|trough|tank|drum|tote|bucket|barrel|liner/i;
const stored = /meal|nitrate|sulfate|urea|ammonium|acid/i;

/** The cautions that belong to handling a material, by what is known of it. */
export function cautionsOfMaterial(
  material: Pick<MaterialRow, 'name' | 'kind' | 'dusty' | 'animalOrigin' | 'registrationNumber'>,
): readonly string[] {
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
