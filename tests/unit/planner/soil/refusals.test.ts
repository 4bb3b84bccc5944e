import { describe } from 'vitest';
import type { BedForm } from '../../../../planner/beds/form.ts';
import type { MaterialId } from '../../../../planner/ids.ts';
import { bedWeight } from '../../../../planner/soil/bed-weight.ts';
import { blendParts_L, measuresOf, mixedVolume_L } from '../../../../planner/soil/blend.ts';
import { bucketsForBeds, filledShare } from '../../../../planner/soil/buckets.ts';
import { dismantleYield } from '../../../../planner/soil/dismantle.ts';
import { fillLayers, type RecipeLayer } from '../../../../planner/soil/layers.ts';
import { loads, packagesToBuy } from '../../../../planner/soil/loads.ts';
import { depthAfter_m, looseForSettled_L, settledFromLoose_L, settlingFromDrops } from '../../../../planner/soil/settling.ts';
import { areaCovered_m2, volumeToCover_L } from '../../../../planner/soil/spread.ts';
import {
  coneHeight_m,
  diameterFromGirth_m,
  heapVolume_m3,
  heightByBoard_m,
  windrowSite_m3,
} from '../../../../planner/soil/stockpile.ts';
import {
  bankFromCompacted,
  bankFromLoose,
  compactedFromBank,
  gainFromSwell,
  holeDepth_m,
  loadFactor,
  looseFromBank,
} from '../../../../planner/soil/swell.ts';
import { topUp, topUpOfMany } from '../../../../planner/soil/top-up.ts';
import { moundYield, soilForVoids_L } from '../../../../planner/soil/wood-core.ts';
import { testRefusals } from '../../../builders/faults-of.ts';

const box: BedForm = { solid: 'straight', outline: { shape: 'rectangle', length_m: 2, width_m: 1 }, depth_m: 0.4 };
const layer = (amount: RecipeLayer['amount'], settlingShare = 0): RecipeLayer => ({ amount, settlingShare });
const rest = layer({ kind: 'rest' });

describe('weights, blends and buckets', () => {
  const weighed = { loose_L: 10, settled_L: 8, dryDensity_kg_per_m3: 200 };
  testRefusals([
    ['layers.0.loose_L too-small (0 L)', () => bedWeight([{ ...weighed, loose_L: -1 }])],
    ['layers.1.settled_L too-small (0 L)', () => bedWeight([weighed, { ...weighed, settled_L: -1 }])],
    ['layers.0.dryDensity_kg_per_m3 not-positive (0 kg/m3)', () => bedWeight([{ ...weighed, dryDensity_kg_per_m3: 0 }])],
    ['shrinkShare too-large (0.9)', () => mixedVolume_L([1, 2], 0.95)],
    ['parts_L.1 too-small (0 L)', () => mixedVolume_L([1, -2], 0)],
    ['mix_L too-small (0 L)', () => blendParts_L(-1, [1], 0)],
    ['shrinkShare too-large (0.9)', () => blendParts_L(1, [1], 0.95)],
    ['parts.1 too-small (0)', () => blendParts_L(1, [1, -1], 0)],
    ['parts no-parts', () => blendParts_L(1, [], 0)],
    ['volume_L too-small (0 L)', () => measuresOf(-1, 10)],
    ['measure_L not-positive (0 L)', () => measuresOf(1, 0)],
    ['buckets too-small (0)', () => filledShare(-1, 19, 100)],
    ['bucket_L not-positive (0 L)', () => filledShare(1, 0, 100)],
    ['capacity_L not-positive (0 L)', () => filledShare(1, 19, 0)],
    ['beds not-whole', () => bucketsForBeds({ beds: 1.5, capacity_L: 100, share: 1, bucket_L: 19 })],
    ['share too-large (1)', () => bucketsForBeds({ beds: 1, capacity_L: 100, share: 1.1, bucket_L: 19 })],
    ['bucket_L not-positive (0 L)', () => bucketsForBeds({ beds: 1, capacity_L: 100, share: 1, bucket_L: 0 })],
    ['capacity_L too-small (0 L)', () => bucketsForBeds({ beds: 1, capacity_L: -1, share: 1, bucket_L: 19 })],
  ]);
});

