import { requireRange } from '../errors.ts';
import type { MaterialId } from '../ids.ts';

export type DismantledLayer = {
  readonly materialId: MaterialId;
  /** As it lies in the bed, settled. */
  readonly settled_L: number;
  readonly swellShare: number;
};

export type DismantleInput = {
  readonly layers: readonly DismantledLayer[];
  /** How far the surface has sunk since the fill, as a share of the fill. */
  readonly sunkShare: number;
  /** Lost in digging out and screening. */
  readonly lossShare: number;
};

/**
 * Loose material won from a bed that is taken down, by material: V (1 - d)(1 + w)(1 - l).
 *
 *   V   settled volume of the layer         L
 *   d   share of the fill that has sunk     -   0 to 0.9
 *   w   swell when dug                      -   0 to 1
 *   l   loss                                -   0 to 1
 *
 * Rotted wood counts as a material like soil. Source: definition.
 * @throws InputError naming the field
 */
export function dismantleYield(input: DismantleInput): ReadonlyMap<MaterialId, number> {
  requireRange('sunkShare', input.sunkShare, 0, 0.9, '');
  requireRange('lossShare', input.lossShare, 0, 1, '');
  const won = new Map<MaterialId, number>();
  input.layers.forEach((layer, at) => {
    requireRange(`layers.${at}.settled_L`, layer.settled_L, 0, 1e9, 'L');
    requireRange(`layers.${at}.swellShare`, layer.swellShare, 0, 1, '');
    const loose_L = layer.settled_L * (1 - input.sunkShare) * (1 + layer.swellShare) * (1 - input.lossShare);
    won.set(layer.materialId, (won.get(layer.materialId) ?? 0) + loose_L);
  });
  return won;
}
