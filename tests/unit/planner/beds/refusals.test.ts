import { describe } from 'vitest';
import { basinWater_L, requireFits } from '../../../../planner/beds/basin-water.ts';
import { requireBedSpec } from '../../../../planner/beds/bed-spec.ts';
import { containerClass } from '../../../../planner/beds/container-class.ts';
import {
  moistDensity_kg_per_m3,
  particleDensity_kg_per_m3,
  porosity,
  sliceDensity_kg_per_m3,
  totalPorosity,
  weighedDensity_kg_per_m3,
  wetDensity_kg_per_m3,
} from '../../../../planner/beds/density.ts';
import { bestInDisc } from '../../../../planner/beds/disc-lattice.ts';
import { floorLoad_kg_per_m2, isWithinFloorLimit } from '../../../../planner/beds/floor-load.ts';
import { footprint_m2 } from '../../../../planner/beds/footprint.ts';
import { type BedForm, requireForm } from '../../../../planner/beds/form.ts';
import { plantsForArea, rowPitch_m, unboundedDensity_per_m2 } from '../../../../planner/beds/lattice.ts';
import { codesFrom, layOutBeds } from '../../../../planner/beds/lay-out.ts';
import { moundSurface_m2 } from '../../../../planner/beds/mound-surface.ts';
import { mostCircles, packingBound, packingRadiusRatio } from '../../../../planner/beds/packing-bound.ts';
import { partDue } from '../../../../planner/beds/part-life.ts';
import { plantsInBed } from '../../../../planner/beds/plant-count.ts';
import { bedRows, plantsInRow } from '../../../../planner/beds/plants-in-row.ts';
import { squareInRectangle } from '../../../../planner/beds/rectangle-lattice.ts';
import { remainingValue_minor } from '../../../../planner/beds/remaining-value.ts';
import { reservoirWater_L } from '../../../../planner/beds/reservoir-water.ts';
import { degreesOfPlace, placeOfDegrees } from '../../../../planner/beds/site-coordinates.ts';
import { heightHolding_m, volumeBetween_L, volumeTo_L } from '../../../../planner/beds/volume.ts';
import { wallArea_m2 } from '../../../../planner/beds/wall-area.ts';
import { weedBarrier } from '../../../../planner/beds/weed-barrier.ts';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { aBedSpec } from '../../../builders/a-bed-spec.ts';
import { testRefusals } from '../../../builders/faults-of.ts';

const rectangle = { shape: 'rectangle', length_m: 2, width_m: 1 } as const;
const box: BedForm = { solid: 'straight', outline: rectangle, depth_m: 0.4 };
const round = (diameter_m: number) => ({ shape: 'round', diameter_m }) as const;
const ridge = { solid: 'ridge', length_m: 4, width_m: 1.5, crownLength_m: 3, crownWidth_m: 0.5, depth_m: 0.4 } as const;
const leaning = (bottom_m: number): BedForm => ({ solid: 'tapered', outline: round(0.6), bottom: round(bottom_m), depth_m: 0.4 });

