import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BedForm } from '../../../../planner/beds/form.ts';
import { volumeBetween_L } from '../../../../planner/beds/volume.ts';
import { InputError } from '../../../../planner/errors.ts';
import type { BedId, MaterialId } from '../../../../planner/ids.ts';
import { bedWeight, explainBedWeight } from '../../../../planner/soil/bed-weight.ts';
import { blendParts_L, explainBlend, measuresOf, mixedVolume_L } from '../../../../planner/soil/blend.ts';
import { coverFromStock, fillNeeds } from '../../../../planner/soil/fill-needs.ts';
import { fillLayers, type RecipeLayer } from '../../../../planner/soil/layers.ts';
import { explainLoads, loads, packagesToBuy } from '../../../../planner/soil/loads.ts';
import {
  depthAfter_m,
  explainLoose,
  looseForSettled_L,
  settledFromLoose_L,
  settlingFromDrops,
} from '../../../../planner/soil/settling.ts';
import { explainHeap, heapVolume_m3 } from '../../../../planner/soil/stockpile.ts';
import { bankFromLoose, explainDig, looseFromBank } from '../../../../planner/soil/swell.ts';
import { expectedDrop_m, explainTopUp, topUp } from '../../../../planner/soil/top-up.ts';

const size = fc.double({ min: 0.2, max: 3, noNaN: true });
const anyForm: fc.Arbitrary<BedForm> = fc.oneof(
  fc.tuple(size, size, size).map(
    ([a, b, depth_m]): BedForm => ({
      solid: 'straight',
      outline: { shape: 'oval', length_m: Math.max(a, b), width_m: Math.min(a, b) },
      depth_m,
    }),
  ),
  fc.tuple(size, fc.double({ min: 0.5, max: 1, noNaN: true }), size).map(
    ([top, taper, depth_m]): BedForm => ({
      solid: 'tapered',
      outline: { shape: 'round', diameter_m: top },
      bottom: { shape: 'round', diameter_m: top * taper },
      depth_m,
    }),
  ),
  fc
    .tuple(size, size, size)
    .map(([length_m, width_m, depth_m]): BedForm => ({ solid: 'half-ellipsoid', length_m, width_m, depth_m })),
);
const settling = fc.double({ min: 0, max: 0.4, noNaN: true });

test('layers of any recipe add up to the bed before swell and settling', () => {
  const recipe = fc.array(fc.record({ share: fc.double({ min: 0.01, max: 0.3, noNaN: true }), settlingShare: settling }), {
    minLength: 1,
    maxLength: 3,
  });
  fc.assert(
    fc.property(anyForm, recipe, settling, fc.integer({ min: 0, max: 3 }), (form, parts, last, restAt) => {
      const layers: RecipeLayer[] = parts.map(({ share, settlingShare }) => ({
        amount: { kind: 'share', share },
        settlingShare,
      }));
      layers.splice(Math.min(restAt, layers.length), 0, { amount: { kind: 'rest' }, settlingShare: last });
      const filled = fillLayers({ form, from_m: 0, to_m: form.depth_m }, layers);
      const whole_L = volumeBetween_L(form, 0, form.depth_m);
      const sum_L = filled.reduce((sum, layer) => sum + layer.settled_L, 0);
      expect(Math.abs(sum_L - whole_L)).toBeLessThanOrEqual(1e-9 * whole_L);
      filled.forEach((layer, at) => {
        expect(layer.loose_L * (1 - (layers[at]?.settlingShare ?? 0))).toBeCloseTo(layer.settled_L, 6);
      });
    }),
  );
});

test('a layer by volume takes that volume, whatever lies above and below', () => {
  fc.assert(
    fc.property(anyForm, fc.double({ min: 0.05, max: 0.4, noNaN: true }), fc.boolean(), (form, part, isBelow) => {
      const whole_L = volumeBetween_L(form, 0, form.depth_m);
      const wanted: RecipeLayer = { amount: { kind: 'volume', settled_L: part * whole_L }, settlingShare: 0 };
      const rest: RecipeLayer = { amount: { kind: 'rest' }, settlingShare: 0 };
      const filled = fillLayers({ form, from_m: 0, to_m: form.depth_m }, isBelow ? [wanted, rest] : [rest, wanted]);
      expect(filled[isBelow ? 0 : 1]?.settled_L).toBeCloseTo(part * whole_L, 4);
    }),
  );
});

