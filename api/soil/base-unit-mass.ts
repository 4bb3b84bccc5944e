/** Kilograms in a base unit of a material; `null` where its density is not known or it is counted. */
export function kgPerBaseUnit(material: {
  readonly baseUnit: string;
  readonly moistDensity_kg_per_m3: number | null;
}): number | null {
  if (material.baseUnit === 'kg') return 1;
  return material.baseUnit === 'L' && material.moistDensity_kg_per_m3 !== null ? material.moistDensity_kg_per_m3 / 1000 : null;
}
