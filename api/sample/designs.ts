import type { bed, block, design, designLayer, designPart } from '../../db/schema/beds.ts';

type DesignRow = typeof design.$inferInsert;
type PartRow = typeof designPart.$inferInsert;
type LayerRow = typeof designLayer.$inferInsert;
export type BlockRow = typeof block.$inferInsert;
export type BedRow = typeof bed.$inferInsert;

export type SampleDesign = {
  readonly design: DesignRow;
  readonly parts: readonly (readonly [materialId: string, amount: number, life_years: number])[];
  readonly layers: readonly (readonly [materialId: string, kind: LayerRow['amountKind'], amount: number | null])[];
};

/** The five ways in which the invented farm builds a bed. */
export const sampleDesigns: readonly SampleDesign[] = [
  {
    design: {
      id: 'design-frame',
      name: 'Framed bed 1.2 x 2.4 m',
      kind: 'framed',
      outline: 'rectangle',
      length_m: 2.4,
      width_m: 1.2,
      depth_m: 0.28,
      fillDepth_m: 0.25,
      watering: 'top',
      mulchMaterialId: 'straw',
      mulchDepth_m: 0.04,
      barrierOverlap_m: 0.15,
      wallMaterial: 'larch',
      fillLife_years: 12,
    },
    parts: [
      ['hw-board', 14.4, 8],
      ['hw-post', 4, 8],
      ['hw-screw', 48, 10],
      ['hw-barrier', 4, 5],
    ],
    layers: [
      ['soil-own-loose', 'share', 0.4],
      ['mix-raised-bed', 'rest', null],
      ['compost-yard', 'depth', 0.05],
    ],
  },
  {
    design: {
      id: 'design-bag',
      name: 'Fabric bag in a standing basin',
      kind: 'bag',
      outline: 'round',
      length_m: 0.8,
      width_m: 0.8,
      depth_m: 0.34,
      fillDepth_m: 0.3,
      watering: 'basin',
      basinLength_m: 0.9144,
      basinWidth_m: 0.9144,
      basinDepth_m: 0.178,
      basinFill_m: 0.05,
      wallMaterial: 'fabric',
      fillLife_years: 5,
    },
    parts: [
      ['hw-bag-40', 1, 4],
      ['hw-basin-36', 1, 3],
    ],
    layers: [
      ['soil-own-loose', 'share', 0.5],
      ['mix-peat-potting', 'share', 0.3],
      ['compost-yard', 'rest', null],
    ],
  },
  {
    design: {
      id: 'design-trough',
      name: 'Oval trough with reservoir',
      kind: 'trough',
      outline: 'oval',
      length_m: 1.5,
      width_m: 0.6,
      depth_m: 0.6,
      fillDepth_m: 0.55,
      watering: 'reservoir',
      reservoirDepth_m: 0.15,
      overflow_m: 0.15,
      reservoirVoid_share: 0.38,
      wallMaterial: 'galvanised steel',
      fillLife_years: 8,
    },
    parts: [
      ['hw-trough', 1, 12],
      ['hw-overflow', 1, 6],
      ['hw-liner', 4, 6],
    ],
    layers: [
      ['gravel-pea', 'depth', 0.15],
      ['mix-bark-potting', 'share', 0.4],
      ['mix-raised-bed', 'rest', null],
      ['compost-yard', 'depth', 0.05],
    ],
  },
  {
    design: {
      id: 'design-strip',
      name: 'In-ground strip on drip, 0.75 x 9 m',
      kind: 'in-ground',
      outline: 'rectangle',
      length_m: 9,
      width_m: 0.75,
      depth_m: 0.3,
      fillDepth_m: 0.3,
      watering: 'drip',
      mulchMaterialId: 'wood-chips',
      mulchDepth_m: 0.05,
      fillLife_years: 20,
    },
    parts: [['hw-drip', 18, 5]],
    layers: [
      ['soil-own-loose', 'rest', null],
      ['compost-yard', 'depth', 0.03],
    ],
  },
  {
    design: {
      id: 'design-mound',
      name: 'Old wood-core mound',
      kind: 'mound',
      outline: 'half-ellipsoid',
      length_m: 5,
      width_m: 1.8,
      depth_m: 0.8,
      fillDepth_m: 0.8,
      watering: 'top',
      coreShare: 0.35,
      wallMaterial: '',
      fillLife_years: 6,
    },
    parts: [],
    layers: [
      ['wood-core-rotted', 'share', 0.35],
      ['soil-own-loose', 'rest', null],
    ],
  },
];

export const designRows = {
  designs: sampleDesigns.map(({ design: row }) => row),
  parts: sampleDesigns.flatMap(({ design: row, parts }) =>
    parts.map(
      ([materialId, amount, life_years], position): PartRow => ({
        id: `${row.id}-part-${position}`,
        designId: row.id,
        position,
        materialId,
        amount,
        life_years,
      }),
    ),
  ),
  layers: sampleDesigns.flatMap(({ design: row, layers }) =>
    layers.map(
      ([materialId, amountKind, amount], position): LayerRow => ({
        id: `${row.id}-layer-${position}`,
        designId: row.id,
        position,
        materialId,
        amountKind,
        amount,
      }),
    ),
  ),
};