describe('forms and outlines', () => {
  const triangle = {
    shape: 'polygon',
    vertices_m: [
      [0, 0],
      [2, 0],
      [0, 1],
    ],
  } as const;
  const square = {
    shape: 'polygon',
    vertices_m: [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ],
  } as const;
  testRefusals([
    ['depth_m not-positive (0 m)', () => requireForm({ ...box, depth_m: 0 })],
    ['diameter_m not-positive (0 m)', () => footprint_m2(round(0))],
    ['acrossFlats_m not-positive (0 m)', () => footprint_m2({ shape: 'hexagon', acrossFlats_m: 0 })],
    ['length_m not-positive (0 m)', () => footprint_m2({ ...rectangle, length_m: 0 })],
    ['width_m not-positive (0 m)', () => footprint_m2({ ...rectangle, width_m: 0 })],
    ['width_m too-large', () => footprint_m2({ shape: 'oval', length_m: 1, width_m: 2 })],
    [
      'vertices_m too-few',
      () =>
        footprint_m2({
          shape: 'polygon',
          vertices_m: [
            [0, 0],
            [1, 1],
          ],
        }),
    ],
    [
      'vertices_m.1 not-a-number',
      () =>
        footprint_m2({
          shape: 'polygon',
          vertices_m: [
            [0, 0],
            [Number.NaN, 1],
            [0, 1],
          ],
        }),
    ],
    [
      'vertices_m crosses-itself',
      () =>
        footprint_m2({
          shape: 'polygon',
          vertices_m: [
            [0, 0],
            [1, 1],
            [1, 0],
            [0, 1],
          ],
        }),
    ],
    [
      'vertices_m no-area',
      () =>
        footprint_m2({
          shape: 'polygon',
          vertices_m: [
            [0, 0],
            [1, 1],
            [2, 2],
          ],
        }),
    ],
    ['bottom.diameter_m not-positive (0 m)', () => requireForm(leaning(0))],
    ['bottom.diameter_m too-large', () => requireForm(leaning(0.7))],
    ['bottom.shape other-shape', () => requireForm({ solid: 'tapered', outline: round(1), bottom: rectangle, depth_m: 1 })],
    ['bottom.vertices_m other-count', () => requireForm({ solid: 'tapered', outline: square, bottom: triangle, depth_m: 1 })],
    ['length_m not-positive (0 m)', () => requireForm({ ...ridge, length_m: 0 })],
    ['width_m not-positive (0 m)', () => requireForm({ ...ridge, width_m: 0 })],
    ['crownWidth_m out-of-range', () => requireForm({ ...ridge, crownWidth_m: 1.6 })],
    ['crownWidth_m out-of-range', () => requireForm({ ...ridge, crownWidth_m: -0.1 })],
    ['crownLength_m out-of-range', () => requireForm({ ...ridge, crownLength_m: 4.1 })],
    ['crownLength_m out-of-range', () => requireForm({ ...ridge, crownLength_m: -0.1 })],
    ['length_m not-positive (0 m)', () => requireForm({ solid: 'cone', length_m: 0, width_m: 1, depth_m: 1 })],
    ['width_m not-positive (0 m)', () => requireForm({ solid: 'cone', length_m: 1, width_m: 0, depth_m: 1 })],
    ['solid no-wall', () => wallArea_m2(ridge)],
  ]);
});

describe('volumes and water', () => {
  const basin: BedForm = { solid: 'straight', outline: round(1), depth_m: 0.2 };
  const bag = leaning(0.5);
  testRefusals([
    ['from_m too-small (0 m)', () => volumeBetween_L(box, -0.1, 0.2)],
    ['to_m too-small (0.2 m)', () => volumeBetween_L(box, 0.2, 0.1)],
    ['fillDepth_m too-large', () => volumeTo_L(box, 0.5)],
    ['volume_L too-small (0 L)', () => heightHolding_m(box, -1)],
    ['level_m too-large', () => basinWater_L({ basin, bag, level_m: 0.3 })],
    ['level_m too-small (0 m)', () => basinWater_L({ basin, bag, level_m: -0.1 })],
    ['bag too-wide', () => requireFits({ basin: { ...basin, outline: round(0.5) }, bag })],
    ['bag too-wide', () => requireFits({ basin: { ...basin, outline: { ...rectangle, width_m: 0.5 } }, bag })],
    ['voidShare no-void', () => reservoirWater_L({ bed: box, overflow_m: 0.1, voidShare: 0 })],
    ['voidShare too-large (1)', () => reservoirWater_L({ bed: box, overflow_m: 0.1, voidShare: 1.1 })],
    ['overflow_m too-large', () => reservoirWater_L({ bed: box, overflow_m: 0.5, voidShare: 0.4 })],
    ['overflow_m too-small (0 m)', () => reservoirWater_L({ bed: box, overflow_m: -0.1, voidShare: 0.4 })],
    ['width_m too-large', () => weedBarrier({ outline: { shape: 'oval', length_m: 1, width_m: 2 }, reach_m: 0, overlap_m: 0 })],
    ['reach_m too-large (2 m)', () => weedBarrier({ outline: rectangle, reach_m: 3, overlap_m: 0 })],
    ['overlap_m too-small (0 m)', () => weedBarrier({ outline: rectangle, reach_m: 0, overlap_m: -0.1 })],
    ['roll_m not-positive (0 m)', () => weedBarrier({ outline: rectangle, reach_m: 0, overlap_m: 0, roll_m: 0 })],
    ['overlap_m too-large', () => weedBarrier({ outline: rectangle, reach_m: 0, overlap_m: 1, roll_m: 1 })],
  ]);
});

