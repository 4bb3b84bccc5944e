import { createElement, Fragment, type ReactNode } from 'react';
import { languageSpoken } from './language.ts';
import { messageOf, written } from './message.ts';

export type Value = string | number | boolean | null | undefined;

/**
 * A sentence of the program in the reader's language. The English sentence, in ICU MessageFormat, is its key; what no
 * translation has is said in English.
 *
 * @example say('{beds, plural, one {# bed} other {# beds}} moved.', { beds: 2 }) // '2 beds moved.'
 */
export function say(sentence: string, values?: Readonly<Record<string, Value>>): string {
  if (values === undefined && !/[{']/.test(sentence)) return languageSpoken().sentences[sentence] ?? sentence;
  const message = messageOf(sentence, 'plain');
  return String(message.format(values === undefined ? undefined : withNumbers(values, message.counted)));
}

type Part = ReactNode | ((words: ReactNode) => ReactNode);

/**
 * A sentence that holds elements: `sayWith('{count} in <b>all</b>', { count: <Figure … />, b: (words) => <b>{words}</b> })`.
 */
export function sayWith(sentence: string, parts: Readonly<Record<string, Part>>): ReactNode {
  const message = messageOf(sentence, 'tagged');
  const said = message.format<ReactNode>(wrapped(withNumbers(parts, message.counted)));
  return Array.isArray(said) ? createElement(Fragment, null, ...said) : said;
}

/** Numbers as the reader's country writes them; those that a plural counts stay numbers. */
function withNumbers<Of>(values: Readonly<Record<string, Of>>, counted: ReadonlySet<string>): Record<string, Of | string> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      typeof value === 'number' && !counted.has(name) ? written(value) : value,
    ]),
  );
}

/** Tags get their words as one node; nothing becomes nothing. */
function wrapped(parts: Readonly<Record<string, Part>>): Record<string, ReactNode | ((words: ReactNode[]) => ReactNode)> {
  return Object.fromEntries(
    Object.entries(parts).map(([name, part]) => [
      name,
      typeof part === 'function' ? (words: ReactNode[]) => part(createElement(Fragment, null, ...words)) : (part ?? ''),
    ]),
  );
}
