import type { BedId, MaterialId } from '../ids.ts';
import type { FillSpace, LayerAmount } from './layers.ts';
import { fillLayers } from './layers.ts';

/** A layer of a bed's recipe with its material. */
export type BedLayer = { readonly materialId: MaterialId; readonly amount: LayerAmount; readonly settlingShare: number };

/** A bed to be filled: its space and recipe. */
export type FillBed = { readonly bedId: BedId; readonly space: FillSpace; readonly layers: readonly BedLayer[] };

export type FillNeed = { readonly bedId: BedId; readonly materialId: MaterialId; readonly loose_L: number };

/** First fill of each bed by material, loose, in the order of beds and layers; layers of one material are added. */
export function fillNeeds(beds: readonly FillBed[]): readonly FillNeed[] {
  return beds.flatMap((bed) => {
    const byMaterial = new Map<MaterialId, number>();
    fillLayers(bed.space, bed.layers).forEach((layer, at) => {
      const materialId = bed.layers[at]?.materialId;
      if (materialId !== undefined) byMaterial.set(materialId, (byMaterial.get(materialId) ?? 0) + layer.loose_L);
    });
    return [...byMaterial].map(([materialId, loose_L]): FillNeed => ({ bedId: bed.bedId, materialId, loose_L }));
  });
}

/** What of a need comes from stock and what is still wanted. */
export type CoveredNeed = FillNeed & { readonly fromStock_L: number; readonly wanted_L: number };

/**
 * Own soil and stock first: each need takes from what lies there in the order given, the rest stays wanted. What is wanted
 * and what was taken always add up to the need; no more is taken than lies there.
 */
export function coverFromStock(needs: readonly FillNeed[], stock_L: ReadonlyMap<MaterialId, number>): readonly CoveredNeed[] {
  const left = new Map(stock_L);
  return needs.map((need) => {
    const fromStock_L = Math.min(need.loose_L, Math.max(0, left.get(need.materialId) ?? 0));
    left.set(need.materialId, (left.get(need.materialId) ?? 0) - fromStock_L);
    return { ...need, fromStock_L, wanted_L: need.loose_L - fromStock_L };
  });
}
