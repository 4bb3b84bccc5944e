import * as c from './constants.ts';
import { units } from './convert.ts';

/** What a symbol measures, as powers of the base dimensions: `volume/time`, `mass/area`, `temperature`. */
export type SymbolUnit = { readonly dimension: string; readonly factor: number; readonly offset: number };

const plain = (dimension: string, factor = 1, offset = 0): SymbolUnit => ({ dimension, factor, offset });

/** Symbols that stand in names beside those of `convert.ts`. A money minor unit, a share and a count are their own. */
const further: Readonly<Record<string, SymbolUnit>> = {
  day: plain('time', c.S_PER_DAY),
  days: plain('time', c.S_PER_DAY),
  week: plain('time', 7 * c.S_PER_DAY),
  weeks: plain('time', 7 * c.S_PER_DAY),
  hours: plain('time', 3600),
  years: plain('years'),
  year: plain('years'),
  C: plain('temperature'),
  K: plain('temperatureStep'),
  share: plain('share'),
  pct: plain('share', 0.01),
  minor: plain('money'),
  deg: plain('angle'),
  rad: plain('angle', 180 / Math.PI),
  V: plain('voltage'),
  A: plain('current'),
  Ah: plain('charge'),
  dS: plain('conductance'),
  meq: plain('charges'),
  ppm: plain('ppm'),
  // loose material sold by the cubic foot or yard: the same litre, another reader's unit
  bulk_L: plain('volume'),
  // a length that the trade gives in inches or centimetres: depths, spacings, margins
  m_short: plain('length'),
  yd2: plain('area', c.M_PER_YARD ** 2),
  '1000ft2': plain('area', 1000 * c.M2_PER_SQUARE_FOOT),
  '100ft2': plain('area', 100 * c.M2_PER_SQUARE_FOOT),
  plants: plain('count'),
  seeds: plain('count'),
  trays: plain('count'),
  pot: plain('count'),
  bed: plain('count'),
};

const one: SymbolUnit = plain('', 1);

function baseUnit(symbol: string): SymbolUnit | undefined {
  const known = Object.hasOwn(units, symbol) ? units[symbol as keyof typeof units] : undefined;
  if (known !== undefined) return plain(known.dimension, known.factor);
  return Object.hasOwn(further, symbol) ? further[symbol] : undefined;
}

/** Named rates of `convert.ts` broken into their parts, so that `L_per_min` and a flow in `gal/min` are one thing. */
const rateOf: Readonly<Record<string, string>> = {
  flow: 'volume/time',
  speed: 'length/time',
  density: 'mass/volume',
  areaDensity: 'mass/area',
};

/**
 * Reads a unit symbol as it stands in a name: `m`, `L_per_day`, `kg_per_m2`, `minor_per_kg`.
 * @returns undefined when a part of it is not known
 */
export function symbolUnit(symbol: string): SymbolUnit | undefined {
  const whole = baseUnit(symbol);
  // a flow in L/s and a density in kg/m3 carry the factor of their own canonical unit: take them apart instead
  if (whole !== undefined && rateOf[whole.dimension] === undefined) return whole;
  const [head = '', ...tails] = symbol.split('_per_');
  let unit = baseUnit(head);
  if (unit === undefined) return undefined;
  for (const tail of tails) {
    const under = baseUnit(tail);
    if (under === undefined) return undefined;
    unit = over(unit, under);
  }
  return unit;
}

/** One unit divided by another. */
export function over(top: SymbolUnit, under: SymbolUnit): SymbolUnit {
  if (under === one) return top;
  return plain(`${top.dimension}/${under.dimension}`, top.factor / under.factor);
}

/**
 * The unit symbol at the end of a quantity's name: `depth_m` is in `m`, `use_L_per_day` in `L_per_day`, `share` in
 * `share`. Undefined for a name without unit (counts, codes, `kc`).
 */
export function unitOfName(name: string): string | undefined {
  const [head = '', ...tails] = name.split('_per_');
  const words = head.split('_');
  for (let from = Math.max(0, words.length - 3); from < words.length; from += 1) {
    const symbol = [words.slice(from).join('_'), ...tails].join('_per_');
    if (symbolUnit(symbol) !== undefined && !/bulk_L|m_short/.test(symbol)) return symbol;
  }
  return name.endsWith('Share') ? 'share' : undefined;
}
