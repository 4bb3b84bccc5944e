import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { basinWater_L, explainBasinWater } from '../../../../planner/beds/basin-water.ts';
import { ringOf } from '../../../../planner/beds/extent.ts';
import { explainFloorLoad, floorLoad_kg_per_m2 } from '../../../../planner/beds/floor-load.ts';
import { explainFootprint, footprint_m2 } from '../../../../planner/beds/footprint.ts';
import type { BedForm } from '../../../../planner/beds/form.ts';
import { moundSurface_m2 } from '../../../../planner/beds/mound-surface.ts';
import type { Outline, Point } from '../../../../planner/beds/outline.ts';
import { perimeter_m } from '../../../../planner/beds/perimeter.ts';
import { signedArea_m2 } from '../../../../planner/beds/polygon.ts';
import { explainReservoirWater, reservoirWater_L } from '../../../../planner/beds/reservoir-water.ts';
import { explainVolume, fullVolume_L, heightHolding_m, volumeBetween_L, volumeTo_L } from '../../../../planner/beds/volume.ts';
import { wallArea_m2 } from '../../../../planner/beds/wall-area.ts';
import { explainWeedBarrier, weedBarrier } from '../../../../planner/beds/weed-barrier.ts';

const size = fc.double({ min: 0.2, max: 4, noNaN: true });
const anyOutline: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({ shape: fc.constant('rectangle' as const), length_m: size, width_m: size }),
  fc.record({ shape: fc.constant('round' as const), diameter_m: size }),
  fc.tuple(size, size).map(([a, b]) => ({ shape: 'oval' as const, length_m: Math.max(a, b), width_m: Math.min(a, b) })),
  fc.record({ shape: fc.constant('ellipse' as const), length_m: size, width_m: size }),
  fc.record({ shape: fc.constantFrom('hexagon' as const, 'octagon' as const), acrossFlats_m: size }),
);

const shrink = (outline: Outline, by: number): Outline =>
  outline.shape === 'polygon'
    ? { ...outline, vertices_m: outline.vertices_m.map(([x, y]): Point => [x * by, y * by]) }
    : (Object.fromEntries(Object.entries(outline).map(([k, v]) => [k, typeof v === 'number' ? v * by : v])) as Outline);

const anyForm: fc.Arbitrary<BedForm> = fc.oneof(
  fc.tuple(anyOutline, size).map(([outline, depth_m]): BedForm => ({ solid: 'straight', outline, depth_m })),
  fc
    .tuple(anyOutline, fc.double({ min: 0.4, max: 1, noNaN: true }), size)
    .map(([outline, by, depth_m]): BedForm => ({ solid: 'tapered', outline, bottom: shrink(outline, by), depth_m })),
  fc.record({
    solid: fc.constantFrom('half-ellipsoid' as const, 'paraboloid' as const, 'cone' as const),
    length_m: size,
    width_m: size,
    depth_m: size,
  }),
  fc.tuple(size, size, size).map(
    ([length_m, width_m, depth_m]): BedForm => ({
      solid: 'ridge',
      length_m,
      width_m,
      crownLength_m: length_m * 0.7,
      crownWidth_m: width_m * 0.4,
      depth_m,
    }),
  ),
);

test('a deeper fill is never less, and two parts make the whole', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(anyForm, share, share, (form, a, b) => {
      const [low, high] = [Math.min(a, b) * form.depth_m, Math.max(a, b) * form.depth_m];
      const below = volumeTo_L(form, low);
      const whole = volumeTo_L(form, high);
      expect(whole).toBeGreaterThanOrEqual(below - 1e-9);
      expect(below + volumeBetween_L(form, low, high)).toBeCloseTo(whole, 6);
    }),
  );
});

