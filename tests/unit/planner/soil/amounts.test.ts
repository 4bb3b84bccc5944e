import { expect, test } from 'vitest';
import type { BedForm } from '../../../../planner/beds/form.ts';
import type { MaterialId } from '../../../../planner/ids.ts';
import { bedWeight, saturatedDensity_kg_per_m3 } from '../../../../planner/soil/bed-weight.ts';
import { measuresOf } from '../../../../planner/soil/blend.ts';
import { bucketsForBeds, filledShare } from '../../../../planner/soil/buckets.ts';
import { dismantleYield } from '../../../../planner/soil/dismantle.ts';
import { fillLayers, type RecipeLayer } from '../../../../planner/soil/layers.ts';
import { loads, packagesToBuy, tripsFor } from '../../../../planner/soil/loads.ts';
import { depthAfter_m, meanSettling } from '../../../../planner/soil/settling.ts';
import { heapVolume_m3, heightByBoard_m, windrowSite_m3 } from '../../../../planner/soil/stockpile.ts';
import { bankFromCompacted, compactedFromBank, gainFromSwell, holeDepth_m, loadFactor } from '../../../../planner/soil/swell.ts';
import { topUpOfMany } from '../../../../planner/soil/top-up.ts';
import { heapYield, soilForVoids_L } from '../../../../planner/soil/wood-core.ts';
import { refusals } from '../../../builders/faults-of.ts';

const layer = (amount: RecipeLayer['amount'], settlingShare = 0): RecipeLayer => ({ amount, settlingShare });

test('pores known from the library count where they are fewer than the dry weight leaves', () => {
  const compost = { loose_L: 1000, settled_L: 1000, dryDensity_kg_per_m3: 265 };
  expect(bedWeight([compost]).saturated_kg).toBeCloseTo(265 + 900, 6);
  expect(bedWeight([{ ...compost, porosityShare: 0.5 }]).saturated_kg).toBeCloseTo(265 + 500, 6);
  expect(bedWeight([{ ...compost, porosityShare: 0.99 }]).saturated_kg).toBeCloseTo(265 + 900, 6);
  expect(saturatedDensity_kg_per_m3({ ...compost, porosityShare: 0.5 })).toBeCloseTo(765, 6);
  // the same litres pressed into half the room
  expect(saturatedDensity_kg_per_m3({ ...compost, settled_L: 500 })).toBeCloseTo(530 + 800, 6);
  expect(saturatedDensity_kg_per_m3({ ...compost, loose_L: 0, settled_L: 0 })).toBe(265);
});

test('buckets: rounded to quarters, said when the card is above the count', () => {
  expect(measuresOf(10, 8)).toEqual({ exact: 1.25, quarters: 1.25, isAbove: false });
  expect(measuresOf(10.9, 8)).toMatchObject({ quarters: 1.25, isAbove: false });
  expect(measuresOf(11.5, 8)).toMatchObject({ quarters: 1.5, isAbove: true });
  expect(filledShare(5, 20, 200)).toBe(0.5);
  expect(bucketsForBeds({ beds: 4, capacity_L: 100, share: 0.5, bucket_L: 20 })).toBe(10);
  expect(bucketsForBeds({ beds: 4, capacity_L: 100, share: 0.51, bucket_L: 20 })).toBe(11);
});

test('a bed taken down gives its material loose, less what sank and what is lost', () => {
  const soil = 'soil' as MaterialId;
  const won = dismantleYield({
    layers: [
      { materialId: soil, settled_L: 100, swellShare: 0.25 },
      { materialId: 'wood' as MaterialId, settled_L: 50, swellShare: 0 },
      { materialId: soil, settled_L: 100, swellShare: 0 },
    ],
    sunkShare: 0.2,
    lossShare: 0.1,
  });
  expect([...won].map(([id, litres]) => [id, Math.round(litres * 100) / 100])).toEqual([
    ['soil', 162],
    ['wood', 36],
  ]);
  expect(
    heapYield({ shape: 'cone', diameter_m: 2, height_m: 3 }, { coreShare: 0.5, swellShare: 0.2, screenLossShare: 0.1 }),
  ).toEqual({
    mound_m3: expect.closeTo(Math.PI, 9),
    soilBank_m3: expect.closeTo(Math.PI / 2, 9),
    soilLooseUsable_m3: expect.closeTo((Math.PI / 2) * 1.08, 9),
    core_m3: expect.closeTo(Math.PI / 2, 9),
  });
  expect(soilForVoids_L(1000, 0.65, 0.8)).toBeCloseTo(280, 9);
});

test('loads: the box decides, or the weight; a count that ends on a whole number is that number', () => {
  const haul = { volume_L: 4000, density_kg_per_m3: 1300, box_L: 2000 };
  expect(loads(haul)).toEqual({ loads: 2, mass_kg: 5200, isByWeight: false });
  expect(loads({ ...haul, payload_kg: 1300 })).toEqual({ loads: 4, mass_kg: 5200, isByWeight: true });
  expect(loads({ ...haul, payload_kg: 2600 })).toEqual({ loads: 2, mass_kg: 5200, isByWeight: false });
  expect(tripsFor(0.3, 0.1)).toBe(3);
  expect(tripsFor(0.31, 0.1)).toBe(4);
  expect([packagesToBuy(10, 4, 3), packagesToBuy(10, 12, 3), packagesToBuy(10, 3, 3)]).toEqual([2, 0, 3]);
});

