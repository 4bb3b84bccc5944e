import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alignBeds, type Placed, snapMove, spaceEvenly, turnedBox } from '../../../../planner/beds/arrange.ts';
import { codesFrom, layOutBeds } from '../../../../planner/beds/lay-out.ts';
import { partDue } from '../../../../planner/beds/part-life.ts';
import { degreesOfPlace, placeOfDegrees } from '../../../../planner/beds/site-coordinates.ts';
import type { IsoDate } from '../../../../planner/calendar.ts';
import type { MaterialId } from '../../../../planner/ids.ts';
import { dismantleYield } from '../../../../planner/soil/dismantle.ts';

const bed = (bedId: string, x_m: number, y_m: number, halfX_m = 1, halfY_m = 0.5): Placed => ({
  bedId,
  x_m,
  y_m,
  halfX_m,
  halfY_m,
});

test('codes count on with as many digits and pass over those in use', () => {
  expect(codesFrom('C-01', 3, new Set(['C-02']))).toEqual(['C-01', 'C-03', 'C-04']);
  expect(codesFrom('Row 9 east', 2, new Set())).toEqual(['Row 9 east', 'Row 10 east']);
  expect(codesFrom('North', 2, new Set())).toEqual(['North-01', 'North-02']);
  expect(() => codesFrom(' ', 1, new Set())).toThrow(/first code/);
});

test('forty beds in rows keep their paths, however the rows are turned', () => {
  const size = { count: 40, perRow: 10, length_m: 2.4, width_m: 1.2, endPath_m: 0.6, sidePath_m: 0.45, first_m: [3, 4] } as const;
  fc.assert(
    fc.property(fc.double({ min: -180, max: 180, noNaN: true }), (turn_deg) => {
      const beds = layOutBeds({ ...size, turn_deg });
      const [a, b, next] = [beds[0], beds[1], beds[10]];
      expect(beds).toHaveLength(40);
      expect(Math.hypot((b?.x_m ?? 0) - (a?.x_m ?? 0), (b?.y_m ?? 0) - (a?.y_m ?? 0))).toBeCloseTo(3, 9);
      expect(Math.hypot((next?.x_m ?? 0) - (a?.x_m ?? 0), (next?.y_m ?? 0) - (a?.y_m ?? 0))).toBeCloseTo(1.65, 9);
    }),
  );
  expect(() => layOutBeds({ ...size, count: 0, turn_deg: 0 })).toThrow(/count/);
});

describe('arranging', () => {
  test('aligns edges, not middles', () => {
    const moved = alignBeds([bed('a', 0, 0), bed('b', 5, 1, 2)], 'west');
    expect(moved).toEqual([
      { bedId: 'a', x_m: 0, y_m: 0 },
      { bedId: 'b', x_m: 1, y_m: 1 },
    ]);
  });
  test('spacing evenly leaves the outermost and makes all paths equal', () => {
    const beds = [bed('a', 0, 0), bed('b', 3, 0, 0.5), bed('c', 10, 0)];
    const moved = new Map(spaceEvenly(beds, 'x').map((each) => [each.bedId, each.x_m]));
    expect(moved.get('a')).toBeCloseTo(0, 9);
    expect(moved.get('c')).toBeCloseTo(10, 9);
    expect((moved.get('b') ?? 0) - 0.5 - 1).toBeCloseTo(10 - 1 - ((moved.get('b') ?? 0) + 0.5), 9);
  });
  test('a bed near a neighbour’s edge is drawn to it, else to the grid', () => {
    expect(snapMove(bed('a', 5.06, 3.3), [bed('b', 3, 9)], 0.1, 0.5)).toMatchObject({ lineX_m: 4, lineY_m: null });
    expect(snapMove(bed('a', 5.06, 3.3), [bed('b', 3, 9)], 0.1, 0.5).dx_m).toBeCloseTo(-0.06, 9);
    expect(snapMove(bed('a', 5.06, 3.3), [bed('b', 3, 9)], 0.1, 0.5).dy_m).toBeCloseTo(0.2, 9);
    expect(snapMove(bed('a', 5.3, 3.3), [], 0.1, null)).toMatchObject({ dx_m: 0, dy_m: 0 });
  });
  test('a quarter turn swaps the sides of the box', () => {
    const box = turnedBox(2.4, 1.2, 90);
    expect(box.halfX_m).toBeCloseTo(0.6, 9);
    expect(box.halfY_m).toBeCloseTo(1.2, 9);
  });
});

test('a place goes to degrees and back within a centimetre', () => {
  const origin = { latitude_deg: 47.6, longitude_deg: -122.3 };
  const metres = fc.double({ min: -500, max: 500, noNaN: true });
  fc.assert(
    fc.property(metres, metres, (x_m, y_m) => {
      const [longitude_deg, latitude_deg] = degreesOfPlace(origin, x_m, y_m);
      const [x, y] = placeOfDegrees(origin, longitude_deg, latitude_deg);
      expect(Math.hypot(x - x_m, y - y_m)).toBeLessThan(0.012);
    }),
  );
});

test('what a bed gives back is less what has sunk and was lost, more by its swell', () => {
  const soil = 'soil' as MaterialId;
  const won = dismantleYield({
    layers: [
      { materialId: soil, settled_L: 1000, swellShare: 0.2 },
      { materialId: soil, settled_L: 500, swellShare: 0 },
    ],
    sunkShare: 0.1,
    lossShare: 0.1,
  });
  expect(won.get(soil)).toBeCloseTo(1000 * 0.9 * 1.2 * 0.9 + 500 * 0.81, 9);
});

test('a part is due when its years have gone', () => {
  expect(partDue('2024-03-01' as IsoDate, 8)).toBe('2032-03-01');
});
