import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { finishedTextIn } from '../../planner/words/finished-text.ts';
import { readMessage } from '../../planner/words/message.ts';
import { pseudoOf } from '../../planner/words/pseudo.ts';
import { ENGLISH, type Language, TEST_LANGUAGE, type Translations } from '../../planner/words/translations.ts';

/** One who says the program's texts in a reader's language: for what is made here whole, as the report and the menu. */
export type Speaker = {
  /** BCP 47. */
  readonly language: string;
  readonly say: (text: string) => string;
};

const tag = /^[a-z]{2,3}(?:-[a-z0-9]{2,8}){0,3}$/i;

/** A language from its file in `resources/texts/`; English where there is none of that name. */
function languageFrom(resources: string, code: string): Language {
  const sentencesOf = (name: string) =>
    JSON.parse(readFileSync(join(resources, 'texts', `${name}.json`), 'utf8')) as Translations;
  if (code === TEST_LANGUAGE) {
    return { code, sentences: Object.fromEntries(Object.keys(sentencesOf('en')).map((key) => [key, pseudoOf(key)])) };
  }
  const known = code !== ENGLISH.code && tag.test(code) && existsSync(join(resources, 'texts', `${code}.json`));
  return known ? { code, sentences: sentencesOf(code) } : ENGLISH;
}

/** @param resources the folder of the data that ships. @param numberLocale by which the numbers in its sentences are written */
export function speakerOf(resources: string, code: string, numberLocale: string): Speaker {
  const language = languageFrom(resources, code);
  const say = finishedTextIn(language, (sentence, values = {}) =>
    String(readMessage(sentence, 'plain', language, () => numberLocale).format(values)),
  );
  return { language: language.code, say };
}
