import { containerClass } from '../../../planner/beds/container-class.ts';
import { areaCovered_m2, squareSide_m } from '../../../planner/soil/spread.ts';
import { convert, type UnitSymbol } from '../../../planner/units/convert.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';
import { L, m, volumes } from './soil-case-units.ts';

export const soilUnits: Registry = {
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
};