describe('densities', () => {
  testRefusals([
    ['dry_kg_per_m3 too-large (2600 kg/m3)', () => wetDensity_kg_per_m3(2700, 0)],
    ['waterShare too-large (1)', () => wetDensity_kg_per_m3(1000, 1.1)],
    ['dry_kg_per_m3 not-positive (0 kg/m3)', () => moistDensity_kg_per_m3(0, 0.2)],
    ['moistureShare too-large (0.98)', () => moistDensity_kg_per_m3(500, 1)],
    ['particle_kg_per_m3 not-positive (0 kg/m3)', () => porosity(0, 0)],
    ['dry_kg_per_m3 too-large (2650 kg/m3)', () => porosity(2700)],
    ['airShare too-large (1)', () => totalPorosity(1.1, 0)],
    ['capacityShare too-large (0.800000001)', () => totalPorosity(0.2, 0.9)],
    ['organicShare too-large (1)', () => particleDensity_kg_per_m3(1.5)],
    ['net_kg not-positive (0 kg)', () => weighedDensity_kg_per_m3(0, 1)],
    ['volume_L not-positive (0 L)', () => weighedDensity_kg_per_m3(1, 0)],
    ['mass_kg_per_m2 not-positive (0 kg/m2)', () => sliceDensity_kg_per_m3(0, 0.2)],
    ['depth_m not-positive (0 m)', () => sliceDensity_kg_per_m3(200, 0)],
    ['limit_kg_per_m2 not-positive (0 kg/m2)', () => isWithinFloorLimit(100, 0)],
    ['layers.0.depth_m too-large (5 m)', () => floorLoad_kg_per_m2({ layers: [{ depth_m: 6, density_kg_per_m3: 1000 }] })],
    [
      'layers.0.density_kg_per_m3 not-positive (0 kg/m3)',
      () => floorLoad_kg_per_m2({ layers: [{ depth_m: 1, density_kg_per_m3: 0 }] }),
    ],
    ['tare_kg_per_m2 too-small (0 kg/m2)', () => floorLoad_kg_per_m2({ layers: [], tare_kg_per_m2: -1 })],
    ['plants_kg_per_m2 too-small (0 kg/m2)', () => floorLoad_kg_per_m2({ layers: [], plants_kg_per_m2: -1 })],
    ['water_kg_per_m2 too-large (10000 kg/m2)', () => floorLoad_kg_per_m2({ layers: [], water_kg_per_m2: 10_001 })],
  ]);
});

