import { languageSpoken } from './language.ts';
import { say } from './say.ts';

/** An English sentence with places for values, ready to be found in a finished text. */
type Form = { readonly sentence: string; readonly names: readonly string[]; readonly like: RegExp; readonly fixed: number };

let forms: readonly Form[] | undefined;

/**
 * A text that the program made (a working, a note of undo, a fault, a caution) in the reader's language.
 *
 * Such texts reach the page as finished English. A constant one is looked up as it stands; one with values in it is
 * found by its form (`Move {1} beds` in `Move 12 beds`), and its values are put into the translation. What is not
 * found stays as it is.
 */
export function sayKnown(text: string): string {
  const { sentences } = languageSpoken();
  const known = sentences[text];
  if (known !== undefined) return say(text);
  forms ??= formsOf(Object.keys(sentences));
  for (const { sentence, names, like } of forms) {
    const found = like.exec(text);
    if (found !== null) return say(sentence, Object.fromEntries(names.map((name, at) => [name, wordOf(found[at + 1] ?? '')])));
  }
  return text;
}

/** A value that is itself a sentence of the catalogue is said too. */
const wordOf = (value: string): string => (languageSpoken().sentences[value.trim()] === undefined ? value : say(value));

const place = /\{([\p{L}\d_]+)\}/u;

/** The forms among a catalogue's sentences; those with most fixed text first, so that the closest is taken. */
export function formsOf(sentences: readonly string[]): readonly Form[] {
  return sentences
    .flatMap((sentence): readonly Form[] => {
      const parts = sentence.split(place);
      const fixed = parts.filter((_, at) => at % 2 === 0);
      const isForm = parts.length > 1 && /\p{L}{3,}/u.test(fixed.join(' ')) && !/[{}]/.test(fixed.join(''));
      if (!isForm) return [];
      return [
        {
          sentence,
          names: parts.filter((_, at) => at % 2 === 1),
          like: new RegExp(`^${fixed.map(escaped).join('(.*?)')}$`, 'su'),
          fixed: fixed.join('').length,
        },
      ];
    })
    .toSorted((a, b) => b.fixed - a.fixed);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
