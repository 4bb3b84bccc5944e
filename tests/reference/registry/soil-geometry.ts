import { basinWater_L } from '../../../planner/beds/basin-water.ts';
import { classOfVolume, containerClass } from '../../../planner/beds/container-class.ts';
import {
  massOf_kg,
  porosity,
  sliceDensity_kg_per_m3,
  totalPorosity,
  weighedDensity_kg_per_m3,
  wetDensity_kg_per_m3,
} from '../../../planner/beds/density.ts';
import { floorLoad_kg_per_m2, isWithinFloorLimit } from '../../../planner/beds/floor-load.ts';
import { footprint_m2, hexagonSide_m } from '../../../planner/beds/footprint.ts';
import type { BedForm } from '../../../planner/beds/form.ts';
import { moundSurface_m2 } from '../../../planner/beds/mound-surface.ts';
import type { Outline, Point } from '../../../planner/beds/outline.ts';
import { fullVolume_L, heightHolding_m, volumeBetween_L, volumeTo_L } from '../../../planner/beds/volume.ts';
import { blendParts_L, mixedVolume_L } from '../../../planner/soil/blend.ts';
import { fillLayers } from '../../../planner/soil/layers.ts';
import { loads, packagesToBuy, tripsFor } from '../../../planner/soil/loads.ts';
import { looseForSettled_L } from '../../../planner/soil/settling.ts';
import { areaCovered_m2, squareSide_m, volumeToCover_L } from '../../../planner/soil/spread.ts';
import {
  coneHeight_m,
  diameterFromGirth_m,
  heapVolume_m3,
  heightByBoard_m,
  type WindrowSection,
  windrowSite_m3,
} from '../../../planner/soil/stockpile.ts';
import {
  bankFromCompacted,
  bankFromLoose,
  compactedFromBank,
  gainFromSwell,
  loadFactor,
  looseFromBank,
} from '../../../planner/soil/swell.ts';
import { topUpOfMany } from '../../../planner/soil/top-up.ts';
import { heapYield, soilForVoids_L } from '../../../planner/soil/wood-core.ts';
import { convert, type UnitSymbol } from '../../../planner/units/convert.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';

const m = (value: number, from: UnitSymbol): number => convert(value, from, 'm');
const L = (value: number, from: UnitSymbol): number => convert(value, from, 'L');
const share = (pct: number): number => convert(pct, 'cm', 'm');

/** A volume in the units a case asks for. */
function volumes(volume_L: number, names: readonly string[]): CaseValues {
  return Object.fromEntries(names.map((name) => [name, convert(volume_L, 'L', volumeUnit[name.replace(/^volume_/, '')] ?? 'L')]));
}

const volumeUnit: Readonly<Record<string, UnitSymbol>> = {
  l: 'L',
  m3: 'm3',
  in3: 'in3',
  ft3: 'ft3',
  yd3: 'yd3',
  us_gal: 'us_gal',
  us_bu: 'us_bu',
  us_dry_qt: 'us_dry_qt',
  imp_gal: 'imp_gal',
};

const straight = (outline: Outline, depth_m: number): BedForm => ({ solid: 'straight', outline, depth_m });
const round = (diameter_m: number): Outline => ({ shape: 'round', diameter_m });

type Sized = { readonly length_m: number; readonly width_m: number; readonly height_m: number };
type Taper = {
  readonly top_length_m: number;
  readonly top_width_m: number;
  readonly bottom_length_m: number;
  readonly bottom_width_m: number;
  readonly depth_m: number;
};

