import type { UnitSystem } from '../../../planner/units/system.ts';
import type { api } from '../../client/api.ts';
import type { InputOf } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

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

type Sizes = Pick<DesignValues, 'length_m' | 'width_m' | 'depth_m' | 'fillDepth_m'>;
type Kind = {
  readonly id: string;
  readonly values: Pick<DesignValues, 'name' | 'kind' | 'outline' | 'watering' | 'wallMaterial'>;
};

const framed: Kind = {
  id: 'framed',
  values: { name: say('Framed bed'), kind: 'framed', outline: 'rectangle', watering: 'top', wallMaterial: 'board' },
};
const strip: Kind = {
  id: 'strip',
  values: { name: say('In-ground strip'), kind: 'in-ground', outline: 'rectangle', watering: 'drip', wallMaterial: '' },
};
const bag: Kind = {
  id: 'bag',
  values: { name: say('Fabric bag'), kind: 'bag', outline: 'round', watering: 'top', wallMaterial: '' },
};

const starter = ({ id, values }: Kind, text: string, sizes: Sizes): Starter => ({
  id,
  text,
  values: { ...plain, ...values, ...sizes },
  layers: sizes.fillDepth_m === 0 ? [] : mix(),
});

const us: readonly Starter[] = [
  starter(framed, say('Framed bed, 4 by 8 ft, 12 in deep'), {
    length_m: 2.4384,
    width_m: 1.2192,
    depth_m: 0.3048,
    fillDepth_m: 0.2794,
  }),
  starter(strip, say('In-ground strip, 30 in by 50 ft'), { length_m: 15.24, width_m: 0.762, depth_m: 0.2032, fillDepth_m: 0 }),
  starter(bag, say('Fabric bag, round, 22 in across, 16 in high'), {
    length_m: 0.5588,
    width_m: 0.5588,
    depth_m: 0.4064,
    fillDepth_m: 0.381,
  }),
];

const metric: readonly Starter[] = [
  starter(framed, say('Framed bed, 1.2 by 2.4 m, 30 cm deep'), { length_m: 2.4, width_m: 1.2, depth_m: 0.3, fillDepth_m: 0.27 }),
  starter(strip, say('In-ground strip, 75 cm by 15 m'), { length_m: 15, width_m: 0.75, depth_m: 0.2, fillDepth_m: 0 }),
  starter(bag, say('Fabric bag, round, 55 cm across, 40 cm high'), {
    length_m: 0.55,
    width_m: 0.55,
    depth_m: 0.4,
    fillDepth_m: 0.38,
  }),
];

/** Common shapes of beds in round sizes of the reader's units (common practice, no source): a place to begin, to be changed to what is built. */
export const startersFor = (system: UnitSystem): readonly Starter[] => (system === 'us' ? us : metric);