describe('plants', () => {
  const spacing = { pattern: 'square', spacing_m: 0.3 } as const;
  const rows = { pattern: 'rows', rowSpacing_m: 0.3, inRow_m: 0.1 } as const;
  const disc = { diameter_m: 1, spacing_m: 0.2, lattice: 'square' } as const;
  const inRectangle = { length_m: 2, width_m: 1, spacing_m: 0.3 };
  testRefusals([
    ['edgeMargin_m too-small (0 m)', () => plantsInBed({ outline: rectangle, spacing, edgeMargin_m: -0.1 })],
    ['spacing_m not-positive (0 m)', () => plantsInBed({ outline: rectangle, spacing: { ...spacing, spacing_m: 0 } })],
    ['spacing_m too-small', () => plantsInBed({ outline: rectangle, spacing: { ...spacing, spacing_m: 0.003 } })],
    ['inRow_m not-positive (0 m)', () => plantsInBed({ outline: rectangle, spacing: { ...rows, inRow_m: 0 } })],
    ['rowSpacing_m not-positive (0 m)', () => plantsInBed({ outline: rectangle, spacing: { ...rows, rowSpacing_m: 0 } })],
    ['inRow_m too-small', () => plantsInBed({ outline: rectangle, spacing: { ...rows, inRow_m: 0.00001 } })],
    ['diameter_m not-positive (0 m)', () => bestInDisc({ ...disc, diameter_m: 0 })],
    ['spacing_m not-positive (0 m)', () => bestInDisc({ ...disc, spacing_m: 0 })],
    ['edgeMargin_m too-small (0 m)', () => bestInDisc({ ...disc, edgeMargin_m: -0.1 })],
    ['length_m not-positive (0 m)', () => squareInRectangle({ ...inRectangle, length_m: 0 })],
    ['width_m not-positive (0 m)', () => squareInRectangle({ ...inRectangle, width_m: 0 })],
    ['spacing_m not-positive (0 m)', () => squareInRectangle({ ...inRectangle, spacing_m: 0 })],
    ['edgeMargin_m too-small (0 m)', () => squareInRectangle({ ...inRectangle, edgeMargin_m: -1 })],
    ['length_m too-small (0 m)', () => plantsInRow({ length_m: -1, spacing_m: 0.1, endMargin_m: 0 })],
    ['spacing_m not-positive (0 m)', () => plantsInRow({ length_m: 1, spacing_m: 0, endMargin_m: 0 })],
    ['endMargin_m too-small (0 m)', () => plantsInRow({ length_m: 1, spacing_m: 0.1, endMargin_m: -1 })],
    ['width_m too-small (0 m)', () => bedRows({ length_m: 1, width_m: -1, rowSpacing_m: 0.3, inRow_m: 0.1 })],
    ['rowSpacing_m not-positive (0 m)', () => bedRows({ length_m: 1, width_m: 1, rowSpacing_m: 0, inRow_m: 0.1 })],
    ['circles too-large (65)', () => packingRadiusRatio(66)],
    ['circles not-whole', () => packingRadiusRatio(1.5)],
    ['ratio not-positive (0)', () => mostCircles(0)],
    ['spacing_m not-positive (0 m)', () => packingBound(rectangle, 0)],
    ['length_m not-positive (0 m)', () => moundSurface_m2({ length_m: 0, width_m: 1, height_m: 1 })],
    ['width_m not-positive (0 m)', () => moundSurface_m2({ length_m: 1, width_m: 0, height_m: 1 })],
    ['height_m not-positive (0 m)', () => moundSurface_m2({ length_m: 1, width_m: 1, height_m: 0 })],
    ['spacing_m not-positive (0 m)', () => rowPitch_m('square', 0)],
    ['spacing_m not-positive (0 m)', () => unboundedDensity_per_m2('square', 0)],
    ['area_m2 not-positive (0 m2)', () => plantsForArea(0, 1, 1)],
    ['inRow_m not-positive (0 m)', () => plantsForArea(1, 0, 1)],
    ['rowSpacing_m not-positive (0 m)', () => plantsForArea(1, 1, 0)],
  ]);
});

describe('the site', () => {
  const rows = {
    count: 4,
    perRow: 2,
    length_m: 2,
    width_m: 1,
    endPath_m: 0.5,
    sidePath_m: 0.5,
    first_m: [0, 0],
    turn_deg: 0,
  } as const;
  const zero = { latitude_deg: 47.6, longitude_deg: -122.3 };
  const date = '2026-03-01' as IsoDate;
  testRefusals([
    ['count too-small (1)', () => layOutBeds({ ...rows, count: 0 })],
    ['perRow not-whole', () => layOutBeds({ ...rows, perRow: 1.5 })],
    ['length_m not-positive (0 m)', () => layOutBeds({ ...rows, length_m: 0 })],
    ['width_m not-positive (0 m)', () => layOutBeds({ ...rows, width_m: 0 })],
    ['endPath_m too-large (100 m)', () => layOutBeds({ ...rows, endPath_m: 101 })],
    ['sidePath_m too-large (100 m)', () => layOutBeds({ ...rows, sidePath_m: 101 })],
    ['turn_deg too-large (360 °)', () => layOutBeds({ ...rows, turn_deg: 361 })],
    ['count too-large (2000)', () => codesFrom('A-1', 2001, new Set())],
    ['firstCode empty', () => codesFrom('x'.repeat(41), 1, new Set())],
    ['latitude_deg too-large (85 °)', () => degreesOfPlace({ ...zero, latitude_deg: 86 }, 0, 0)],
    ['longitude_deg too-large (180 °)', () => placeOfDegrees(zero, 181, 47)],
    ['latitude_deg too-large (90 °)', () => placeOfDegrees(zero, -122, 91)],
    ['life_years not-positive (0 years)', () => partDue(date, 0)],
    ['life_years not-positive (0 years)', () => remainingValue_minor(100, 0, date, date)],
    ['containerClass unknown-class', () => containerClass('#4')],
  ]);
});