test('twice the size: twice the perimeter, four times the area, eight times the volume', () => {
  fc.assert(
    fc.property(anyOutline, size, (outline, depth_m) => {
      const twice = shrink(outline, 2);
      expect(perimeter_m(twice)).toBeCloseTo(2 * perimeter_m(outline), 6);
      expect(footprint_m2(twice)).toBeCloseTo(4 * footprint_m2(outline), 6);
      const volume = fullVolume_L({ solid: 'straight', outline, depth_m });
      expect(fullVolume_L({ solid: 'straight', outline: twice, depth_m: 2 * depth_m }) / volume).toBeCloseTo(8, 6);
    }),
  );
});

test('the height that holds a volume holds it', () => {
  fc.assert(
    fc.property(anyForm, fc.double({ min: 0.01, max: 1, noNaN: true }), (form, share) => {
      const volume_L = share * fullVolume_L(form);
      expect(volumeTo_L(form, heightHolding_m(form, volume_L)) / volume_L).toBeCloseTo(1, 6);
    }),
  );
});

test('the drawn ring has the area and way round of its outline', () => {
  fc.assert(
    fc.property(anyOutline, (outline) => {
      const ring = ringOf(outline, 1);
      expect(signedArea_m2(ring) / footprint_m2(outline)).toBeCloseTo(1, 2);
      expect(perimeter_m({ shape: 'polygon', vertices_m: ring }) / perimeter_m(outline)).toBeCloseTo(1, 2);
    }),
  );
});

test('a wall is as large as its way round times its height when upright, larger when it leans', () => {
  fc.assert(
    fc.property(anyOutline, size, (outline, depth_m) => {
      const upright = wallArea_m2({ solid: 'straight', outline, depth_m });
      expect(upright).toBeCloseTo(perimeter_m(outline) * depth_m, 9);
      const leaning = wallArea_m2({ solid: 'tapered', outline, bottom: shrink(outline, 0.8), depth_m });
      expect(leaning).toBeGreaterThan(0.9 * upright - 1e-9);
    }),
  );
  // a pyramid stump worked by hand: sides (2 + 1)/2 * 1 slope, ends the same
  const stump: BedForm = {
    solid: 'tapered',
    outline: { shape: 'rectangle', length_m: 2, width_m: 2 },
    bottom: { shape: 'rectangle', length_m: 1, width_m: 1 },
    depth_m: Math.sqrt(0.75),
  };
  expect(wallArea_m2(stump)).toBeCloseTo(4 * 1.5 * 1, 9);
});

describe('what cannot be built is refused at its field', () => {
  test.each<[string, () => unknown, RegExp]>([
    [
      'a bow tie',
      () =>
        footprint_m2({
          shape: 'polygon',
          vertices_m: [
            [0, 0],
            [2, 2],
            [2, 0],
            [0, 2],
          ],
        }),
      /crosses itself: side 1 meets side 3/,
    ],
    [
      'two corners',
      () =>
        footprint_m2({
          shape: 'polygon',
          vertices_m: [
            [0, 0],
            [2, 2],
          ],
        }),
      /three corners/,
    ],
    [
      'corners on a line',
      () =>
        footprint_m2({
          shape: 'polygon',
          vertices_m: [
            [0, 0],
            [1, 0],
            [2, 0],
          ],
        }),
      /(area|crosses)/,
    ],
    ['an oval wider than long', () => footprint_m2({ shape: 'oval', length_m: 1, width_m: 2 }), /at most 1 m/],
    ['a size of nothing', () => footprint_m2({ shape: 'round', diameter_m: 0 }), /more than zero/],
    [
      'a floor wider than the brim',
      () =>
        fullVolume_L({
          solid: 'tapered',
          outline: { shape: 'round', diameter_m: 0.5 },
          bottom: { shape: 'round', diameter_m: 0.6 },
          depth_m: 0.4,
        }),
      /At most 0.5 m/,
    ],
    [
      'a fill above the wall',
      () => volumeTo_L({ solid: 'straight', outline: { shape: 'round', diameter_m: 1 }, depth_m: 0.4 }, 0.5),
      /at most 0.4 m fits/,
    ],
    ['a mound with walls', () => wallArea_m2({ solid: 'cone', length_m: 1, width_m: 1, depth_m: 1 }), /no walls/],
  ])('%s', (_, act, message) => {
    expect(act).toThrow(message);
  });
});

