import { refuse } from '../errors.ts';
import { symbolUnit } from './symbol.ts';
import type { UnitSystem } from './system.ts';

/** The unit a reader sees: its sign, and how a canonical number becomes the number shown (`value * factor + offset`). */
export type ReaderUnit = { readonly sign: string; readonly factor: number; readonly offset: number };

/** For each canonical symbol the symbol shown to a US and to a metric reader; what is not here is shown as it is. */
const shown: Readonly<Record<string, { readonly us: string; readonly metric: string }>> = {
  m: { us: 'ft', metric: 'm' },
  m_short: { us: 'in', metric: 'cm' },
  cm: { us: 'in', metric: 'cm' },
  mm: { us: 'in', metric: 'mm' },
  km: { us: 'mi', metric: 'km' },
  m2: { us: 'ft2', metric: 'm2' },
  cm2: { us: 'in2', metric: 'cm2' },
  ha: { us: 'acre', metric: 'ha' },
  L: { us: 'us_gal', metric: 'L' },
  bulk_L: { us: 'ft3', metric: 'L' },
  mL: { us: 'us_fl_oz', metric: 'mL' },
  m3: { us: 'yd3', metric: 'm3' },
  kg: { us: 'lb', metric: 'kg' },
  g: { us: 'oz', metric: 'g' },
  t: { us: 'us_ton', metric: 't' },
  Pa: { us: 'psi', metric: 'kPa' },
  kPa: { us: 'psi', metric: 'kPa' },
  bar: { us: 'psi', metric: 'bar' },
  m_per_s: { us: 'ft_per_s', metric: 'm_per_s' },
  L_per_s: { us: 'us_gal_per_min', metric: 'L_per_s' },
  kg_per_m3: { us: 'lb_per_ft3', metric: 'kg_per_m3' },
  kg_per_m2: { us: 'lb_per_ft2', metric: 'kg_per_m2' },
  g_per_m2: { us: 'lb_per_1000ft2', metric: 'g_per_m2' },
  share: { us: 'pct', metric: 'pct' },
};
/** Kept metric for every reader: instruments, laboratories and equations give them so. */
const keepAsIs = /^(mg_per_L|meq_per_L|dS_per_m|MJ_per_m2.*|W_per_m2|g_per_L)$/;

const signs: Readonly<Record<string, string>> = {
  m2: 'm²',
  cm2: 'cm²',
  m3: 'm³',
  ft2: 'ft²',
  in2: 'in²',
  ft3: 'ft³',
  yd3: 'yd³',
  in3: 'in³',
  us_gal: 'gal',
  us_qt: 'qt',
  us_fl_oz: 'fl oz',
  us_cup: 'cup',
  us_tbsp: 'tbsp',
  us_tsp: 'tsp',
  us_dry_qt: 'dry qt',
  us_bu: 'bu',
  imp_gal: 'imp gal',
  us_ton: 'ton',
  bulk_L: 'L',
  C: '°C',
  K: '°C',
  pct: '%',
  share: '%',
  deg: '°',
  minor: '',
  count: '',
  days: 'days',
  d: 'day',
  lb_per_1000ft2: 'lb/1000 ft²',
  lb_per_acre: 'lb/acre',
};

/** The sign of a symbol: `kg_per_m2` is `kg/m²`. */
export function signOf(symbol: string): string {
  const own = signs[symbol];
  if (own !== undefined) return own;
  return symbol
    .split('_per_')
    .map((part) => signs[part] ?? part)
    .join('/');
}

function shownSymbol(symbol: string, system: UnitSystem): string {
  const whole = shown[symbol];
  if (whole !== undefined) return whole[system];
  if (keepAsIs.test(symbol)) return symbol;
  return symbol
    .split('_per_')
    .map((part) => shown[part]?.[system] ?? part)
    .join('_per_');
}

const fahrenheit: ReaderUnit = { sign: '°F', factor: 9 / 5, offset: 32 };
const fahrenheitStep: ReaderUnit = { sign: '°F', factor: 9 / 5, offset: 0 };

/**
 * The unit in which a reader sees a canonical symbol: one fixed unit, for columns and fields.
 * @example readerUnit('m2', 'us') // { sign: 'ft²', factor: 10.7639…, offset: 0 }
 * @throws InputError for a symbol that is not known
 */
export function readerUnit(symbol: string, system: UnitSystem): ReaderUnit {
  if (system === 'us' && symbol === 'C') return fahrenheit;
  if (system === 'us' && symbol === 'K') return fahrenheitStep;
  return unitBetween(symbol, shownSymbol(symbol, system));
}

/** The reader's unit that shows `symbol` as `as`, another symbol of the same dimension. */
export function unitBetween(symbol: string, as: string): ReaderUnit {
  const from = symbolUnit(symbol);
  const to = symbolUnit(as);
  if (from === undefined || to === undefined) return refuse('unit', 'unknown-unit', `"${symbol}" is not a unit known here.`);
  return { sign: signOf(as), factor: symbol === as ? 1 : from.factor / to.factor, offset: 0 };
}

const inInches =
  /(^|_)(depth|spacing|margin|gap|drop|thickness|row|path|diameter|overlap|overflow)|(Depth|Spacing|Margin|Gap|Thickness|Row|Path|Diameter|Overlap|WallHeight|basinFill)(_|$)/;
const loose = /soil|mix|fill|loose|settled|bank|compost|wood|stack|topUp|stock|void|mulch|layer/i;

/**
 * The symbol to print a named quantity with: lengths of beds in inches or centimetres where the trade gives them so,
 * loose material in cubic feet, all other names by their suffix.
 */
export function symbolForName(name: string, unit: string): string {
  if (unit === 'm' && inInches.test(name)) return 'm_short';
  if (unit === 'L' && loose.test(name)) return 'bulk_L';
  return unit;
}
