import { blendParts_L, mixedVolume_L } from '../../../planner/soil/blend.ts';
import { fillLayers } from '../../../planner/soil/layers.ts';
import { loads, packagesToBuy, tripsFor } from '../../../planner/soil/loads.ts';
import { looseForSettled_L } from '../../../planner/soil/settling.ts';
import { squareSide_m, volumeToCover_L } from '../../../planner/soil/spread.ts';
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
import { convert } from '../../../planner/units/convert.ts';
import { forEach } from '../for-each.ts';
import type { Registry } from '../registry.ts';
import { L, m, round, type Sized, share, straight } from './soil-case-units.ts';

export const soilFill: Registry = {
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
};
