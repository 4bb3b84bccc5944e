import { IntlMessageFormat } from 'intl-messageformat';
import { marksOf } from '../../planner/units/number-marks.ts';
import { languageSpoken, numberLocale } from './language.ts';

type Message = {
  readonly format: IntlMessageFormat['format'];
  /** The values that its plurals count by. */
  readonly counted: ReadonlySet<string>;
};

const kept = { plain: new Map<string, Message>(), tagged: new Map<string, Message>() };

/** The message for an English sentence, read once. `tagged` messages may hold elements as `<b>…</b>`. */
export function messageOf(sentence: string, kind: 'plain' | 'tagged'): Message {
  const known = kept[kind].get(sentence);
  if (known !== undefined) return known;
  const { code, sentences } = languageSpoken();
  const read = new IntlMessageFormat(sentences[sentence] ?? sentence, code, undefined, {
    ignoreTag: kind === 'plain',
    formatters: {
      // what a plural counts is written as the farm's numbers are, its words follow the language
      getNumberFormat: (_, options) => new Intl.NumberFormat(numberLocale(), { ...options, numberingSystem: 'latn' }),
      getDateTimeFormat: (locale, options) => new Intl.DateTimeFormat(locale, options),
      getPluralRules: (locale, options) => new Intl.PluralRules(locale, options),
    },
  });
  const made: Message = { format: (values) => read.format(values), counted: new Set(countedIn(read.getAst())) };
  kept[kind].set(sentence, made);
  return made;
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
export const written = (value: number): string => String(value).replace('.', marksOf(numberLocale()).decimal);