describe('digging, settling, topping up', () => {
  const wood = { materialId: 'wood' as MaterialId, settled_L: 100, swellShare: 0.3 };
  const settling = { firstShare: 0.2, laterShare: 0.05 };
  testRefusals([
    ['sunkShare too-large (0.9)', () => dismantleYield({ layers: [], sunkShare: 1, lossShare: 0 })],
    ['lossShare too-large (1)', () => dismantleYield({ layers: [], sunkShare: 0, lossShare: 1.5 })],
    [
      'layers.0.settled_L too-small (0 L)',
      () => dismantleYield({ layers: [{ ...wood, settled_L: -1 }], sunkShare: 0, lossShare: 0 }),
    ],
    [
      'layers.1.swellShare too-large (1)',
      () => dismantleYield({ layers: [wood, { ...wood, swellShare: 2 }], sunkShare: 0, lossShare: 0 }),
    ],
    ['settled_L too-small (0 L)', () => looseForSettled_L(-1, 0)],
    ['settlingShare too-large (0.9)', () => looseForSettled_L(1, 0.95)],
    ['loose_L too-small (0 L)', () => settledFromLoose_L(-1, 0)],
    ['settlingShare too-large (0.9)', () => settledFromLoose_L(1, 0.95)],
    ['placed_m too-large (5 m)', () => depthAfter_m(6, settling, 1)],
    ['seasons not-whole', () => depthAfter_m(0.4, settling, 1.5)],
    ['firstShare too-large (0.9)', () => depthAfter_m(0.4, { ...settling, firstShare: 1 }, 1)],
    ['laterShare too-small (0)', () => depthAfter_m(0.4, { ...settling, laterShare: -0.1 }, 1)],
    ['volume_L too-small (0 L)', () => areaCovered_m2(-1, 0.1)],
    ['depth_m not-positive (0 m)', () => areaCovered_m2(1, 0)],
    ['area_m2 too-small (0 m2)', () => volumeToCover_L(-1, 0.1)],
    ['depth_m too-large (10 m)', () => volumeToCover_L(1, 11)],
    ['volume too-small (0)', () => looseFromBank(-1, 0.2)],
    ['swellShare too-large (1)', () => gainFromSwell(1, 1.2)],
    ['volume too-small (0)', () => bankFromLoose(-1, 0.2)],
    ['swellShare too-small (0)', () => loadFactor(-0.1)],
    ['bank too-small (0)', () => compactedFromBank(-1, 0.1)],
    ['shrinkShare too-large (0.9)', () => compactedFromBank(1, 0.95)],
    ['compacted too-small (0)', () => bankFromCompacted(-1, 0.1)],
    ['shrinkShare too-large (0.9)', () => bankFromCompacted(1, 0.95)],
    ['bank_m3 too-small (0 m3)', () => holeDepth_m(-1, 4)],
    ['area_m2 too-small (0.000001 m2)', () => holeDepth_m(1, 0)],
    ['drop_m too-large', () => topUp({ form: box, surface_m: 0.3, drop_m: 0.4, settlingShare: 0 })],
    ['drop_m too-small (0 m)', () => topUp({ form: box, surface_m: 0.3, drop_m: -0.1, settlingShare: 0 })],
    ['beds too-small (0)', () => topUpOfMany(-1, 2, 0.05, 0.2)],
    ['area_m2 too-small (0.000001 m2)', () => topUpOfMany(1, 0, 0.05, 0.2)],
    ['drop_m too-large (5 m)', () => topUpOfMany(1, 2, 6, 0.2)],
    ['stack_L too-small (0 L)', () => soilForVoids_L(-1, 0.65, 1)],
    ['solidShare too-large (1)', () => soilForVoids_L(1, 1.5, 1)],
    ['voidFillShare too-large (1)', () => soilForVoids_L(1, 0.65, 1.5)],
  ]);
  const mound = { mound_m3: 2, coreShare: 0.4, swellShare: 0.25, screenLossShare: 0.1 };
  testRefusals([
    ['mound_m3 too-small (0 m3)', () => moundYield({ ...mound, mound_m3: -1 })],
    ['coreShare too-large (1)', () => moundYield({ ...mound, coreShare: 1.1 })],
    ['swellShare too-large (1)', () => moundYield({ ...mound, swellShare: 1.1 })],
    ['screenLossShare too-large (1)', () => moundYield({ ...mound, screenLossShare: 1.1 })],
    ['drops too-small (1)', () => settlingFromDrops([])],
    ['drops.0.depth_m too-large (5 m)', () => settlingFromDrops([{ depth_m: 6, drop_m: 0 }])],
    ['drops.0.drop_m too-large (0.3 m)', () => settlingFromDrops([{ depth_m: 0.3, drop_m: 0.4 }])],
  ]);
});