describe('a recipe that does not fit is refused at its layer, with what would', () => {
  const form: BedForm = { solid: 'straight', outline: { shape: 'rectangle', length_m: 2, width_m: 1 }, depth_m: 0.4 };
  const space = { form, from_m: 0, to_m: 0.4 };
  const depth = (depth_m: number): RecipeLayer => ({ amount: { kind: 'depth', depth_m }, settlingShare: 0.1 });
  const rest: RecipeLayer = { amount: { kind: 'rest' }, settlingShare: 0 };
  test.each([
    ['layers too low', [depth(0.1), depth(0.2)], 'does-not-sum', 'layers.1.amount'],
    ['layers too high', [depth(0.3), depth(0.2)], 'does-not-sum', 'layers.1.amount'],
    ['two rests', [rest, depth(0.1), rest], 'second-rest', 'layers.2.amount'],
    ['no room for the rest', [rest, depth(0.3), depth(0.2)], 'does-not-fit', 'layers.0.amount'],
    ['no room below the rest', [depth(0.5), rest], 'does-not-fit', 'layers.0.amount'],
    [
      'more than the bed holds',
      [{ amount: { kind: 'volume' as const, settled_L: 900 }, settlingShare: 0 }],
      'too-large',
      'layers.0.amount',
    ],
  ])('%s', (_, layers, code, path) => {
    try {
      fillLayers(space, layers);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      expect((error as InputError).faults).toMatchObject([{ code, path }]);
    }
  });
  test('a fill above the wall', () => {
    expect(() => fillLayers({ ...space, to_m: 0.5 }, [rest])).toThrow(/at most 0.4 m fits/);
  });
});

test('there and back: bank and loose, loose and settled', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), settling, (volume, share) => {
      expect(bankFromLoose(looseFromBank(volume, share), share)).toBeCloseTo(volume, 6);
      expect(settledFromLoose_L(looseForSettled_L(volume, share), share)).toBeCloseTo(volume, 6);
      expect(mixedVolume_L(blendParts_L(volume, [3, 2, 1], share), share)).toBeCloseTo(volume, 6);
    }),
  );
});

test('own soil and stock first: nothing is taken that is not there, and nothing is lost', () => {
  const id = (name: string): MaterialId => name as MaterialId;
  const needs = fc.array(
    fc.record({
      bedId: fc.constant('b' as BedId),
      materialId: fc.constantFrom(id('soil'), id('mix')),
      loose_L: fc.double({ min: 0, max: 500, noNaN: true }),
    }),
  );
  fc.assert(
    fc.property(needs, fc.double({ min: 0, max: 1000, noNaN: true }), (wanted, stock) => {
      const covered = coverFromStock(wanted, new Map([[id('soil'), stock]]));
      const taken = covered.reduce((sum, each) => sum + each.fromStock_L, 0);
      expect(taken).toBeLessThanOrEqual(stock + 1e-9);
      for (const each of covered) expect(each.fromStock_L + each.wanted_L).toBeCloseTo(each.loose_L, 9);
      const soil = wanted.filter((each) => each.materialId === 'soil').reduce((sum, each) => sum + each.loose_L, 0);
      expect(taken).toBeCloseTo(Math.min(soil, stock), 6);
    }),
  );
});

test('needs of a bed name each material once', () => {
  const soil = 'soil' as MaterialId;
  const form: BedForm = { solid: 'straight', outline: { shape: 'rectangle', length_m: 2, width_m: 1 }, depth_m: 0.4 };
  const layers = [
    { materialId: soil, amount: { kind: 'share', share: 0.25 }, settlingShare: 0 },
    { materialId: 'mix' as MaterialId, amount: { kind: 'share', share: 0.5 }, settlingShare: 0.2 },
    { materialId: soil, amount: { kind: 'rest' }, settlingShare: 0 },
  ] as const;
  const needs = fillNeeds([{ bedId: 'b1' as BedId, space: { form, from_m: 0, to_m: 0.4 }, layers }]);
  expect(needs.map((need) => [need.materialId, Math.round(need.loose_L)])).toEqual([
    ['soil', 400],
    ['mix', 500],
  ]);
});

