import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

let sentences: Readonly<Record<string, unknown>> = {};

/**
 * Takes the sentences of a language from the catalogue that the pages use too. A language without a file, and one that cannot be
 * read, leave the English.
 */
export function speak(resources: string, code: string, log: (line: string) => void): void {
  sentences = {};
  const path = join(resources, 'texts', `${code}.json`);
  if (!/^[A-Za-z]{2,3}(-[A-Za-z\d]+)*$/.test(code) || !existsSync(path)) return;
  try {
    sentences = JSON.parse(readFileSync(path, 'utf8')) as Readonly<Record<string, unknown>>;
  } catch (error) {
    log(`${path} could not be read: ${String(error)}`);
  }
}

/** A sentence of the window's menus and dialogs in the reader's language; `{name}` in it is given its value. */
export function say(sentence: string, values: Readonly<Record<string, string>> = {}): string {
  const known = sentences[sentence];
  const said = typeof known === 'string' ? known : sentence;
  return said.replaceAll(/\{(\w+)\}/g, (whole, name: string) => values[name] ?? whole);
}
