import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BedSpec } from '../../../planner/beds/bed-spec.ts';
import { bedEditsOf } from '../../../renderer/places/beds/bed-edits.ts';
import type { BedRow } from '../../../renderer/places/beds/bed-types.ts';
import { hatchOf } from '../../../renderer/places/beds/layer-hatch.ts';
import { quarters } from '../../../renderer/places/beds/quarters.ts';
import { edgeOf, sectionOf } from '../../../renderer/places/beds/section-shape.ts';
import {
  bedAt,
  cameraFor,
  gapBetween_m,
  normalTurn,
  placedBed,
  scaleOf,
  siteExtent,
  turnedAbout,
  zoomedCamera,
} from '../../../renderer/places/beds/site-view.ts';

const size = { width: 800, height: 500 };
const bed = (code: string, x_m: number, y_m: number, turn_deg = 0): BedRow =>
  ({
    bedId: code,
    code,
    x_m,
    y_m,
    turn_deg,
    revision: 1,
    length_m: 2.4,
    width_m: 1.2,
    outline: { shape: 'rectangle', length_m: 2.4, width_m: 1.2 },
  }) as unknown as BedRow;
const asItLies = (each: BedRow) => each;

describe('the view of the site', () => {
  test('a place goes to the drawing and back', () => {
    const metres = fc.double({ min: -200, max: 200, noNaN: true });
    fc.assert(
      fc.property(
        metres,
        metres,
        fc.double({ min: 0.5, max: 400, noNaN: true }),
        metres,
        metres,
        (x_m, y_m, perMetre, cx, cy) => {
          const scale = scaleOf({ x_m: cx, y_m: cy, perMetre }, size);
          const back = scale.back({ x: scale.x(x_m), y: scale.y(y_m) });
          expect(back.x_m).toBeCloseTo(x_m, 6);
          expect(back.y_m).toBeCloseTo(y_m, 6);
        },
      ),
    );
  });
  test('what is under the pointer stays under it when the view comes nearer', () => {
    const camera = { x_m: 10, y_m: 5, perMetre: 20 };
    const about = { x_m: 3, y_m: 8 };
    const nearer = zoomedCamera(camera, 1.5, about);
    expect(scaleOf(nearer, size).x(about.x_m)).toBeCloseTo(scaleOf(camera, size).x(about.x_m), 6);
    expect(scaleOf(nearer, size).y(about.y_m)).toBeCloseTo(scaleOf(camera, size).y(about.y_m), 6);
  });
  test('all beds and the outline fit into the whole view', () => {
    const beds = [bed('a', 0, 0), bed('b', 30, 12, 45)];
    const extent = siteExtent(beds, [
      [-5, -5],
      [40, -5],
      [40, 20],
    ]);
    const scale = scaleOf(cameraFor(extent, size), size);
    expect(scale.x(extent.minX_m)).toBeGreaterThanOrEqual(0);
    expect(scale.x(extent.maxX_m)).toBeLessThanOrEqual(size.width);
    expect(scale.y(extent.maxY_m)).toBeGreaterThanOrEqual(0);
    expect(scale.y(extent.minY_m)).toBeLessThanOrEqual(size.height);
  });
  test('no beds still gives a site to look at', () => {
    expect(siteExtent([], null).maxX_m).toBeGreaterThan(0);
  });
});

