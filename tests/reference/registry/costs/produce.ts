import {
  packagesOf,
  packedWeight_kg,
  packOut,
  perPersonHour,
  relativeHarvest_kg,
  totalHours_h,
  yieldOnRow_kg,
} from '../../../../planner/costs/pack-out.ts';
import { dryMeasuresOf_L, netWeight_kg } from '../../../../planner/costs/units-of-sale.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { forEach } from '../../for-each.ts';
import type { Registry } from '../../registry.ts';

const kg = (lb: number): number => convert(lb, 'lb', 'kg');
const lb = (kilograms: number): number => convert(kilograms, 'kg', 'lb');
type Harvest = { cases: number; lbPerCase: number; labour_h: number };
const perHour = (of: Harvest): number => lb(perPersonHour(packedWeight_kg(of.cases, kg(of.lbPerCase)), 1, of.labour_h));

export const produce: Registry = {
  'costs.bu-volume': forEach((of: { bushel_in3: number; cubicInch_mL: number }) => {
    const found = dryMeasuresOf_L(convert(of.bushel_in3 * of.cubicInch_mL, 'mL', 'L'));
    return {
      bushel_L: found.bushel,
      peck_L: found.peck,
      dryQuart_L: found.dryQuart,
      dryPint_L: found.dryPint,
      bushel1and1over9_L: found.carton,
    };
  }),
  'costs.mn-bushels': forEach(
    (of: { lots: readonly { bushels: number; lbPerBushel: number }[] }) => {
      const weights = of.lots.map((lot) => netWeight_kg(lot.bushels, kg(lot.lbPerBushel), 'bushel'));
      return { lb: weights.map(lb), kg: weights };
    },
    ['lots'],
  ),
  'costs.bushel-by-place': forEach((of: { lbPerBushel: Readonly<Record<string, number>> }) => ({
    kg: Object.fromEntries(
      Object.entries(of.lbPerBushel).map(([place, weight]) => [place, netWeight_kg(1, kg(weight), 'bushel')]),
    ),
  })),
  'costs.beans-acre-to-bed': forEach((of: { yield_lbPerAcre: number; box_lb: number; rowSpacing_in: number }) => {
    const yield_kg_per_m2 = convert(of.yield_lbPerAcre, 'lb_per_acre', 'kg_per_m2');
    return {
      boxes_perAcre: packagesOf(kg(of.yield_lbPerAcre), kg(of.box_lb)),
      lbPer100RowFeet: lb(yieldOnRow_kg(yield_kg_per_m2, convert(of.rowSpacing_in, 'in', 'm'), convert(100, 'ft', 'm'))),
      kgPerM2: yield_kg_per_m2,
    };
  }),
  'costs.sweetcorn-bags': forEach((of: { yield_dozPerAcre: number; bag_doz: number; bag_lb: number }) => {
    const bags = packagesOf(of.yield_dozPerAcre, of.bag_doz);
    return {
      bags_perAcre: bags,
      lb_perAcre: lb(packedWeight_kg(bags, kg(of.bag_lb))),
      lbPerDozen: lb(packagesOf(kg(of.bag_lb), of.bag_doz)),
    };
  }),
  'costs.mixed-stand-rule': ((of: { yield_lbPerFt2: number; bed_ft: readonly [number, number] }) => {
    const perM2 = convert(of.yield_lbPerFt2, 'lb_per_ft2', 'kg_per_m2');
    const [width, length] = of.bed_ft;
    return { lb: lb(yieldOnRow_kg(perM2, convert(width, 'ft', 'm'), convert(length, 'ft', 'm'))), kgPerM2: perM2 };
  }) as Registry[string],
  'costs.packout': forEach((of: { harvested_lb: number; cull_fraction: number; unsold_fraction: number }) => {
    const found = packOut({ harvested_kg: kg(of.harvested_lb), cullShare: of.cull_fraction, unsoldShare: of.unsold_fraction });
    return { packed_lb: lb(found.packed_kg), sold_lb: lb(found.sold_kg), soldShareOfHarvest: found.soldShare };
  }),
  'costs.cull-37': forEach((of: { harvested_lb: number; cull_fraction: number }) => ({
    packed_lb: lb(packOut({ harvested_kg: kg(of.harvested_lb), cullShare: of.cull_fraction, unsoldShare: 0 }).packed_kg),
  })),
  'costs.also-relative-yield': forEach((of: { conventional_lb: number; relativeYield: number; cull_fraction: number }) => {
    const found = relativeHarvest_kg(kg(of.conventional_lb), of.relativeYield, of.cull_fraction);
    return { organicHarvested_lb: lb(found.harvested_kg), organicMarketable_lb: lb(found.marketable_kg) };
  }),
  'costs.harvest-rate-crew': forEach((of: { harvested_lb: number; people: number; hours: number }) => ({
    lbPerPersonHour: lb(perPersonHour(kg(of.harvested_lb), of.people, of.hours)),
  })),
  'costs.labour-per-lb-budgets': (of: Readonly<Record<string, Harvest>>) =>
    Object.fromEntries(Object.entries(of).map(([crop, harvest]) => [`${crop}_lbPerHour`, perHour(harvest)])),
  'costs.labour-lettuce-crates': forEach(
    (of: { hours: readonly number[] | number; crates: number }) => {
      const hours = totalHours_h([of.hours].flat());
      return { hours, crates_perHour: perPersonHour(of.crates, 1, hours) };
    },
    ['hours'],
  ),
};
