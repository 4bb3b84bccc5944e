import { expect, test } from 'vitest';
import {
  basinOfBed,
  fillFrom_m,
  formOfBed,
  outlineOfBed,
  requireBedSpec,
  withBedFields,
} from '../../../../planner/beds/bed-spec.ts';
import { bedWater_L, explainBedWater } from '../../../../planner/beds/bed-water.ts';
import { aBedSpec } from '../../../builders/a-bed-spec.ts';
import { refusals } from '../../../builders/faults-of.ts';

test('the outline from above, by shape', () => {
  const of = (changes: Parameters<typeof aBedSpec>[0]) => outlineOfBed(aBedSpec(changes));
  expect(of({})).toEqual({ shape: 'rectangle', length_m: 2, width_m: 1 });
  expect(of({ outline: 'oval' })).toEqual({ shape: 'oval', length_m: 2, width_m: 1 });
  expect(of({ outline: 'round' })).toEqual({ shape: 'round', diameter_m: 2 });
  expect(of({ outline: 'hexagon' })).toEqual({ shape: 'hexagon', acrossFlats_m: 1 });
  expect(of({ outline: 'half-ellipsoid' })).toEqual({ shape: 'ellipse', length_m: 2, width_m: 1 });
  expect(of({ outline: 'ridge' })).toEqual({ shape: 'rectangle', length_m: 2, width_m: 1 });
  const polygon_m = [
    [0, 0],
    [1, 0],
    [0, 1],
  ] as const;
  expect(of({ outline: 'polygon', polygon_m })).toEqual({ shape: 'polygon', vertices_m: polygon_m });
  expect(of({ outline: 'polygon' })).toEqual({ shape: 'polygon', vertices_m: [] });
});

