import type { Retention } from './capillary-rise.ts';

export type Texture =
  | 'sand'
  | 'loamy sand'
  | 'sandy loam'
  | 'loam'
  | 'silt loam'
  | 'silt'
  | 'silty clay loam'
  | 'silty clay'
  | 'clay';

/** Field capacity and wilting point of a texture, middle of the printed ranges. Source: FAO-56 Table 19. */
export const textureWater: Readonly<Record<Texture, { readonly fieldCapacityShare: number; readonly wiltingShare: number }>> = {
  sand: { fieldCapacityShare: 0.12, wiltingShare: 0.045 },
  'loamy sand': { fieldCapacityShare: 0.15, wiltingShare: 0.065 },
  'sandy loam': { fieldCapacityShare: 0.23, wiltingShare: 0.11 },
  loam: { fieldCapacityShare: 0.25, wiltingShare: 0.12 },
  'silt loam': { fieldCapacityShare: 0.29, wiltingShare: 0.15 },
  silt: { fieldCapacityShare: 0.32, wiltingShare: 0.17 },
  'silty clay loam': { fieldCapacityShare: 0.335, wiltingShare: 0.205 },
  'silty clay': { fieldCapacityShare: 0.36, wiltingShare: 0.23 },
  clay: { fieldCapacityShare: 0.36, wiltingShare: 0.22 },
};

const row = (
  residualShare: number,
  saturatedShare: number,
  alpha_per_cm: number,
  n: number,
  conductivity_cm_per_day: number,
): Retention => ({ residualShare, saturatedShare, alpha_per_cm, n, conductivity_cm_per_day });

/** Retention curves by texture. Source: Carsel & Parrish 1988; the last from memory. */
export const textureRetention: Readonly<Record<string, Retention>> = {
  sand: row(0.045, 0.43, 0.145, 2.68, 712.8),
  'loamy sand': row(0.057, 0.41, 0.124, 2.28, 350.2),
  'sandy loam': row(0.065, 0.41, 0.075, 1.89, 106.1),
  loam: row(0.078, 0.43, 0.036, 1.56, 24.96),
  'silt loam': row(0.067, 0.45, 0.02, 1.41, 10.8),
  'clay loam': row(0.095, 0.41, 0.019, 1.31, 6.24),
};
