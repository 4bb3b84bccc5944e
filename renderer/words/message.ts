import { IntlMessageFormat } from 'intl-messageformat';
import { languageSpoken } from './language.ts';

const kept = { plain: new Map<string, IntlMessageFormat>(), tagged: new Map<string, IntlMessageFormat>() };

/** The message for an English sentence, read once. `tagged` messages may hold elements as `<b>…</b>`. */
export function messageOf(sentence: string, kind: 'plain' | 'tagged'): IntlMessageFormat {
  const known = kept[kind].get(sentence);
  if (known !== undefined) return known;
  const { code, sentences } = languageSpoken();
  const made = new IntlMessageFormat(sentences[sentence] ?? sentence, code, undefined, { ignoreTag: kind === 'plain' });
  kept[kind].set(sentence, made);
  return made;
}