describe('heaps and loads', () => {
  const windrow = { shape: 'windrow', section: 'triangle', length_m: 5, width_m: 3, height_m: 1.2 } as const;
  const haul = { volume_L: 4000, density_kg_per_m3: 1300, box_L: 1900 };
  const site = { siteArea_m2: 100, width_m: 3, height_m: 1.2, aisle_m: 2, section: 'triangle' } as const;
  testRefusals([
    ['height_m not-positive (0 m)', () => heapVolume_m3({ ...windrow, height_m: 0 })],
    ['length_m not-positive (0 m)', () => heapVolume_m3({ ...windrow, length_m: 0 })],
    ['width_m not-positive (-1 m)', () => heapVolume_m3({ ...windrow, width_m: -1 })],
    ['diameter_m not-positive (0 m)', () => heapVolume_m3({ shape: 'cone', diameter_m: 0, height_m: 1 })],
    ['height_m not-a-half-circle', () => heapVolume_m3({ ...windrow, section: 'semicircle' })],
    ['section no-cone-ends', () => heapVolume_m3({ ...windrow, section: 'parabola', coneEnds: true })],
    ['length_m too-small', () => heapVolume_m3({ ...windrow, length_m: 2.9, coneEnds: true })],
    ['diameter_m not-positive (0 m)', () => coneHeight_m(0, 35)],
    ['repose_deg too-large (80 °)', () => coneHeight_m(3, 85)],
    ['girth_m not-positive (0 m)', () => diameterFromGirth_m(0)],
    ['board_m not-positive (0 m)', () => heightByBoard_m({ board_m: 0, rise_m: 0.2, stretch_m: 1 })],
    ['stretch_m not-positive (0 m)', () => heightByBoard_m({ board_m: 3, rise_m: 0, stretch_m: 0 })],
    ['rise_m too-large (1 m)', () => heightByBoard_m({ board_m: 3, rise_m: 1.2, stretch_m: 1 })],
    ['siteArea_m2 not-positive (0 m2)', () => windrowSite_m3({ ...site, siteArea_m2: 0 })],
    ['aisle_m too-large (100 m)', () => windrowSite_m3({ ...site, aisle_m: 101 })],
    ['width_m not-positive (0 m)', () => windrowSite_m3({ ...site, width_m: 0 })],
    ['height_m not-positive (0 m)', () => windrowSite_m3({ ...site, height_m: 0 })],
    ['volume_L too-small (0 L)', () => loads({ ...haul, volume_L: -1 })],
    ['density_kg_per_m3 not-positive (0 kg/m3)', () => loads({ ...haul, density_kg_per_m3: 0 })],
    ['box_L not-positive (0 L)', () => loads({ ...haul, box_L: 0 })],
    ['payload_kg not-positive (0 kg)', () => loads({ ...haul, payload_kg: 0 })],
    ['need too-small (0)', () => packagesToBuy(-1, 0, 1)],
    ['stock too-small (0)', () => packagesToBuy(1, -1, 1)],
    ['size not-positive (0)', () => packagesToBuy(1, 0, 0)],
  ]);
});

describe('layers of a fill', () => {
  const space = { form: box, from_m: 0, to_m: 0.4 };
  testRefusals([
    ['fillDepth_m too-large', () => fillLayers({ ...space, to_m: 0.5 }, [rest])],
    ['fillDepth_m too-small (0 m)', () => fillLayers({ ...space, to_m: -0.1 }, [rest])],
    ['reservoirDepth_m too-large (0.4 m)', () => fillLayers({ ...space, from_m: 0.45 }, [rest])],
    ['layers.1.settlingShare too-large (0.9)', () => fillLayers(space, [rest, layer({ kind: 'depth', depth_m: 0.1 }, 1)])],
    ['layers.0.amount too-large (5 m)', () => fillLayers(space, [layer({ kind: 'depth', depth_m: 6 }), rest])],
    ['layers.0.amount too-large (1)', () => fillLayers(space, [layer({ kind: 'share', share: 1.2 }), rest])],
    ['layers.0.amount too-small (0 L)', () => fillLayers(space, [layer({ kind: 'volume', settled_L: -1 }), rest])],
    ['layers.1.amount too-small (0 L)', () => fillLayers(space, [rest, layer({ kind: 'volume', settled_L: -1 })])],
    ['layers.1.amount too-large', () => fillLayers(space, [rest, layer({ kind: 'volume', settled_L: 900 })])],
  ]);
});
