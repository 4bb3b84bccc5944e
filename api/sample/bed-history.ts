import type { bedFill, bedMeasure, bedPart } from '../../db/schema/beds.ts';
import type { BedRow } from './designs.ts';
import { sampleDesigns } from './designs.ts';
import type { Random } from './random.ts';

type PartRow = typeof bedPart.$inferInsert;
type FillRow = typeof bedFill.$inferInsert;
type MeasureRow = typeof bedMeasure.$inferInsert;

export type BedSize = { readonly area_m2: number; readonly volume_L: number; readonly depth_m: number };

/** The parts each bed was built of, its first fill by layer, and the drop seen each spring. */
export function bedHistory(
  beds: readonly BedRow[],
  sizes: ReadonlyMap<string, BedSize>,
  priceOf: (materialId: string) => number,
  years: readonly number[],
  random: Random,
) {
  const parts: PartRow[] = [];
  const fills: FillRow[] = [];
  const measures: MeasureRow[] = [];
  for (const bed of beds) {
    const plan = sampleDesigns.find(({ design }) => design.id === bed.designId);
    const size = sizes.get(bed.id);
    if (plan === undefined || size === undefined) continue;
    plan.parts.forEach(([materialId, amount, life_years], at) => {
      parts.push({
        id: `${bed.id}-part-${at}`,
        bedId: bed.id,
        materialId,
        amount,
        price_minor: Math.round(priceOf(materialId) * amount),
        life_years,
        installedDate: bed.builtDate,
      });
    });
    const named = plan.layers.map(([materialId, kind, amount]) => {
      const share = kind === 'share' ? (amount ?? 0) : kind === 'depth' ? (amount ?? 0) / size.depth_m : 0;
      return { materialId, share };
    });
    const rest = Math.max(0, 1 - named.reduce((sum, layer) => sum + layer.share, 0));
    named.forEach(({ materialId, share }, at) => {
      const loose_L = Number((size.volume_L * (plan.layers[at]?.[1] === 'rest' ? rest : share) * 1.18).toPrecision(4));
      const bought = !materialId.startsWith('soil-own') && materialId !== 'wood-core-rotted';
      fills.push({
        id: `${bed.id}-fill-${at}`,
        bedId: bed.id,
        date: bed.builtDate,
        kind: 'first-fill',
        position: at,
        materialId,
        loose_L,
        cost_minor: bought ? Math.round(loose_L * priceOf(materialId)) : 0,
      });
    });
    if (plan.design.kind === 'in-ground') continue;
    for (const year of years)
      measures.push({
        id: `${bed.id}-drop-${year}`,
        bedId: bed.id,
        date: `${year}-03-10`,
        drop_m: Number(random.between(0.008, 0.035).toFixed(3)),
      });
  }
  return { parts, fills, measures };
}