test('a full bed weighs more wet than moist and more moist than dry', () => {
  const layers = [
    { loose_L: 500, settled_L: 400, dryDensity_kg_per_m3: 120, moistDensity_kg_per_m3: 315 },
    { loose_L: 300, settled_L: 255, dryDensity_kg_per_m3: 1000, moistDensity_kg_per_m3: 1200 },
  ];
  const weight = bedWeight(layers);
  expect(weight.dry_kg).toBeCloseTo(360, 6);
  expect(weight.moist_kg).toBeCloseTo(517.5, 6);
  expect(weight.saturated_kg).toBeGreaterThan(weight.moist_kg);
  expect(explainBedWeight(layers).result.value).toBe(weight.saturated_kg);
});

test('a drop in a leaning bed takes more at the top than at the bottom', () => {
  const form: BedForm = {
    solid: 'tapered',
    outline: { shape: 'round', diameter_m: 0.6 },
    bottom: { shape: 'round', diameter_m: 0.5 },
    depth_m: 0.4,
  };
  const high = topUp({ form, surface_m: 0.4, drop_m: 0.05, settlingShare: 0.2 });
  const low = topUp({ form, surface_m: 0.2, drop_m: 0.05, settlingShare: 0.2 });
  expect(high.settled_L).toBeGreaterThan(low.settled_L);
  expect(explainTopUp({ form, surface_m: 0.4, drop_m: 0.05, settlingShare: 0.2 }).result.value).toBe(high.loose_L);
  expect(() => topUp({ form, surface_m: 0.3, drop_m: 0.35, settlingShare: 0 })).toThrow(/at most 0.3 m/);
});

test('a fill sinks season by season and never below nothing', () => {
  // common practice, no source: 0.2 in the first season, 0.08 in each later one
  expect(depthAfter_m(0.4, { firstShare: 0.2, laterShare: 0.08 }, 3)).toBeCloseTo(0.4 * 0.8 * 0.92 ** 2, 9);
  expect(expectedDrop_m(0.4, 0.08, 1)).toBeCloseTo(0.032, 9);
  expect(expectedDrop_m(0.4, 0.08, 0)).toBe(0);
  expect(
    settlingFromDrops([
      { depth_m: 0.4, drop_m: 0.06 },
      { depth_m: 0.2, drop_m: 0.03 },
    ]),
  ).toBeCloseTo(0.15, 9);
});

test('buckets are rounded to quarters and never to nothing', () => {
  expect(measuresOf(100, 18.927)).toMatchObject({ quarters: 5.25 });
  expect(measuresOf(0.5, 18.927).quarters).toBe(0.25);
  expect(measuresOf(0, 18.927).quarters).toBe(0);
});

test('each working ends in its figure', () => {
  const heap = { shape: 'cone', diameter_m: 3, height_m: 1.2 } as const;
  expect(explainHeap(heap).result.value).toBe(heapVolume_m3(heap));
  expect(explainLoose(500, 0.2, 'Mix').result.value).toBe(looseForSettled_L(500, 0.2));
  expect(explainDig(500, 0.25).result.value).toBe(bankFromLoose(500, 0.25));
  const haul = { volume_L: 4000, density_kg_per_m3: 1300, box_L: 1900, payload_kg: 1300 };
  expect(explainLoads(haul).result.value).toBe(loads(haul).loads);
  expect(
    explainBlend(
      500,
      [
        { name: 'soil', part: 3 },
        { name: 'compost', part: 2 },
      ],
      0.1,
    ).result.value,
  ).toBeCloseTo(500 / 0.9, 9);
});

test('what cannot be is refused at its field', () => {
  expect(() => looseForSettled_L(100, 1)).toThrow(/settlingShare/);
  expect(() => blendParts_L(100, [0, 0], 0)).toThrow(/at least one part/);
  expect(() => packagesToBuy(10, 0, 0)).toThrow(/size/);
  expect(() => heapVolume_m3({ shape: 'cone', diameter_m: 0, height_m: 1 })).toThrow(/diameter_m/);
  expect(() => heapVolume_m3({ shape: 'windrow', section: 'semicircle', length_m: 5, width_m: 3, height_m: 1 })).toThrow(/half/);
});
