import { IntlMessageFormat } from 'intl-messageformat';
import { marksOf } from '../units/number-marks.ts';
import type { Language } from './translations.ts';

export type Message = {
  readonly format: IntlMessageFormat['format'];
  /** The values that its plurals count by. */
  readonly counted: ReadonlySet<string>;
};

/**
 * The message for an English sentence in a language; what it has no translation of stays English. `tagged` messages may
 * hold elements as `<b>…</b>`. What a plural counts is written as the numbers of `numberLocale()`, its words follow the language.
 */
export function readMessage(
  sentence: string,
  kind: 'plain' | 'tagged',
  { code, sentences }: Language,
  numberLocale: () => string,
): Message {
  const read = new IntlMessageFormat(sentences[sentence] ?? sentence, code, undefined, {
    ignoreTag: kind === 'plain',
    formatters: {
      getNumberFormat: (_, options) => new Intl.NumberFormat(numberLocale(), { ...options, numberingSystem: 'latn' }),
      getDateTimeFormat: (locale, options) => new Intl.DateTimeFormat(locale, options),
      getPluralRules: (locale, options) => new Intl.PluralRules(locale, options),
    },
  });
  return { format: (values) => read.format(values), counted: new Set(countedIn(read.getAst())) };
}

type Ast = ReturnType<IntlMessageFormat['getAst']>;

const countedIn = (ast: Ast): readonly string[] =>
  ast.flatMap((element) => {
    if ('options' in element) {
      const below = Object.values(element.options).flatMap((option) => countedIn(option.value));
      return 'pluralType' in element ? [element.value, ...below] : below;
    }
    return 'children' in element ? countedIn(element.children) : [];
  });

/** A number in a sentence: never grouped, since it may be a year. What has a unit is printed by the reader before. */
export const numberInSentence = (value: number, locale: string): string => String(value).replace('.', marksOf(locale).decimal);