test('settling: nothing in no season, the first share after one, the mean by volume', () => {
  const settling = { firstShare: 0.2, laterShare: 0.1 };
  expect([0, 1, 2].map((seasons) => Number(depthAfter_m(0.5, settling, seasons).toFixed(9)))).toEqual([0.5, 0.4, 0.36]);
  expect(meanSettling([])).toBe(0);
  expect(
    meanSettling([
      { settled_L: 300, share: 0.2 },
      { settled_L: 100, share: 0 },
    ]),
  ).toBeCloseTo(0.15, 9);
});

test('swell and shrink', () => {
  expect(gainFromSwell(8, 0.25)).toBe(2);
  expect(loadFactor(0.25)).toBe(0.8);
  expect(compactedFromBank(10, 0.1)).toBeCloseTo(9, 9);
  expect(bankFromCompacted(9, 0.1)).toBeCloseTo(10, 9);
  expect(holeDepth_m(2, 8)).toBe(0.25);
});

test('ten beds of 2 m2 sunk by 4 cm: 800 L of room, 1,000 L to place', () => {
  const { settled_L, loose_L } = topUpOfMany(10, 2, 0.04, 0.2);
  expect(settled_L).toBeCloseTo(800, 9);
  expect(loose_L).toBeCloseTo(1000, 9);
});

test('a windrow with cone ends is never shorter than wide; just as wide it is a cone', () => {
  const windrow = { shape: 'windrow', section: 'triangle', length_m: 3, width_m: 3, height_m: 1.2, coneEnds: true } as const;
  expect(heapVolume_m3(windrow)).toBeCloseTo(heapVolume_m3({ shape: 'cone', diameter_m: 3, height_m: 1.2 }), 9);
  expect(heapVolume_m3({ ...windrow, coneEnds: false })).toBeCloseTo(5.4, 9);
  const round = { ...windrow, section: 'semicircle', height_m: 1.5, coneEnds: false } as const;
  expect(heapVolume_m3(round)).toBeCloseTo((Math.PI * 1.5 ** 2 * 3) / 2, 9);
  expect(refusals(() => heapVolume_m3({ ...round, height_m: 1.48 }))).toEqual([]);
  expect(refusals(() => heapVolume_m3({ ...round, height_m: 1.6 }))).toEqual(['height_m not-a-half-circle']);
  expect(heightByBoard_m({ board_m: 3, rise_m: 0.4, stretch_m: 1 })).toBeCloseTo(1.2, 9);
  expect(windrowSite_m3({ siteArea_m2: 100, width_m: 3, height_m: 1.2, aisle_m: 2, section: 'triangle' })).toBeCloseTo(36, 9);
});

test('shares of a fill are of its own depth, above the reservoir; layers meet without a gap', () => {
  const form: BedForm = { solid: 'straight', outline: { shape: 'rectangle', length_m: 2, width_m: 1 }, depth_m: 0.5 };
  const space = { form, from_m: 0.1, to_m: 0.5 };
  const half = layer({ kind: 'share', share: 0.5 });
  expect(
    fillLayers(space, [half, half]).map(({ from_m, to_m }) => [from_m, to_m].map((at_m) => Number(at_m.toFixed(9)))),
  ).toEqual([
    [0.1, 0.3],
    [0.3, 0.5],
  ]);
  const volume = layer({ kind: 'volume', settled_L: 200 });
  const [below, above] = fillLayers(space, [layer({ kind: 'rest' }), volume]);
  expect(below?.to_m).toBeCloseTo(0.4, 6);
  expect(above?.settled_L).toBeCloseTo(200, 4);
  expect(fillLayers(space, [])).toEqual([]);
  // above the rest from the surface down: the topmost 10 cm, under it 5
  const depth = (depth_m: number) => layer({ kind: 'depth', depth_m });
  const borders = fillLayers(space, [layer({ kind: 'rest' }), depth(0.05), depth(0.1)]).map(({ to_m }) =>
    Number(to_m.toFixed(9)),
  );
  expect(borders).toEqual([0.35, 0.4, 0.5]);
});

test('layers that miss the surface are told by how much, and which way', () => {
  const form: BedForm = { solid: 'straight', outline: { shape: 'rectangle', length_m: 2, width_m: 1 }, depth_m: 0.4 };
  const of = (depth_m: number) => () => fillLayers({ form, from_m: 0, to_m: 0.4 }, [layer({ kind: 'depth', depth_m })]);
  expect(of(0.3)).toThrow('end 0.1 m below');
  expect(of(0.45)).toThrow('rise 0.05 m above');
  expect(refusals(of(0.4))).toEqual([]);
});
