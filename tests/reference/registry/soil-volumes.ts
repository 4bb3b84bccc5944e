import { basinWater_L } from '../../../planner/beds/basin-water.ts';
import { classOfVolume } from '../../../planner/beds/container-class.ts';
import { footprint_m2, hexagonSide_m } from '../../../planner/beds/footprint.ts';
import type { BedForm } from '../../../planner/beds/form.ts';
import { moundSurface_m2 } from '../../../planner/beds/mound-surface.ts';
import type { Outline, Point } from '../../../planner/beds/outline.ts';
import { fullVolume_L, heightHolding_m, volumeBetween_L, volumeTo_L } from '../../../planner/beds/volume.ts';
import { areaCovered_m2, volumeToCover_L } from '../../../planner/soil/spread.ts';
import {
  coneHeight_m,
  diameterFromGirth_m,
  heapVolume_m3,
  heightByBoard_m,
  type WindrowSection,
  windrowSite_m3,
} from '../../../planner/soil/stockpile.ts';
import { convert } from '../../../planner/units/convert.ts';
import { forEach } from '../for-each.ts';
import type { Registry } from '../registry.ts';
import { L, m, round, type Sized, straight, volumes } from './soil-case-units.ts';

type Taper = {
  readonly top_length_m: number;
  readonly top_width_m: number;
  readonly bottom_length_m: number;
  readonly bottom_width_m: number;
  readonly depth_m: number;
};

