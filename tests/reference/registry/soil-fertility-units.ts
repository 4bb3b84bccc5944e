import { readFileSync } from 'node:fs';
import { bedDose_kg } from '../../../planner/fertility/bed-dose.ts';
import type { SoilTables } from '../../../planner/fertility/soil-tables.ts';
import { convert, type UnitSymbol } from '../../../planner/units/convert.ts';

/** The shipped soil tables. */
export const tables = JSON.parse(
  readFileSync(new URL('../../../resources/soil-tables.json', import.meta.url), 'utf8'),
) as SoilTables;

export const inches = (value: number) => convert(value, 'in', 'm');
export const share = (percent: number) => convert(percent, 'mg', 'kg') * 10_000;
export const percent = (of: number) => of / share(1);
export const fromLbAcre = (rate: number) => convert(rate, 'lb_per_acre', 'kg_per_m2');
export const toLbAcre = (rate: number) => convert(rate, 'kg_per_m2', 'lb_per_acre');
export const fromTonAcre = (rate: number) => convert(rate, 'us_ton_per_acre', 'kg_per_m2');
export const toTonAcre = (rate: number) => convert(rate, 'kg_per_m2', 'us_ton_per_acre');
export const inArea = (rate_kg_per_m2: number, area: number, unit: UnitSymbol, mass: UnitSymbol) =>
  convert(bedDose_kg(rate_kg_per_m2, convert(area, unit, 'm2')), 'kg', mass);