export const soilGeometry: Registry = {
  'soil.unit-01': forEach(({ volume_us_gal }: { volume_us_gal: number }) =>
    volumes(L(volume_us_gal, 'us_gal'), ['volume_in3', 'volume_l']),
  ),
  'soil.unit-02': forEach(({ volume_us_bu }: { volume_us_bu: number }) =>
    volumes(L(volume_us_bu, 'us_bu'), ['volume_in3', 'volume_l']),
  ),
  'soil.unit-03': forEach(({ volume_ft3 }: { volume_ft3: number }) =>
    volumes(L(volume_ft3, 'ft3'), ['volume_us_gal', 'volume_l']),
  ),
  'soil.unit-04': forEach(({ volume_ft3 }: { volume_ft3: number }) => volumes(L(volume_ft3, 'ft3'), ['volume_us_dry_qt'])),
  'soil.unit-05': forEach(({ volume_yd3 }: { volume_yd3: number }) =>
    volumes(L(volume_yd3, 'yd3'), ['volume_l', 'volume_us_gal', 'volume_imp_gal']),
  ),
  'soil.unit-06': forEach(({ volume_m3 }: { volume_m3: number }) =>
    volumes(L(volume_m3, 'm3'), ['volume_ft3', 'volume_yd3', 'volume_us_gal', 'volume_imp_gal']),
  ),
  'soil.unit-07': forEach(({ volume_in3 }: { volume_in3: number }) =>
    volumes(L(volume_in3, 'in3'), ['volume_us_dry_qt', 'volume_us_bu']),
  ),
  'soil.unit-08': forEach(({ count, trade_gallon_us_liquid_qt }: { count: number; trade_gallon_us_liquid_qt: number }) =>
    volumes(count * L(trade_gallon_us_liquid_qt, 'us_qt'), ['volume_us_gal', 'volume_l', 'volume_ft3']),
  ),
  'soil.unit-09': forEach(({ container_class }: { container_class: string }) => {
    const { min_in3, max_in3 } = containerClass(container_class);
    const both = (unit: UnitSymbol, name: string): CaseValues => ({
      [`min_${name}`]: convert(min_in3, 'in3', unit),
      [`max_${name}`]: convert(max_in3, 'in3', unit),
    });
    return { min_in3, max_in3, ...both('L', 'l'), ...both('us_gal', 'us_gal') };
  }),
  'soil.also-unit-01': forEach(({ volume_yd3, depth_in }: { volume_yd3: number; depth_in: number }) => {
    const area_m2 = areaCovered_m2(L(volume_yd3, 'yd3'), m(depth_in, 'in'));
    return { area_ft2: convert(area_m2, 'm2', 'ft2'), side_ft: convert(squareSide_m(area_m2), 'm', 'ft') };
  }),
  'soil.also-unit-02': forEach((each: { imp_gal: number; us_dry_qt: number; us_cup: number }) => ({
    imp_gal_l: L(each.imp_gal, 'imp_gal'),
    us_dry_qt_l: L(each.us_dry_qt, 'us_dry_qt'),
    us_cup_l: L(each.us_cup, 'us_cup'),
  })),

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

  'soil.fill-01': forEach(({ bank_yd3, swell_pct }: { bank_yd3: number; swell_pct: number }) => ({
    loose_yd3: looseFromBank(bank_yd3, share(swell_pct)),
  })),
  'soil.fill-02': forEach((dig: { bank_yd3: number; swell_pct: number; truck_yd3: number }) => {
    const gain_yd3 = gainFromSwell(dig.bank_yd3, share(dig.swell_pct));
    return {
      loose_yd3: looseFromBank(dig.bank_yd3, share(dig.swell_pct)),
      extra_loads: tripsFor(L(gain_yd3, 'yd3'), L(dig.truck_yd3, 'yd3')),
    };
  }),
  'soil.fill-03': forEach((dig: { bank_yd3: number; swell_pct: number; shrink_pct: number; truck_yd3: number }) => {
    const loose_yd3 = looseFromBank(dig.bank_yd3, share(dig.swell_pct));
    return {
      loose_yd3,
      compacted_yd3: compactedFromBank(dig.bank_yd3, share(dig.shrink_pct)),
      loads: tripsFor(L(loose_yd3, 'yd3'), L(dig.truck_yd3, 'yd3')),
    };
  }),
  'soil.fill-04': forEach(({ compacted_yd3, shrink_pct }: { compacted_yd3: number; shrink_pct: number }) => ({
    bank_yd3: bankFromCompacted(compacted_yd3, share(shrink_pct)),
  })),
  'soil.fill-05': forEach(({ swell_pct }: { swell_pct: number }) => ({ load_factor: loadFactor(share(swell_pct)) })),
  'soil.fill-06': forEach((bed: { area_ft2: number; settled_depth_in: number; settling_pct: number }) => {
    const settled_L = volumeToCover_L(convert(bed.area_ft2, 'ft2', 'm2'), m(bed.settled_depth_in, 'in'));
    const loose_L = looseForSettled_L(settled_L, share(bed.settling_pct));
    return { loose_ft3: convert(loose_L, 'L', 'ft3'), loose_yd3: convert(loose_L, 'L', 'yd3') };
  }),
  'soil.fill-07': forEach(
    (bed: {
      area_m2: number;
      lower_depth_m: number;
      upper_depth_m: number;
      own_soil_swell_pct: number;
      own_soil_settling_pct: number;
      mix_settling_pct: number;
    }) => {
      const side_m = squareSide_m(bed.area_m2);
      const depth_m = bed.lower_depth_m + bed.upper_depth_m;
      const form = straight({ shape: 'rectangle', length_m: side_m, width_m: side_m }, depth_m);
      const [own, mix] = fillLayers({ form, from_m: 0, to_m: depth_m }, [
        { amount: { kind: 'depth', depth_m: bed.lower_depth_m }, settlingShare: share(bed.own_soil_settling_pct) },
        { amount: { kind: 'depth', depth_m: bed.upper_depth_m }, settlingShare: share(bed.mix_settling_pct) },
      ]);
      return {
        own_soil_settled_l: own?.settled_L,
        own_soil_loose_l: own?.loose_L,
        own_soil_bank_l: bankFromLoose(own?.loose_L ?? Number.NaN, share(bed.own_soil_swell_pct)),
        mix_loose_l: mix?.loose_L,
      };
    },
  ),
  'soil.fill-08': forEach((mix: Record<string, number>) => {
    const parts_L = Object.entries(mix).flatMap(([name, value]) => (name.endsWith('_l') ? [value] : []));
    return { mixed_l: mixedVolume_L(parts_L, share(mix['blend_shrink_pct'] ?? 0)) };
  }),
  'soil.fill-09': forEach(
    (mix: { settled_l: number; parts: Record<string, number>; blend_shrink_pct: number; settling_pct: number }) => {
      const loose_L = looseForSettled_L(mix.settled_l, share(mix.settling_pct));
      const volumes_L = blendParts_L(loose_L, Object.values(mix.parts), share(mix.blend_shrink_pct));
      return Object.fromEntries(Object.keys(mix.parts).map((name, at) => [`${name}_l`, volumes_L[at]]));
    },
  ),
  'soil.fill-10': forEach((spring: { beds: number; area_ft2_each: number; drop_in: number; settling_pct: number }) => {
    const area_m2 = convert(spring.area_ft2_each, 'ft2', 'm2');
    const { settled_L, loose_L } = topUpOfMany(spring.beds, area_m2, m(spring.drop_in, 'in'), share(spring.settling_pct));
    return {
      settled_ft3: convert(settled_L, 'L', 'ft3'),
      loose_ft3: convert(loose_L, 'L', 'ft3'),
      loose_yd3: convert(loose_L, 'L', 'yd3'),
      bags_1_5_ft3: packagesToBuy(loose_L, 0, L(1.5, 'ft3')),
    };
  }),
  'soil.fill-11': forEach((core: { stack_l: number; solid_fraction: number; void_fill_pct: number }) => ({
    soil_l: soilForVoids_L(core.stack_l, core.solid_fraction, share(core.void_fill_pct)),
  })),
  'soil.fill-12': forEach((mound: Sized & { wood_core_fraction: number; loose_swell_pct: number; screen_loss_pct: number }) => {
    const { length_m, width_m, height_m } = mound;
    const won = heapYield(
      { shape: 'half-ellipsoid', length_m, width_m, height_m },
      {
        coreShare: mound.wood_core_fraction,
        swellShare: share(mound.loose_swell_pct),
        screenLossShare: share(mound.screen_loss_pct),
      },
    );
    return { mound_m3: won.mound_m3, soil_bank_m3: won.soilBank_m3, soil_loose_usable_m3: won.soilLooseUsable_m3 };
  }),
  'soil.fill-13': forEach((haul: { volume_yd3: number; density_lb_per_yd3: number; box_yd3: number; payload_lb: number }) => {
    const answer = loads({
      volume_L: L(haul.volume_yd3, 'yd3'),
      density_kg_per_m3: convert(haul.density_lb_per_yd3, 'lb_per_yd3', 'kg_per_m3'),
      box_L: L(haul.box_yd3, 'yd3'),
      payload_kg: convert(haul.payload_lb, 'lb', 'kg'),
    });
    return { mass_lb: convert(answer.mass_kg, 'kg', 'lb'), loads: answer.loads };
  }),
  'soil.fill-14': forEach(({ need_ft3, stock_bags, bag_ft3 }: { need_ft3: number; stock_bags: number; bag_ft3: number }) => ({
    buy_bags: packagesToBuy(need_ft3, stock_bags * bag_ft3, bag_ft3),
  })),
  'soil.also-fill-01': forEach((chain: { settled_l: number; settling_pct: number; swell_pct: number; barrow_l: number }) => {
    const loose_l = looseForSettled_L(chain.settled_l, share(chain.settling_pct));
    return { loose_l, bank_l: bankFromLoose(loose_l, share(chain.swell_pct)), barrow_loads: tripsFor(loose_l, chain.barrow_l) };
  }),
  'soil.also-fill-02': forEach(
    (each: {
      bags: number;
      diameter_in: number;
      depth_in: number;
      lower_fraction: number;
      own_settling_pct: number;
      mix_settling_pct: number;
      mix_bag_ft3: number;
    }) => {
      const depth_m = m(each.depth_in, 'in');
      const [own, mix] = fillLayers({ form: straight(round(m(each.diameter_in, 'in')), depth_m), from_m: 0, to_m: depth_m }, [
        { amount: { kind: 'share', share: each.lower_fraction }, settlingShare: share(each.own_settling_pct) },
        { amount: { kind: 'rest' }, settlingShare: share(each.mix_settling_pct) },
      ]);
      const all_ft3 = (loose_L: number | undefined): number => each.bags * convert(loose_L ?? Number.NaN, 'L', 'ft3');
      const mix_loose_ft3 = all_ft3(mix?.loose_L);
      return { own_loose_ft3: all_ft3(own?.loose_L), mix_loose_ft3, mix_bags: packagesToBuy(mix_loose_ft3, 0, each.mix_bag_ft3) };
    },
  ),

  'soil.dens-01': forEach(({ density_lb_per_yd3 }: { density_lb_per_yd3: number }) => ({
    density_kg_m3: convert(density_lb_per_yd3, 'lb_per_yd3', 'kg_per_m3'),
  })),
  'soil.dens-02': forEach(({ density_lb_per_ft3 }: { density_lb_per_ft3: number }) => ({
    density_kg_m3: convert(density_lb_per_ft3, 'lb_per_ft3', 'kg_per_m3'),
  })),
  'soil.dens-03': forEach(
    ({ air_space_pct, container_capacity_pct }: { air_space_pct: number; container_capacity_pct: number }) => ({
      total_porosity_pct: convert(totalPorosity(share(air_space_pct), share(container_capacity_pct)), 'm', 'cm'),
    }),
  ),
  'soil.dens-04': forEach((peat: { dry_density_kg_m3: number; container_capacity_pct: number; depth_in: number }) =>
    atCapacity(peat.dry_density_kg_m3, peat.container_capacity_pct, m(peat.depth_in, 'in')),
  ),
  'soil.dens-05': forEach((soil: { dry_density_kg_m3: number; particle_density_kg_m3: number }) => {
    const pores = porosity(soil.dry_density_kg_m3, soil.particle_density_kg_m3);
    const saturated = wetDensity_kg_per_m3(soil.dry_density_kg_m3, pores);
    return {
      porosity: pores,
      saturated_density_kg_m3: saturated,
      saturated_lb_per_ft3: convert(saturated, 'kg_per_m3', 'lb_per_ft3'),
    };
  }),
  'soil.dens-06': forEach(
    (deck: {
      layers: readonly { depth_m: number; wet_density_kg_m3: number }[];
      tare_kg_m2: number;
      plants_kg_m2: number;
      allowable_kg_m2: number;
    }) => {
      const load = floorLoad_kg_per_m2({
        layers: deck.layers.map((each) => ({ depth_m: each.depth_m, density_kg_per_m3: each.wet_density_kg_m3 })),
        tare_kg_per_m2: deck.tare_kg_m2,
        plants_kg_per_m2: deck.plants_kg_m2,
      });
      return {
        load_kg_m2: load,
        load_psf: convert(load, 'kg_per_m2', 'lb_per_ft2'),
        within_allowance: isWithinFloorLimit(load, deck.allowable_kg_m2),
      };
    },
    ['layers'],
  ),
  'soil.dens-07': forEach(({ soil_mass_lb_per_acre, depth_in }: { soil_mass_lb_per_acre: number; depth_in: number }) => {
    const density = sliceDensity_kg_per_m3(convert(soil_mass_lb_per_acre, 'lb_per_acre', 'kg_per_m2'), m(depth_in, 'in'));
    return { bulk_density_g_cm3: convert(density, 'kg', 't') };
  }),
  'soil.dens-08': forEach(({ weight_oz_per_pint }: { weight_oz_per_pint: number }) => {
    const density_kg_m3 = weighedDensity_kg_per_m3(convert(weight_oz_per_pint, 'oz', 'kg'), L(1, 'us_pt'));
    return { density_kg_m3, g_per_15_ml: convert(massOf_kg(L(15, 'mL'), density_kg_m3), 'kg', 'g') };
  }),
  'soil.also-dens-02': forEach((bark: { dry_density_kg_m3: number; container_capacity_pct: number; depth_m: number }) =>
    atCapacity(bark.dry_density_kg_m3, bark.container_capacity_pct, bark.depth_m),
  ),
};

function taperedBag(bag: { bottom_radius_m: number; top_radius_m: number; height_m: number }): BedForm {
  return {
    solid: 'tapered',
    outline: round(2 * bag.top_radius_m),
    bottom: round(2 * bag.bottom_radius_m),
    depth_m: bag.height_m,
  };
}

function atCapacity(dry_kg_per_m3: number, capacity_pct: number, depth_m: number): CaseValues {
  const wet = wetDensity_kg_per_m3(dry_kg_per_m3, share(capacity_pct));
  const load = floorLoad_kg_per_m2({ layers: [{ depth_m, density_kg_per_m3: wet }] });
  return { wet_density_kg_m3: wet, load_kg_m2: load, load_psf: convert(load, 'kg_per_m2', 'lb_per_ft2') };
}