export const soilVolumes: Registry = {
  'soil.vol-01': forEach(({ diameter_in, height_in }: { diameter_in: number; height_in: number }) =>
    volumes(fullVolume_L(straight(round(m(diameter_in, 'in')), m(height_in, 'in'))), ['volume_in3']),
  ),
  'soil.vol-02': forEach(({ base_diameter_in, height_in }: { base_diameter_in: number; height_in: number }) => {
    const cone = heapVolume_m3({ shape: 'cone', diameter_m: m(base_diameter_in, 'in'), height_m: m(height_in, 'in') });
    return volumes(L(cone, 'm3'), ['volume_in3']);
  }),
  'soil.vol-03': forEach(({ volume_yd3, depth_in }: { volume_yd3: number; depth_in: number }) => ({
    area_ft2: convert(areaCovered_m2(L(volume_yd3, 'yd3'), m(depth_in, 'in')), 'm2', 'ft2'),
  })),
  'soil.vol-04': forEach(({ area_ft2, depth_in }: { area_ft2: number; depth_in: number }) =>
    volumes(volumeToCover_L(convert(area_ft2, 'ft2', 'm2'), m(depth_in, 'in')), ['volume_yd3']),
  ),
  'soil.vol-05': forEach((bed: { length_ft: number; width_ft: number; depth_in: number }) => {
    const outline: Outline = { shape: 'rectangle', length_m: m(bed.length_ft, 'ft'), width_m: m(bed.width_ft, 'ft') };
    return volumes(fullVolume_L(straight(outline, m(bed.depth_in, 'in'))), ['volume_ft3', 'volume_yd3', 'volume_l']);
  }),
  'soil.vol-06': forEach(
    (site: { windrow_height_ft: number; windrow_width_ft: number; aisle_width_ft: number; site_area_ft2: number }) => {
      const capacity_m3 = windrowSite_m3({
        siteArea_m2: convert(site.site_area_ft2, 'ft2', 'm2'),
        width_m: m(site.windrow_width_ft, 'ft'),
        height_m: m(site.windrow_height_ft, 'ft'),
        aisle_m: m(site.aisle_width_ft, 'ft'),
        section: 'semicircle',
      });
      return volumes(L(capacity_m3, 'm3'), ['volume_yd3']);
    },
  ),
  'soil.vol-07': forEach((pile: { board_length_m: number; rise_m: number; slope_length_m: number }) => ({
    pile_height_m: heightByBoard_m({ board_m: pile.board_length_m, rise_m: pile.rise_m, stretch_m: pile.slope_length_m }),
  })),
  'soil.vol-08': forEach(({ circumference_m }: { circumference_m: number }) => ({
    diameter_m: diameterFromGirth_m(circumference_m),
  })),
  'soil.vol-09': forEach(({ diameter_in, fill_depth_in }: { diameter_in: number; fill_depth_in: number }) =>
    volumes(fullVolume_L(straight(round(m(diameter_in, 'in')), m(fill_depth_in, 'in'))), [
      'volume_in3',
      'volume_l',
      'volume_us_gal',
      'volume_ft3',
    ]),
  ),
  'soil.vol-10': forEach((pot: { top_diameter_in: number; bottom_diameter_in: number; height_in: number }) => {
    const volume_L = fullVolume_L({
      solid: 'tapered',
      outline: round(m(pot.top_diameter_in, 'in')),
      bottom: round(m(pot.bottom_diameter_in, 'in')),
      depth_m: m(pot.height_in, 'in'),
    });
    const found = classOfVolume(convert(volume_L, 'L', 'in3'));
    return { ...volumes(volume_L, ['volume_in3', 'volume_l']), container_class: found === undefined ? null : found.name };
  }),
  'soil.vol-11': forEach((bed: { length_ft: number; width_ft: number; depth_ft: number }) => {
    const outline: Outline = { shape: 'oval', length_m: m(bed.length_ft, 'ft'), width_m: m(bed.width_ft, 'ft') };
    const volume_L = fullVolume_L(straight(outline, m(bed.depth_ft, 'ft')));
    return {
      area_ft2: convert(footprint_m2(outline), 'm2', 'ft2'),
      ...volumes(volume_L, ['volume_ft3', 'volume_us_gal', 'volume_l']),
    };
  }),
  // cases of this name are ovals unless they say rectangular
  'soil.vol-12': forEach((trough: Taper, what) => {
    const shape = /rectang/i.test(what) ? 'rectangle' : 'oval';
    return volumes(
      fullVolume_L({
        solid: 'tapered',
        outline: { shape, length_m: trough.top_length_m, width_m: trough.top_width_m },
        bottom: { shape, length_m: trough.bottom_length_m, width_m: trough.bottom_width_m },
        depth_m: trough.depth_m,
      }),
      ['volume_l'],
    );
  }),
  'soil.vol-13': forEach(({ across_flats_ft, depth_in }: { across_flats_ft: number; depth_in: number }) => {
    const outline: Outline = { shape: 'hexagon', acrossFlats_m: m(across_flats_ft, 'ft') };
    return {
      area_ft2: convert(footprint_m2(outline), 'm2', 'ft2'),
      side_ft: convert(hexagonSide_m(outline.acrossFlats_m), 'm', 'ft'),
      ...volumes(fullVolume_L(straight(outline, m(depth_in, 'in'))), ['volume_ft3']),
    };
  }),
  // cases of this name are half-ellipsoids unless they say paraboloid
  'soil.vol-15': forEach((mound: Sized, what) => ({
    volume_m3: heapVolume_m3({ ...mound, shape: /paraboloid/i.test(what) ? 'paraboloid' : 'half-ellipsoid' }),
  })),
  'soil.vol-17': forEach(({ base_diameter_ft, repose_deg }: { base_diameter_ft: number; repose_deg: number }) => {
    const diameter_m = m(base_diameter_ft, 'ft');
    const height_m = coneHeight_m(diameter_m, repose_deg);
    return {
      height_ft: convert(height_m, 'm', 'ft'),
      ...volumes(L(heapVolume_m3({ shape: 'cone', diameter_m, height_m }), 'm3'), ['volume_yd3']),
    };
  }),
  'soil.vol-18': forEach((pile: { base_length_ft: number; base_width_ft: number; height_ft: number }) => {
    const volume_m3 = heapVolume_m3({
      shape: 'windrow',
      section: 'triangle',
      coneEnds: true,
      length_m: m(pile.base_length_ft, 'ft'),
      width_m: m(pile.base_width_ft, 'ft'),
      height_m: m(pile.height_ft, 'ft'),
    });
    return volumes(L(volume_m3, 'm3'), ['volume_ft3', 'volume_yd3']);
  }),
  'soil.vol-19': forEach((pile: { base_width_ft: number; height_ft: number; length_ft: number }) => {
    const of = (section: WindrowSection): number => {
      const [length_m, width_m, height_m] = [m(pile.length_ft, 'ft'), m(pile.base_width_ft, 'ft'), m(pile.height_ft, 'ft')];
      return convert(heapVolume_m3({ shape: 'windrow', section, length_m, width_m, height_m }), 'm3', 'ft3');
    };
    return { parabolic_ft3: of('parabola'), half_elliptic_ft3: of('half-ellipse'), triangular_ft3: of('triangle') };
  }),
  'soil.vol-20': forEach((bag: { bottom_radius_m: number; top_radius_m: number; height_m: number; split_height_m: number }) => {
    const form = taperedBag(bag);
    return {
      lower_l: volumeTo_L(form, bag.split_height_m),
      upper_l: volumeBetween_L(form, bag.split_height_m, bag.height_m),
      total_l: fullVolume_L(form),
    };
  }),
  'soil.vol-21': forEach(
    ({ vertices_ft, depth_in }: { vertices_ft: readonly (readonly [number, number])[]; depth_in: number }) => {
      const vertices_m = vertices_ft.map(([x, y]): Point => [m(x, 'ft'), m(y, 'ft')]);
      const outline: Outline = { shape: 'polygon', vertices_m };
      return {
        area_ft2: convert(footprint_m2(outline), 'm2', 'ft2'),
        ...volumes(fullVolume_L(straight(outline, m(depth_in, 'in'))), ['volume_ft3']),
      };
    },
    ['vertices_ft'],
  ),
  'soil.vol-22': forEach((each: { basin_diameter_in: number; bag_diameter_in: number; water_depth_in: number }) => {
    const level_m = m(each.water_depth_in, 'in');
    const basin = straight(round(m(each.basin_diameter_in, 'in')), level_m);
    const bag = straight(round(m(each.bag_diameter_in, 'in')), level_m);
    return volumes(basinWater_L({ basin, bag, level_m }), ['volume_in3', 'volume_us_gal', 'volume_l']);
  }),
  'soil.vol-23': ((inputs: { mounds_m: readonly { length: number; width: number; height: number }[] }) => ({
    surface_m2: inputs.mounds_m.map((each) =>
      moundSurface_m2({ length_m: each.length, width_m: each.width, height_m: each.height }),
    ),
  })) as Registry[string],
  'soil.also-vol-03': forEach((bed: { length_ft: number; width_ft: number; fill_depth_in: number }) => {
    const outline: Outline = { shape: 'oval', length_m: m(bed.length_ft, 'ft'), width_m: m(bed.width_ft, 'ft') };
    return volumes(fullVolume_L(straight(outline, m(bed.fill_depth_in, 'in'))), ['volume_ft3', 'volume_l']);
  }),
  'soil.also-vol-04': forEach(({ across_flats_m, depth_m }: { across_flats_m: number; depth_m: number }) => {
    const outline: Outline = { shape: 'octagon', acrossFlats_m: across_flats_m };
    return { area_m2: footprint_m2(outline), volume_l: fullVolume_L(straight(outline, depth_m)) };
  }),
  'soil.also-vol-05': forEach((mound: { length_ft: number; width_ft: number; height_ft: number }) => {
    const [length_m, width_m, height_m] = [m(mound.length_ft, 'ft'), m(mound.width_ft, 'ft'), m(mound.height_ft, 'ft')];
    const volume_m3 = heapVolume_m3({ shape: 'half-ellipsoid', length_m, width_m, height_m });
    return volumes(L(volume_m3, 'm3'), ['volume_ft3', 'volume_yd3']);
  }),
  'soil.also-vol-06': forEach((bag: { bottom_radius_m: number; top_radius_m: number; height_m: number }) => {
    const form = taperedBag(bag);
    return { half_height_m: heightHolding_m(form, fullVolume_L(form) / 2) };
  }),
};

function taperedBag(bag: { bottom_radius_m: number; top_radius_m: number; height_m: number }): BedForm {
  return {
    solid: 'tapered',
    outline: round(2 * bag.top_radius_m),
    bottom: round(2 * bag.bottom_radius_m),
    depth_m: bag.height_m,
  };
}