test('walls lean where a size at the floor is given; the other stays as at the brim', () => {
  const bottom = (changes: Parameters<typeof aBedSpec>[0]) => {
    const form = formOfBed(aBedSpec(changes));
    return form.solid === 'tapered' ? form.bottom : form.solid;
  };
  expect(bottom({})).toBe('straight');
  expect(bottom({ bottomLength_m: 1.8 })).toEqual({ shape: 'rectangle', length_m: 1.8, width_m: 1 });
  expect(bottom({ outline: 'oval', bottomWidth_m: 0.8 })).toEqual({ shape: 'oval', length_m: 2, width_m: 0.8 });
  expect(bottom({ outline: 'round', bottomLength_m: 1.5 })).toEqual({ shape: 'round', diameter_m: 1.5 });
  expect(bottom({ outline: 'round', bottomWidth_m: 1.4 })).toEqual({ shape: 'round', diameter_m: 1.4 });
  expect(bottom({ outline: 'hexagon', bottomWidth_m: 0.7 })).toEqual({ shape: 'hexagon', acrossFlats_m: 0.7 });
  expect(bottom({ outline: 'hexagon', bottomLength_m: 0.6 })).toEqual({ shape: 'hexagon', acrossFlats_m: 0.6 });
  expect(
    bottom({
      outline: 'polygon',
      polygon_m: [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
      bottomWidth_m: 0.5,
    }),
  ).toBe('straight');
  expect(bottom({ outline: 'half-ellipsoid' })).toBe('half-ellipsoid');
});

test('a ridge is as wide at its crown as told, else half its foot; its ends slope as its sides', () => {
  expect(formOfBed(aBedSpec({ outline: 'ridge' }))).toEqual({
    solid: 'ridge',
    length_m: 2,
    width_m: 1,
    crownWidth_m: 0.5,
    crownLength_m: 1.5,
    depth_m: 0.4,
  });
  expect(formOfBed(aBedSpec({ outline: 'ridge', topWidth_m: 0.2 }))).toMatchObject({ crownWidth_m: 0.2, crownLength_m: 1.2 });
  expect(formOfBed(aBedSpec({ outline: 'ridge', length_m: 1, width_m: 2, topWidth_m: 0.5 }))).toMatchObject({ crownLength_m: 0 });
});

test('a basin has the bag’s shape and stands upright; one length makes it as wide as long', () => {
  const basin = { watering: 'basin', basinLength_m: 1.2, basinDepth_m: 0.15 } as const;
  const outline = (changes: Parameters<typeof aBedSpec>[0]) => {
    const form = basinOfBed(aBedSpec({ ...basin, ...changes }));
    return form?.solid === 'straight' ? [form.outline, form.depth_m] : undefined;
  };
  expect(outline({ outline: 'round' })).toEqual([{ shape: 'round', diameter_m: 1.2 }, 0.15]);
  expect(outline({ outline: 'round', basinWidth_m: 1 })).toEqual([{ shape: 'rectangle', length_m: 1.2, width_m: 1 }, 0.15]);
  expect(outline({ outline: 'oval', basinWidth_m: 1 })).toEqual([{ shape: 'oval', length_m: 1.2, width_m: 1 }, 0.15]);
  expect(outline({})).toEqual([{ shape: 'rectangle', length_m: 1.2, width_m: 1.2 }, 0.15]);
  expect(outline({ watering: 'top' })).toBeUndefined();
  expect(outline({ basinDepth_m: null })).toBeUndefined();
  expect(outline({ basinLength_m: null })).toBeUndefined();
});

test('the fill begins at the floor among gravel, and above a void former', () => {
  const reservoir = { watering: 'reservoir', reservoirDepth_m: 0.15 } as const;
  expect(fillFrom_m(aBedSpec({ ...reservoir, reservoirVoid_share: 0.4 }))).toBe(0);
  expect(fillFrom_m(aBedSpec({ ...reservoir, reservoirVoid_share: 0.8 }))).toBe(0.15);
  expect(fillFrom_m(aBedSpec({ ...reservoir, watering: 'top', reservoirVoid_share: 0.95 }))).toBe(0);
  expect(fillFrom_m(aBedSpec({ watering: 'reservoir' }))).toBe(0);
});

test('water of a bed: of its basin round the bag, of its reservoir below the overflow, else none', () => {
  const reservoir = { watering: 'reservoir', reservoirDepth_m: 0.15, reservoirVoid_share: 0.4 } as const;
  expect(bedWater_L(aBedSpec())).toBe(0);
  expect(bedWater_L(aBedSpec({ ...reservoir, watering: 'top' }))).toBe(0);
  expect(explainBedWater(aBedSpec())).toBeUndefined();
  // no overflow told: the reservoir fills to its own depth
  expect(bedWater_L(aBedSpec(reservoir))).toBeCloseTo(2 * 0.15 * 0.4 * 1000, 9);
  expect(bedWater_L(aBedSpec({ ...reservoir, overflow_m: 0.1 }))).toBeCloseTo(80, 9);
  expect(explainBedWater(aBedSpec({ ...reservoir, overflow_m: 0.1 }))?.result.value).toBeCloseTo(80, 9);
  const basin = { watering: 'basin', basinLength_m: 2.2, basinWidth_m: 1.2, basinDepth_m: 0.2 } as const;
  // no level told: the basin stands full
  expect(bedWater_L(aBedSpec(basin))).toBeCloseTo((2.2 * 1.2 - 2) * 200, 6);
  expect(bedWater_L(aBedSpec({ ...basin, basinFill_m: 0.1 }))).toBeCloseTo(64, 6);
  expect(explainBedWater(aBedSpec({ ...basin, basinFill_m: 0.1 }))?.result.value).toBeCloseTo(64, 6);
  const tooFull = () => bedWater_L(aBedSpec({ ...basin, basinFill_m: 0.3 }));
  expect(refusals(tooFull)).toEqual(['basinFill_m too-large']);
  expect(refusals(() => bedWater_L(aBedSpec({ ...basin, basinLength_m: 1.5 })))).toEqual(['basinLength_m too-wide']);
  expect(refusals(() => bedWater_L(aBedSpec({ ...reservoir, reservoirVoid_share: 1.2 })))).toEqual([
    'reservoirVoid_share too-large (1)',
  ]);
});

test('all faults of a bed at once, each told once; what is no fault of an entry goes through', () => {
  expect(refusals(() => requireBedSpec(aBedSpec()))).toEqual([]);
  expect(
    refusals(() => requireBedSpec(aBedSpec({ length_m: 0, fillDepth_m: 0.5, watering: 'basin', basinDepth_m: 0.1 }))),
  ).toEqual([
    'length_m not-positive (0 m)',
    'length_m too-small (0.05 m)',
    'fillDepth_m too-large',
    'basinLength_m not-a-number',
  ]);
  expect(() =>
    withBedFields(() => {
      throw new RangeError('other');
    }),
  ).toThrow(RangeError);
  // the sentence, too, names the field that was entered
  expect(() => requireBedSpec(aBedSpec({ outline: 'round', length_m: 0 }))).toThrow('length_m: 0 m will not do');
});
