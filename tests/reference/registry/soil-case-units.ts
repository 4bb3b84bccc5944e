import type { BedForm } from '../../../planner/beds/form.ts';
import type { Outline } from '../../../planner/beds/outline.ts';
import { convert, type UnitSymbol } from '../../../planner/units/convert.ts';
import type { CaseValues } from '../registry.ts';

export const m = (value: number, from: UnitSymbol): number => convert(value, from, 'm');
export const L = (value: number, from: UnitSymbol): number => convert(value, from, 'L');
export const share = (pct: number): number => convert(pct, 'cm', 'm');

/** A volume in the units a case asks for. */
export function volumes(volume_L: number, names: readonly string[]): CaseValues {
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

export const straight = (outline: Outline, depth_m: number): BedForm => ({ solid: 'straight', outline, depth_m });
export const round = (diameter_m: number): Outline => ({ shape: 'round', diameter_m });

export type Sized = { readonly length_m: number; readonly width_m: number; readonly height_m: number };
