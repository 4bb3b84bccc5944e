import { type NumberSource, readNumber } from './parse-number.ts';
import { printForEntry, printNumber, printQuantity } from './print.ts';
import { type DateForm, printDate, printDatesIn } from './print-date.ts';
import { printMoney } from './print-money.ts';
import { readerUnit, signOf, symbolForName } from './reader-unit.ts';
import { unitOfName } from './symbol.ts';
import type { UnitSystem } from './system.ts';

/** How this farm's reader wants figures: settings of the farm. */
export type ReaderSettings = { readonly system: UnitSystem; readonly currency: string; readonly locale: string };

export type Reader = ReaderSettings & {
  /** A figure with the unit that suits its size: `print(1.0668, 'm')` is `3 ft 6 in`. */
  readonly print: (value: number | null | undefined, unit: string, digits?: number) => string;
  /** The number alone, in the one unit that `sign` gives: for columns and axes. */
  readonly number: (value: number, unit: string, digits?: number) => string;
  /** A written number, as the reader's country writes it; undefined when it is none, or may mean two. */
  readonly read: (text: string, from?: NumberSource) => number | undefined;
  /** The canonical value as text for an entry field, with its unit; as exact as it reads back, unless digits are given. */
  readonly entry: (value: number, unit: string, digits?: number) => string;
  /** The sign of the unit that `number` uses. */
  readonly sign: (unit: string) => string;
  /** The canonical number as the reader's number: for axes. */
  readonly scale: (value: number, unit: string) => number;
  readonly money: (amount_minor: number | null | undefined) => string;
  readonly date: (iso: string | null | undefined, form?: DateForm) => string;
  /** A finished text with the calendar dates in it as the reader writes them. */
  readonly datesIn: (text: string) => string;
};

const NONE = '–';

/** The printer of one reader. Pure: the same settings give the same text. */
export function readerOf(settings: ReaderSettings): Reader {
  const { system, currency, locale } = settings;
  const options = (digits: number | undefined) => ({ currency, locale, ...(digits === undefined ? {} : { digits }) });
  return {
    ...settings,
    read: (text, from) => readNumber(text, locale, from),
    entry: (value, unit, digits) => printForEntry(value, unit, system, locale, digits),
    print: (value, unit, digits) =>
      value === null || value === undefined ? NONE : printQuantity(value, unit, system, options(digits)),
    number: (value, unit, digits) => printNumber(value, unit, system, options(digits)),
    sign: (unit) => (unit === 'minor' ? currency : unit === '' ? '' : readerUnit(unit, system).sign || signOf(unit)),
    scale: (value, unit) => {
      if (unit === '') return value;
      const shown = readerUnit(unit, system);
      return value * shown.factor + shown.offset;
    },
    money: (amount) => (amount === null || amount === undefined ? NONE : printMoney(amount, currency, 0, locale)),
    date: (iso, form = 'short') => (iso === null || iso === undefined || iso === '' ? NONE : printDate(iso, locale, form)),
    datesIn: (text) => printDatesIn(text, locale),
  };
}

/** The unit in which a named quantity is shown: `depth_m` in `m_short`'s sibling where the trade reads it so. */
export function unitForKey(key: string): string {
  const unit = unitOfName(key);
  return unit === undefined ? '' : symbolForName(key, unit);
}
