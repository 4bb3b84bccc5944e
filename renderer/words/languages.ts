import { pseudoOf } from '../../planner/words/pseudo.ts';
import { ENGLISH, type Language, TEST_LANGUAGE, type Translations } from '../../planner/words/translations.ts';

const files = import.meta.glob<Translations>('../../resources/texts/*.json', { import: 'default' });
const KEY = 'bedwright.language';

const codeOf = (path: string): string => path.replace(/^.*\/(.+)\.json$/, '$1');

/** The languages there are files of. English needs none: its sentences are the keys. */
export const languageCodes: readonly string[] = Object.keys(files).map(codeOf).toSorted();

/** A language's name in that language: `Deutsch`. */
export const languageName = (code: string): string => new Intl.DisplayNames(code, { type: 'language' }).of(code) ?? code;

/** What was chosen on this computer, else the first of the system's languages that there is a file of, else English. */
export function chosenLanguage(stored: string | null, wanted: readonly string[]): string {
  if (stored !== null && (languageCodes.includes(stored) || stored === TEST_LANGUAGE)) return stored;
  const known = wanted.flatMap((code) => [code, code.split('-')[0] ?? code]).find((code) => languageCodes.includes(code));
  return known ?? 'en';
}

export const storedLanguage = (): string => chosenLanguage(window.localStorage.getItem(KEY), window.navigator.languages);

/** Keeps the choice and reads the page anew, since every column and list was written in the language before. */
export function chooseLanguage(code: string): void {
  window.localStorage.setItem(KEY, code);
  window.location.reload();
}

/** Reads a language's sentences. */
export async function readLanguage(code: string): Promise<Language> {
  if (code === 'en') return ENGLISH;
  if (code === TEST_LANGUAGE) {
    const english = (await files['../../resources/texts/en.json']?.()) ?? {};
    return { code, sentences: Object.fromEntries(Object.keys(english).map((key) => [key, pseudoOf(key)])) };
  }
  return { code, sentences: (await files[`../../resources/texts/${code}.json`]?.()) ?? {} };
}
