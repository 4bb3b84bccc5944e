import type { Language } from './translations.ts';

/** An English sentence with places for values, ready to be found in a finished text. */
export type Form = {
  readonly sentence: string;
  readonly names: readonly string[];
  readonly like: RegExp;
  /** How many of its letters are fixed. */
  readonly letterCount: number;
};

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
          letterCount: fixed.join('').length,
        },
      ];
    })
    .toSorted((a, b) => b.letterCount - a.letterCount);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** Says a sentence in a language: {@link readMessage} with the reader's numbers. */
type Say = (sentence: string, values?: Readonly<Record<string, string>>) => string;

/**
 * How a language says texts that the program made (a working, a note of undo, a fault, a caution, a report's line).
 *
 * Such texts are finished English. A constant one is looked up as it stands; one with values in it is found by its form
 * (`Move {1} beds` in `Move 12 beds`), and its values, themselves said where they are sentences, are put into the
 * translation. What is not found stays as it is.
 */
export function finishedTextIn({ sentences }: Language, say: Say): (text: string) => string {
  let forms: readonly Form[] | undefined;
  const wordOf = (value: string): string => (sentences[value.trim()] === undefined ? value : say(value));
  return (text) => {
    if (sentences[text] !== undefined) return say(text);
    forms ??= formsOf(Object.keys(sentences));
    for (const { sentence, names, like } of forms) {
      const found = like.exec(text);
      if (found !== null) return say(sentence, Object.fromEntries(names.map((name, at) => [name, wordOf(found[at + 1] ?? '')])));
    }
    return text;
  };
}