describe('water', () => {
  const round = (diameter_m: number, depth_m: number): BedForm => ({
    solid: 'straight',
    outline: { shape: 'round', diameter_m },
    depth_m,
  });
  test('rises in the ring between basin and bag, and covers all above the bag', () => {
    const input = { basin: round(0.762, 0.2), bag: round(0.6096, 0.1), level_m: 0.2 };
    const toBrim = basinWater_L({ ...input, level_m: 0.1 });
    expect(basinWater_L(input)).toBeCloseTo(toBrim + volumeBetween_L(input.basin, 0.1, 0.2), 9);
    expect(explainBasinWater(input).result.value).toBe(basinWater_L(input));
  });
  test('a bag wider than its basin is told what would fit', () => {
    expect(() => basinWater_L({ basin: round(0.5, 0.2), bag: round(0.6, 0.4), level_m: 0.1 })).toThrow(/A bag up to 0.5 m fits/);
    expect(() => basinWater_L({ basin: round(0.7, 0.2), bag: round(0.6, 0.4), level_m: 0.3 })).toThrow(/at most 0.2 m/);
  });
  test('in a reservoir fills the voids up to the overflow', () => {
    const bed: BedForm = { solid: 'straight', outline: { shape: 'oval', length_m: 2.4, width_m: 0.6 }, depth_m: 0.6 };
    const input = { bed, overflow_m: 0.15, voidShare: 0.4 };
    expect(reservoirWater_L(input)).toBeCloseTo(0.4 * volumeTo_L(bed, 0.15), 9);
    expect(explainReservoirWater(input).result.value).toBe(reservoirWater_L(input));
    expect(() => reservoirWater_L({ ...input, voidShare: 0 })).toThrow(/gravel has about 40 %/);
    expect(() => reservoirWater_L({ ...input, overflow_m: 0.7 })).toThrow(/above the wall/);
  });
});

test('a weed barrier wider than its roll is cut in strips that overlap', () => {
  const outline: Outline = { shape: 'rectangle', length_m: 2.4, width_m: 1.2 };
  expect(weedBarrier({ outline, reach_m: 0.1, overlap_m: 0.15 }).area_m2).toBeCloseTo(2.6 * 1.4, 9);
  const strips = weedBarrier({ outline, reach_m: 0.1, roll_m: 0.9, overlap_m: 0.15 });
  expect(strips).toMatchObject({ strips: 2 });
  expect(strips.area_m2).toBeCloseTo(2 * 0.9 * 2.6, 9);
  expect(explainWeedBarrier({ outline, reach_m: 0.1, overlap_m: 0.15 }).result.value).toBeCloseTo(2.6 * 1.4, 9);
  expect(() => weedBarrier({ outline, reach_m: 0, roll_m: 0.1, overlap_m: 0.2 })).toThrow(/overlap/);
});

test('loads add up and the working ends in them', () => {
  const deck = { layers: [{ depth_m: 0.3, density_kg_per_m3: 980 }], tare_kg_per_m2: 12, water_kg_per_m2: 20 };
  expect(floorLoad_kg_per_m2(deck)).toBeCloseTo(326, 9);
  expect(explainFloorLoad(deck).result.value).toBe(floorLoad_kg_per_m2(deck));
});

test('a half-sphere has the surface of a half-sphere', () => {
  expect(moundSurface_m2({ length_m: 2, width_m: 2, height_m: 1 })).toBeCloseTo(2 * Math.PI, 9);
});

test('area and volume workings end in their figures', () => {
  const outline: Outline = { shape: 'hexagon', acrossFlats_m: 1.5 };
  expect(explainFootprint(outline).result.value).toBe(footprint_m2(outline));
  const form: BedForm = { solid: 'straight', outline, depth_m: 0.3 };
  expect(explainVolume(form, 0.25).result.value).toBe(volumeTo_L(form, 0.25));
});
