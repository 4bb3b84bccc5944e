import { M_PER_FOOT, M_PER_INCH } from './constants.ts';
import { marksOf, type NumberMarks, pointMarks } from './number-marks.ts';
import { currencyPlaces, printMinor, printMoney } from './print-money.ts';
import { readerUnit, signOf, symbolForName, unitBetween } from './reader-unit.ts';
import { grouped, significant } from './significant.ts';
import { unitOfName } from './symbol.ts';
import type { UnitSystem } from './system.ts';

export type PrintOptions = {
  /** Significant digits known; 3 unless told. */
  readonly digits?: number;
  /** ISO 4217 code for money; without it money prints as a plain number. */
  readonly currency?: string;
  /** BCP 47 tag of the country in whose manner numbers are written; `en-US` unless told. */
  readonly locale?: string;
};

const marksFor = ({ locale }: PrintOptions): NumberMarks => (locale === undefined ? pointMarks : marksOf(locale));

const KNOWN_DIGITS = 3;

type Step = { readonly from: number; readonly as: string };

/** A larger or smaller unit takes over from this canonical size on; ascending. */
const steps: Readonly<Record<string, { readonly us: readonly Step[]; readonly metric: readonly Step[] }>> = {
  m: {
    us: [{ from: 0, as: 'ft' }],
    metric: [
      { from: 0, as: 'cm' },
      { from: 0.995, as: 'm' },
      { from: 10_000, as: 'km' },
    ],
  },
  m2: {
    us: [
      { from: 0, as: 'ft2' },
      { from: 4000, as: 'acre' },
    ],
    metric: [
      { from: 0, as: 'm2' },
      { from: 10_000, as: 'ha' },
    ],
  },
  L: {
    us: [
      { from: 0, as: 'us_fl_oz' },
      { from: 0.94, as: 'us_gal' },
    ],
    metric: [
      { from: 0, as: 'mL' },
      { from: 0.995, as: 'L' },
      { from: 10_000, as: 'm3' },
    ],
  },
  bulk_L: {
    us: [
      // a bucket of it is told in gallons
      { from: 0, as: 'us_gal' },
      { from: 20, as: 'ft3' },
      { from: 764, as: 'yd3' },
    ],
    metric: [
      { from: 0, as: 'L' },
      { from: 995, as: 'm3' },
    ],
  },
  m3: {
    us: [
      { from: 0, as: 'ft3' },
      { from: 0.764, as: 'yd3' },
    ],
    metric: [
      { from: 0, as: 'L' },
      { from: 0.995, as: 'm3' },
    ],
  },
  kg: {
    us: [
      { from: 0, as: 'oz' },
      { from: 0.45, as: 'lb' },
    ],
    metric: [
      { from: 0, as: 'g' },
      { from: 0.995, as: 'kg' },
      { from: 9950, as: 't' },
    ],
  },
  g: {
    us: [
      { from: 0, as: 'oz' },
      { from: 450, as: 'lb' },
    ],
    metric: [
      { from: 0, as: 'g' },
      { from: 995, as: 'kg' },
    ],
  },
  Wh: {
    us: [
      { from: 0, as: 'Wh' },
      { from: 9950, as: 'kWh' },
    ],
    metric: [
      { from: 0, as: 'Wh' },
      { from: 9950, as: 'kWh' },
    ],
  },
};

function steppedUnit(value: number, symbol: string, system: UnitSystem) {
  const ladder = steps[symbol]?.[system];
  if (ladder === undefined || value === 0) return readerUnit(symbol, system);
  const size = Math.abs(value);
  const step = ladder.findLast((each) => size >= each.from) ?? ladder[0];
  return step === undefined ? readerUnit(symbol, system) : unitBetween(symbol, step.as);
}

/** Feet and inches as a tape reads: to a quarter inch below 12 ft, a half to 40 ft, whole inches to 100 ft, then feet. */
function printFeet(value: number, marks: NumberMarks): string {
  const feet = Math.abs(value) / M_PER_FOOT;
  if (feet >= 100) return `${significant(value / M_PER_FOOT, 4, marks)} ft`;
  const part = feet < 12 ? 4 : feet < 40 ? 2 : 1;
  const quarters = Math.round((Math.abs(value) / M_PER_INCH) * part);
  const whole = Math.floor(quarters / (12 * part));
  const inches = grouped((quarters - whole * 12 * part) / part, 2, marks);
  const minus = value < 0 && quarters > 0 ? '−' : '';
  if (quarters === 0 && value !== 0) return `${significant(value / M_PER_INCH, 2, marks)} in`;
  if (whole === 0) return `${minus}${inches} in`;
  return inches === '0' ? `${minus}${whole} ft` : `${minus}${whole} ft ${inches} in`;
}

