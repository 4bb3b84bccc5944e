import { createElement, Fragment, type ReactNode } from 'react';
import { languageSpoken } from './language.ts';
import { messageOf } from './message.ts';

export type Value = string | number | boolean | null | undefined;

/**
 * A sentence of the program in the reader's language. The English sentence, in ICU MessageFormat, is its key; what no
 * translation has is said in English.
 *
 * @example say('{beds, plural, one {# bed} other {# beds}} moved.', { beds: 2 }) // '2 beds moved.'
 */
export function say(sentence: string, values?: Readonly<Record<string, Value>>): string {
  if (values === undefined && !/[{']/.test(sentence)) return languageSpoken().sentences[sentence] ?? sentence;
  return String(messageOf(sentence, 'plain').format(values));
}

type Part = ReactNode | ((words: ReactNode) => ReactNode);

/**
 * A sentence that holds elements: `sayWith('{count} in <b>all</b>', { count: <Figure … />, b: (words) => <b>{words}</b> })`.
 */
export function sayWith(sentence: string, parts: Readonly<Record<string, Part>>): ReactNode {
  const said = messageOf(sentence, 'tagged').format<ReactNode>(wrapped(parts));
  return Array.isArray(said) ? createElement(Fragment, null, ...said) : said;
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
