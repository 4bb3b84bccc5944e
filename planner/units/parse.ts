import { refuse } from '../errors.ts';
import { writtenUnit } from './entry-units.ts';
import { marksOf } from './number-marks.ts';
import { ambiguousNumber, isAmbiguous, type NumberSource, readNumber } from './parse-number.ts';
import { readerUnit, signOf } from './reader-unit.ts';
import { type SymbolUnit, symbolUnit } from './symbol.ts';
import type { UnitSystem } from './system.ts';

/** What is known of the field: its canonical unit, the reader's units and locale, the path to name in a fault. */
export type EntryField = {
  readonly unit: string;
  readonly system: UnitSystem;
  readonly path?: string;
  readonly locale?: string;
  readonly from?: NumberSource;
};

/**
 * Reads a quantity as a grower writes it into the field's canonical unit.
 *
 * A number without unit is in the unit the reader is shown. Either system is accepted: `3 ft 6 in`, `3'6"`, `1 1/2 yd3`,
 * `40 gal`, `90 cm`, `2 lb 4 oz`, `0.3 in/day`, `55 F`, `20 %`. Numbers are read as the reader's locale writes them, and with
 * point or comma as decimal sign where only one reading is possible (see `parse-number.ts`).
 *
 * @example parseQuantity('3 ft 6 in', { unit: 'm', system: 'us' }) // 1.0668
 * @throws InputError at the field's path: empty, no number, unknown unit, a unit of another kind
 */
export function parseQuantity(text: string, field: EntryField): number {
  const path = field.path ?? 'value';
  const wanted = symbolUnit(field.unit);
  if (wanted === undefined) return refuse(path, 'unknown-unit', `"${field.unit}" is not a unit known here.`);
  const shown = readerUnit(field.unit, field.system);
  const terms = termsOf(text, { ...field, path }, shown.sign);
  const only = terms[0];
  if (terms.length === 1 && only !== undefined && only.unit === '') return (only.value - shown.offset) / shown.factor;
  return terms.reduce((sum, each) => sum + canonicalOf(each, wanted, { ...field, path }, shown.sign), 0);
}

type Term = { readonly value: number; readonly unit: string };

function termsOf(text: string, field: EntryField & { readonly path: string }, sign: string): readonly Term[] {
  const { path, locale = 'en-US', from } = field;
  let rest = text.replace(/^\s*\$/, '').trim();
  if (rest === '') refuse(path, 'empty', `A quantity is needed here, for instance 12 ${sign}.`.replace(' .', '.'));
  const terms: Term[] = [];
  while (rest !== '') {
    const found = nextTerm(rest, locale);
    const value = found === undefined ? undefined : readNumber(found.number, locale, from);
    if (found !== undefined && value === undefined && isAmbiguous(found.number, locale))
      return refuse(path, 'ambiguous', ambiguousNumber(found.number));
    if (found === undefined || value === undefined)
      return refuse(
        path,
        'not-a-quantity',
        `"${text}" is not a quantity. Write a number and a unit, for instance 12 ${sign}.`.replace(' .', '.'),
      );
    terms.push({ value, unit: found.unit });
    rest = found.rest;
  }
  return terms;
}

function nextTerm(
  text: string,
  locale: string,
): { readonly number: string; readonly unit: string; readonly rest: string } | undefined {
  const found = (/^['’]$/.test(marksOf(locale).group) ? numberFormWithApostrophes : numberForm).exec(text);
  if (found === null) return undefined;
  const after = text.slice(found[0].length);
  // a unit runs to the next number that is not part of it (`lb/1000 ft2`, `ft2`)
  const unit = /^\s*(?:[^\d\s](?:[^\d]|(?<=\/\s*)\d+|(?<=per\s+)\d+|(?<=[a-z^])[23](?![\d.]))*)?/i.exec(after)?.[0] ?? '';
  return { number: found[0], unit: unit.replace(/[\s,+&]+$|(\band\b\s*$)/g, '').trim(), rest: after.slice(unit.length).trim() };
}

const numberForm =
  /^[-−+]?\s*(?:\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?!\d)(?:[.,]\d+)?|\d[\d.,]*(?:[\s-]+\d+\s*\/\s*\d+|\s*\/\s*\d+|\s*[½¼¾⅓⅔⅛])?|[.,]\d+|[½¼¾⅓⅔⅛])/;
/** Where numbers are grouped by apostrophes these are no feet: `1’234`. */
const numberFormWithApostrophes = new RegExp(numberForm.source.replace('[ ', "['’ "));

function canonicalOf(each: Term, wanted: SymbolUnit, field: EntryField & { readonly path: string }, sign: string): number {
  if (each.unit === '') return refuse(field.path, 'no-unit', `${each.value}: write its unit, as in the other part.`);
  const unit = writtenUnit(each.unit, wanted.dimension);
  if (unit === undefined)
    return refuse(field.path, 'unknown-unit', `"${each.unit}" is not a unit known here. This field takes ${sign} and the like.`);
  if (unit.dimension !== wanted.dimension)
    return refuse(
      field.path,
      'other-dimension',
      `"${each.unit}" measures something else. This field takes ${sign === '' ? signOf(field.unit) : sign} and the like.`,
    );
  return (each.value * unit.factor + unit.offset - wanted.offset) / wanted.factor;
}