const spaced = (number: string, sign: string): string =>
  sign === '' ? number : /^[%°]$/.test(sign) ? `${number}${sign}` : `${number} ${sign}`;

function printMoneyRate(value: number, symbol: string, system: UnitSystem, options: PrintOptions): string {
  const [, ...tails] = symbol.split('_per_');
  const unit = readerUnit(symbol, system);
  const shown = value * unit.factor;
  const more = tails.length > 0 && Math.abs(shown) < 100 ? 2 : 0;
  const { currency, locale } = options;
  const money = currency === undefined ? printMinor(shown, 2, locale) : printMoney(shown, currency, more, locale);
  return tails.length === 0 ? money : `${money}${unit.sign}`;
}

const wholes = new Set(['count', 'plants', 'seeds', 'trays', 'pot', 'bed', 'year', 'years', 'minor']);

/**
 * Prints a canonical quantity for a reader, in the unit that suits its size, with no more digits than are known.
 *
 * @param symbol the canonical unit's symbol: `m`, `m2`, `L`, `L_per_day`, `kg_per_m2`, `C`, `share`, `minor` …;
 *   `bulk_L` for loose material (US cubic feet and yards), `m_short` for depths and spacings (inches, centimetres);
 *   '' for a pure number
 * @example printQuantity(1.0668, 'm', 'us') // '3 ft 6 in'
 * @example printQuantity(151.4, 'L', 'us') // '40 gal'
 * @throws InputError for a symbol that is not known
 */
export function printQuantity(value: number, symbol: string, system: UnitSystem, options: PrintOptions = {}): string {
  if (!Number.isFinite(value)) return '–';
  const marks = marksFor(options);
  const digits = options.digits ?? KNOWN_DIGITS;
  if (symbol === '') return significant(value, digits, marks);
  if (symbol === 'minor' || symbol.startsWith('minor_per_')) return printMoneyRate(value, symbol, system, options);
  if (symbol === 'm' && system === 'us') return printFeet(value, marks);
  if (wholes.has(symbol) && Number.isInteger(value)) return spaced(grouped(value, 0, marks), signOf(symbol));
  if (symbol === 'day' || symbol === 'days' || symbol === 'd')
    return `${grouped(value, Math.abs(value) < 10 ? 1 : 0, marks)} ${value === 1 ? 'day' : 'days'}`;
  const unit = steppedUnit(value, symbol, system);
  const shown = value * unit.factor + unit.offset;
  if (symbol === 'C') return spaced(grouped(shown, 1, marks), unit.sign);
  return spaced(significant(shown, digits, marks), unit.sign);
}

/** Only the number, in the one unit that {@link readerUnit} gives: for a column whose header states the unit. */
export function printNumber(value: number, symbol: string, system: UnitSystem, options: PrintOptions = {}): string {
  const marks = marksFor(options);
  const digits = options.digits ?? KNOWN_DIGITS;
  if (symbol === '') return significant(value, digits, marks);
  if (symbol === 'minor' || symbol.startsWith('minor_per_')) {
    const places = options.currency === undefined ? 2 : currencyPlaces(options.currency);
    return printMinor(value * readerUnit(symbol, system).factor, places, options.locale);
  }
  const unit = readerUnit(symbol, system);
  const shown = value * unit.factor + unit.offset;
  if (wholes.has(symbol) && Number.isInteger(value)) return grouped(value, 0, marks);
  return symbol === 'C' ? grouped(shown, 1, marks) : significant(shown, digits, marks);
}

/** Prints a quantity by its name: `printNamed('depth_m', 0.3, 'us')` is `11.8 in`. A name without unit is a pure number. */
export function printNamed(name: string, value: number, system: UnitSystem, options: PrintOptions = {}): string {
  const unit = unitOfName(name);
  return printQuantity(value, unit === undefined ? '' : symbolForName(name, unit), system, options);
}

/**
 * A quantity as text for an entry field: one unit, no marks between groups, enough digits that reading it back gives
 * the same value to a part in a million, so that looking at a field never changes it.
 */
export function printForEntry(value: number, symbol: string, system: UnitSystem, locale = 'en-US', digits = 7): string {
  const marks: NumberMarks = { ...marksOf(locale), group: '' };
  if (symbol === '') return significant(value, 12, marks);
  const unit = readerUnit(symbol, system);
  return spaced(significant(value * unit.factor + unit.offset, digits, marks), unit.sign);
}