describe('hitting and turning beds', () => {
  test('a turned bed is hit where it lies, not where its box is', () => {
    const turned = bed('a', 0, 0, 45);
    expect(bedAt([turned], asItLies, 0.8, 0.8, 0)?.code).toBe('a');
    expect(bedAt([turned], asItLies, 0.8, -0.8, 0)).toBeUndefined();
  });
  test('of two beds that overlap the upper one is hit', () => {
    expect(bedAt([bed('a', 0, 0), bed('b', 0.5, 0)], asItLies, 0.2, 0, 0)?.code).toBe('b');
  });
  test('turning about a middle and back leaves a bed where it was', () => {
    const lie = { x_m: 4, y_m: 2, turn_deg: 10 };
    const there = turnedAbout(lie, { x_m: 1, y_m: 1 }, 75);
    const back = turnedAbout(there, { x_m: 1, y_m: 1 }, -75);
    expect(back.x_m).toBeCloseTo(4, 9);
    expect(back.turn_deg).toBeCloseTo(10, 9);
    expect(normalTurn(190)).toBe(-170);
  });
  test('the way between two beds is between their edges', () => {
    expect(gapBetween_m(placedBed(bed('a', 0, 0), bed('a', 0, 0)), placedBed(bed('b', 3, 0), bed('b', 3, 0)))).toBeCloseTo(
      0.6,
      9,
    );
  });
});

const spec: BedSpec = {
  kind: 'mound',
  outline: 'half-ellipsoid',
  length_m: 4,
  width_m: 2,
  bottomLength_m: null,
  bottomWidth_m: null,
  polygon_m: null,
  depth_m: 0.9,
  fillDepth_m: 0.9,
  topWidth_m: null,
  watering: 'top',
  basinLength_m: null,
  basinWidth_m: null,
  basinDepth_m: null,
  basinFill_m: null,
  reservoirDepth_m: null,
  overflow_m: null,
  reservoirVoid_share: null,
};

describe('the cross-section', () => {
  test('a mound narrows to nothing at its crown', () => {
    const { form } = sectionOf(spec, 0);
    const edge = edgeOf(form, 0, 0.9);
    expect(edge[0]?.half_m).toBeCloseTo(1, 9);
    expect(edge.at(-1)?.half_m).toBeCloseTo(0, 6);
    expect(edge.every((each, at) => at === 0 || each.half_m < (edge[at - 1]?.half_m ?? 0))).toBe(true);
  });
  test('a basin wider than its bag sets the width of the drawing', () => {
    const bag: BedSpec = {
      ...spec,
      kind: 'bag',
      outline: 'round',
      length_m: 0.8,
      width_m: 0.8,
      depth_m: 0.34,
      fillDepth_m: 0.3,
      watering: 'basin',
      basinLength_m: 0.9,
      basinWidth_m: 0.9,
      basinDepth_m: 0.2,
      basinFill_m: 0.05,
    };
    expect(sectionOf(bag, 0.04)).toMatchObject({ half_m: 0.45 });
    expect(sectionOf(bag, 0.1).top_m).toBeCloseTo(0.4, 9);
  });
});

test('edits of one bed in several columns are one change of it', () => {
  const row = bed('a', 0, 0);
  const edits = bedEditsOf([
    { row, key: 'length_m', value: 3 },
    { row, key: 'width_m', value: 1 },
    { row: bed('b', 0, 0), key: 'code', value: 'c' },
  ]);
  expect(edits.edits).toEqual([
    { bedId: 'a', revision: 1, values: { length_m: 3, width_m: 1 } },
    { bedId: 'b', revision: 1, values: { code: 'c' } },
  ]);
});

test('quarters are written as on a tape', () => {
  expect([5.25, 0.5, 3, 0, 1.75].map(quarters)).toEqual(['5¼', '½', '3', '0', '1¾']);
});

test('each kind of fill has its hatch', () => {
  const hatch = (materialId: string, name: string, isOwn = false, kind = 'organic') => hatchOf({ materialId, name, kind, isOwn });
  expect(hatch('mix-raised-bed', 'Raised-bed mix, topsoil + compost + bark')).toBe('mix');
  expect(hatch('soil-own-loose', 'Own soil, dug and loose', true)).toBe('soil');
  expect(hatch('compost-yard', 'Compost, yard trimmings')).toBe('compost');
  expect(hatch('gravel-pea', 'Pea gravel')).toBe('gravel');
  expect(hatch('wood-core-rotted', 'Wood core, well rotted')).toBe('wood');
});
