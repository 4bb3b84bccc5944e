import type { api } from '../../client/api.ts';
import type { InputOf } from '../../client/use-read.ts';

export type DesignValues = InputOf<typeof api.designs.add>['values'];
export type DesignLayer = InputOf<typeof api.designs.add>['layers'][number];

/** A design to begin with; every size can be changed before and after. */
export type Starter = {
  readonly id: string;
  readonly text: string;
  readonly values: DesignValues;
  readonly layers: DesignLayer[];
};

const plain: Omit<DesignValues, 'name' | 'kind' | 'outline' | 'length_m' | 'width_m' | 'depth_m' | 'fillDepth_m' | 'watering'> = {
  bottomLength_m: null,
  bottomWidth_m: null,
  polygon_m: null,
  topWidth_m: null,
  basinLength_m: null,
  basinWidth_m: null,
  basinDepth_m: null,
  basinFill_m: null,
  reservoirDepth_m: null,
  overflow_m: null,
  reservoirVoid_share: null,
  mulchMaterialId: null,
  mulchDepth_m: null,
  barrierOverlap_m: null,
  wallMaterial: '',
  fillLife_years: 10,
  notes: '',
};

const mix = (): DesignLayer[] => [{ materialId: 'mix-raised-bed', amountKind: 'rest', amount: null, settlingShare: null }];

/** Common shapes of beds (common practice, no source): a place to begin, to be changed to what is built. */
export const starters: readonly Starter[] = [
  {
    id: 'framed',
    text: 'Framed bed, 4 by 8 ft (1.22 × 2.44 m), 12 in (0.3 m) deep',
    values: {
      ...plain,
      name: 'Framed bed',
      kind: 'framed',
      outline: 'rectangle',
      length_m: 2.4384,
      width_m: 1.2192,
      depth_m: 0.3048,
      fillDepth_m: 0.2794,
      watering: 'top',
      wallMaterial: 'board',
    },
    layers: mix(),
  },
  {
    id: 'strip',
    text: 'In-ground strip, 30 in by 50 ft (0.76 × 15.2 m)',
    values: {
      ...plain,
      name: 'In-ground strip',
      kind: 'in-ground',
      outline: 'rectangle',
      length_m: 15.24,
      width_m: 0.762,
      depth_m: 0.2032,
      fillDepth_m: 0,
      watering: 'drip',
    },
    layers: [],
  },
  {
    id: 'bag',
    text: 'Fabric bag, round, 22 in (0.56 m) across, 16 in (0.41 m) high',
    values: {
      ...plain,
      name: 'Fabric bag',
      kind: 'bag',
      outline: 'round',
      length_m: 0.5588,
      width_m: 0.5588,
      depth_m: 0.4064,
      fillDepth_m: 0.381,
      watering: 'top',
    },
    layers: mix(),
  },
];
