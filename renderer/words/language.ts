import type { Translations } from './translations.ts';

/** The language that the pages speak, and its sentences by their English. Set before any page's module is loaded. */
export type Language = { readonly code: string; readonly sentences: Translations };

let spoken: Language = { code: 'en', sentences: {} };

export const languageSpoken = (): Language => spoken;

/** Called once, before the pages' modules: their columns and lists of choices are written in this language. */
export function speak(language: Language): void {
  spoken = language;
}
