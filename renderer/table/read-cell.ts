import { isIsoDate } from '../../planner/calendar.ts';
import { InputError } from '../../planner/errors.ts';
import { parseQuantity } from '../../planner/units/parse.ts';
import { isAmbiguous, type NumberSource } from '../../planner/units/parse-number.ts';
import { currencyPlaces } from '../../planner/units/print-money.ts';
import type { Reader } from '../../planner/units/reader.ts';
import { notANumber } from '../fields/not-a-number.ts';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';
import type { CellValue, Column } from './column.ts';
import { readDate } from './read-date.ts';

export type CellRead = { readonly ok: true; readonly value: CellValue } | { readonly ok: false; readonly message: string };

const good = (value: CellValue): CellRead => ({ ok: true, value });
const bad = (message: string): CellRead => ({ ok: false, message });

/** Reads what was typed or pasted into a cell. Ranges are the program's to judge; here only the form is. */
export function readCell<Row>(column: Column<Row>, typed: string, reader: Reader, from: NumberSource = 'typed'): CellRead {
  const entry = typed.trim();
  if (entry === '') {
    return column.mayBeEmpty === true || (column.kind === 'text' && column.mayBeEmpty !== false)
      ? good(column.kind === 'text' ? '' : null)
      : bad(say('{column}: something is needed here.', { column: column.title }));
  }
  switch (column.kind) {
    case 'text':
      return good(entry);
    case 'quantity':
    case 'share':
      return column.unit === '' ? plainNumber(column.title, entry, reader, from) : readQuantity(column, entry, reader, from);
    case 'count': {
      const read = reader.read(entry, from);
      return read !== undefined && Number.isInteger(read)
        ? good(read)
        : bad(say('{column}: "{entry}" is not a whole number.', { column: column.title, entry }));
    }
    case 'money':
      return readMoney(column.title, entry, reader, from);
    case 'date': {
      const read = readDate(entry);
      return read !== undefined && isIsoDate(read)
        ? good(read)
        : bad(say('{column}: "{entry}" is not a date. Write it as 2026-03-09.', { column: column.title, entry }));
    }
    case 'choice': {
      const found = column.choices.find((known) =>
        [known.value, known.text].some((word) => word.toLowerCase() === entry.toLowerCase()),
      );
      return found === undefined
        ? bad(
            say('{column}: "{entry}" is none of {choices}.', {
              column: column.title,
              entry,
              choices: column.choices.map((known) => known.text).join(', '),
            }),
          )
        : good(found.value);
    }
    case 'flag':
      if (/^(yes|y|true|1|x|✓)$/i.test(entry) || isWord(entry, say('yes'))) return good(true);
      return /^(no|n|false|0|-)$/i.test(entry) || isWord(entry, say('no'))
        ? good(false)
        : bad(say('{column}: write yes or no.', { column: column.title }));
  }
}

function plainNumber(title: string, entry: string, reader: Reader, from: NumberSource): CellRead {
  const read = reader.read(entry, from);
  return read === undefined ? bad(`${title}: ${notANumber(entry, reader.locale)}`) : good(read);
}

function readQuantity<Row>(column: Column<Row>, entry: string, reader: Reader, from: NumberSource): CellRead {
  try {
    return good(
      parseQuantity(entry, { unit: column.unit, system: reader.system, locale: reader.locale, from, path: column.title }),
    );
  } catch (error) {
    if (error instanceof InputError) return bad(`${column.title}: ${sayKnown(error.message)}`);
    throw error;
  }
}

/** Money as written (`$1,250.50`, `12,5`) to whole minor units. More decimals than the currency has are refused. */
export function readMoney(title: string, entry: string, reader: Reader, from: NumberSource = 'typed'): CellRead {
  const { currency } = reader;
  const amount = entry.replace(/^\s*(?:[A-Z]{3}|[$£€¥])\s*|\s*(?:[A-Z]{3}|[$£€¥])\s*$/g, '');
  const read = reader.read(amount, from);
  if (read === undefined && isAmbiguous(amount, reader.locale)) return bad(`${title}: ${notANumber(amount, reader.locale)}`);
  if (read === undefined) return bad(say('{title}: "{entry}" is not an amount of money.', { title, entry }));
  const scaled = read * 10 ** currencyPlaces(currency);
  const whole = Math.round(scaled);
  return Math.abs(scaled - whole) < 1e-6 * Math.max(1, Math.abs(scaled))
    ? good(whole)
    : bad(say('{title}: "{entry}" has more decimals than {currency} has.', { title, entry, currency }));
}

const isWord = (entry: string, word: string): boolean => entry.toLowerCase() === word.toLowerCase();