describe('a bed as entered: every fault at its own field', () => {
  const basin = { watering: 'basin', basinLength_m: 2.2, basinWidth_m: 1.2, basinDepth_m: 0.2 } as const;
  const reservoir = { watering: 'reservoir', reservoirDepth_m: 0.15, reservoirVoid_share: 0.4 } as const;
  const round_m = { outline: 'round', length_m: 1, width_m: 1 } as const;
  testRefusals([
    ['length_m too-large (500 m)', () => requireBedSpec(aBedSpec({ length_m: 501 }))],
    ['width_m too-small (0.05 m)', () => requireBedSpec(aBedSpec({ width_m: 0.01 }))],
    ['depth_m too-large (5 m)', () => requireBedSpec(aBedSpec({ depth_m: 6 }))],
    ['fillDepth_m too-small (0 m)', () => requireBedSpec(aBedSpec({ fillDepth_m: -0.1 }))],
    ['fillDepth_m too-large', () => requireBedSpec(aBedSpec({ fillDepth_m: 0.41 }))],
    ['bottomLength_m too-large', () => requireBedSpec(aBedSpec({ bottomLength_m: 2.5 }))],
    ['bottomWidth_m too-large', () => requireBedSpec(aBedSpec({ bottomWidth_m: 1.5 }))],
    ['bottomLength_m too-large', () => requireBedSpec(aBedSpec({ ...round_m, bottomLength_m: 1.5 }))],
    ['bottomWidth_m too-large', () => requireBedSpec(aBedSpec({ outline: 'hexagon', bottomWidth_m: 1.5 }))],
    ['topWidth_m out-of-range', () => requireBedSpec(aBedSpec({ outline: 'ridge', topWidth_m: 1.5 }))],
    ['polygon_m too-few', () => requireBedSpec(aBedSpec({ outline: 'polygon' }))],
    [
      'polygon_m.0 not-a-number',
      () =>
        requireBedSpec(
          aBedSpec({
            outline: 'polygon',
            polygon_m: [
              [Number.NaN, 0],
              [1, 0],
              [0, 1],
            ],
          }),
        ),
    ],
    ['basinLength_m not-a-number', () => requireBedSpec(aBedSpec({ ...basin, basinLength_m: null }))],
    ['basinDepth_m not-a-number', () => requireBedSpec(aBedSpec({ ...basin, basinDepth_m: null }))],
    ['basinDepth_m not-positive (0 m)', () => requireBedSpec(aBedSpec({ ...basin, basinDepth_m: 0 }))],
    ['basinLength_m not-positive (0 m)', () => requireBedSpec(aBedSpec({ ...basin, basinLength_m: 0 }))],
    ['reservoirDepth_m not-a-number', () => requireBedSpec(aBedSpec({ ...reservoir, reservoirDepth_m: null }))],
    ['reservoirDepth_m not-positive (0 m)', () => requireBedSpec(aBedSpec({ ...reservoir, reservoirDepth_m: 0 }))],
    ['reservoirVoid_share not-a-number', () => requireBedSpec(aBedSpec({ ...reservoir, reservoirVoid_share: null }))],
    ['reservoirVoid_share not-positive (0)', () => requireBedSpec(aBedSpec({ ...reservoir, reservoirVoid_share: 0 }))],
    ['reservoirDepth_m too-large (0.4 m)', () => requireBedSpec(aBedSpec({ ...reservoir, reservoirDepth_m: 0.5 }))],
  ]);
});
