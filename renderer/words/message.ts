import { type Message, numberInSentence, readMessage } from '../../planner/words/message.ts';
import { languageSpoken, numberLocale } from './language.ts';

const kept = { plain: new Map<string, Message>(), tagged: new Map<string, Message>() };

/** The message for an English sentence in the language spoken, read once. */
export function messageOf(sentence: string, kind: 'plain' | 'tagged'): Message {
  const known = kept[kind].get(sentence);
  if (known !== undefined) return known;
  const made = readMessage(sentence, kind, languageSpoken(), numberLocale);
  kept[kind].set(sentence, made);
  return made;
}

/** A number in a sentence, as the farm writes numbers. */
export const written = (value: number): string => numberInSentence(value, numberLocale());
