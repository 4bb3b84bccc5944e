import { finishedTextIn } from '../../planner/words/finished-text.ts';
import { languageSpoken } from './language.ts';
import { say } from './say.ts';

let said: ((text: string) => string) | undefined;

/** A text that the program made (a working, a note of undo, a fault, a caution) in the reader's language. */
export function sayKnown(text: string): string {
  said ??= finishedTextIn(languageSpoken(), say);
  return said(text);
}
