import { printQuantity } from './print.ts';
import type { UnitSystem } from './system.ts';

/** Units as the planner's messages write them, by their symbol. */
const symbols: Readonly<Record<string, string>> = {
  m: 'm',
  m2: 'm2',
  L: 'L',
  kg: 'kg',
  'kg/m2': 'kg_per_m2',
  'kg/m3': 'kg_per_m3',
  mm: 'mm',
  'mm/day': 'mm_per_day',
  'L/day': 'L_per_day',
  'L/min': 'L_per_min',
  'L/h': 'L_per_h',
  kPa: 'kPa',
};

const quantity = /(-?\d[\d.]*(?:e[+-]?\d+)?)(?: × (\d[\d.]*))? (kg\/m[23]|mm\/day|L\/(?:day|min|h)|mm|m2|m|L|kg|kPa)(?![\w/²³])/g;

/** A message of the planner with its quantities in the reader's units: `at most 0.34 m fits` becomes `at most 13.5 in fits`. */
export function messageFor(message: string, system: UnitSystem, locale = 'en-US'): string {
  return message.replace(quantity, (_, first: string, second: string | undefined, unit: string) => {
    const symbol = symbols[unit] ?? unit;
    const print = (text: string): string => printQuantity(Number(text), symbol, system, { locale });
    return second === undefined ? print(first) : `${print(first)} × ${print(second)}`;
  });
}
