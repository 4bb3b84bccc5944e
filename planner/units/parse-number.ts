import { marksOf, type NumberMarks } from './number-marks.ts';

const vulgar: Readonly<Record<string, number>> = { '½': 1 / 2, '¼': 1 / 4, '¾': 3 / 4, '⅓': 1 / 3, '⅔': 2 / 3, '⅛': 1 / 8 };

/** How a number came in: typed by a hand, or pasted from a table that writes as the reader's country does. */
export type NumberSource = 'typed' | 'pasted';

/**
 * Reads a written number: `1,200`, `3.5`, `1,5`, `3 1/2`, `3-1/2`, `1/4`, `2½`, `.75`, `−4`, `1 234,5`.
 *
 * Point and comma are both taken for the decimal sign where only one reading is possible: `1,5` and `1.5` everywhere,
 * `1.234,5` and `1,234.5` everywhere. One mark before exactly three digits is read as the locale writes: in `en-US`
 * `1,200` is twelve hundred, in `de-DE` `1,200` is one and a fifth. Where the locale's decimal sign is the comma, a
 * typed `1.200` is refused, since it may be meant either way; pasted it is twelve hundred.
 *
 * @returns undefined when it is no number, or may mean two
 */
export function readNumber(text: string, locale = 'en-US', from: NumberSource = 'typed'): number | undefined {
  const negative = /^\s*[-−]/.test(text);
  const body = text.replace(/^\s*[-−+]\s*/, '').trim();
  const size = vulgarNumber(body) ?? fraction(body) ?? decimal(body, marksOf(locale), from);
  return size === undefined ? undefined : negative ? 0 - size : size;
}

/** Whether a typed number may mean two: `1.200` where the comma is the decimal sign. */
export function isAmbiguous(text: string, locale = 'en-US'): boolean {
  const body = text.replace(/^\s*[-−+]\s*/, '').trim();
  return marksOf(locale).decimal === ',' && /^[1-9]\d{0,2}\.\d{3}$/.test(body);
}

/** What is said of a number that may mean two. */
export const ambiguousNumber = (text: string): string =>
  `"${text}" may mean a part after the point or thousands. Write the decimals with a comma, and thousands without a mark.`;

function vulgarNumber(text: string): number | undefined {
  const part = vulgar[text.slice(-1)];
  if (part === undefined) return undefined;
  const whole = text.slice(0, -1).trim();
  if (whole === '') return part;
  return /^\d+$/.test(whole) ? Number(whole) + part : undefined;
}

function fraction(text: string): number | undefined {
  const found = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(text);
  if (found === null || Number(found[3]) === 0) return undefined;
  return Number(found[1] ?? 0) + Number(found[2]) / Number(found[3]);
}

/** Groups of a number without its decimals: threes, or the twos and three of India. */
const groups = /^\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*$|^\d{1,2}(?:,\d{2})+,\d{3}$/;

function decimal(text: string, marks: NumberMarks, from: NumberSource): number | undefined {
  const body = withoutSpaces(text, marks);
  if (!/^[\d.,]*\d[\d.,]*$/.test(body)) return undefined;
  const signs = body.replace(/\d/g, '');
  const last = Math.max(body.lastIndexOf('.'), body.lastIndexOf(','));
  const isDecimal = signs.includes('.') && signs.includes(',') ? true : signs.length === 1 && isDecimalSign(body, marks, from);
  if (isDecimal === undefined) return undefined;
  const whole = isDecimal ? body.slice(0, last) : body;
  const rest = isDecimal ? body.slice(last + 1) : '';
  if (!/^\d*$/.test(rest) || (/[.,]/.test(whole) && !groups.test(whole))) return undefined;
  return Number(`${whole.replace(/[.,]/g, '') || '0'}.${rest || '0'}`);
}

/** Whether the one mark in a number is its decimal sign; undefined where it may be either. */
function isDecimalSign(body: string, marks: NumberMarks, from: NumberSource): boolean | undefined {
  const sign = body.includes(',') ? ',' : '.';
  const mayGroup = /^[1-9]\d{0,2}[.,]\d{3}$/.test(body);
  if (sign === marks.decimal || !mayGroup) return true;
  if (sign === ',') return false;
  return from === 'typed' ? undefined : marks.group !== '.';
}

/** Takes out spaces between groups, and apostrophes where the locale groups by them. */
function withoutSpaces(text: string, { group }: NumberMarks): string {
  const between = /^['’]$/.test(group) ? /[\s\u00a0\u202f'’]/g : /[\s\u00a0\u202f]/g;
  return /^\d{1,3}(?:[\s\u00a0\u202f'’]\d{3})+(?:[.,]\d*)?$/.test(text) ? text.replace(between, '') : text;
}
