import type { Translations } from './translations.ts';

/** The language that the pages speak, and its sentences by their English. Set before any page's module is loaded. */
export type Language = { readonly code: string; readonly sentences: Translations };

let spoken: Language = { code: 'en', sentences: {} };
let numbersAsIn = 'en-US';

export const languageSpoken = (): Language => spoken;

/** Called once, before the pages' modules: their columns and lists of choices are written in this language. */
export function speak(language: Language): void {
  spoken = language;
}

/** The locale by which numbers in sentences are written: that of the farm's settings, whatever the language. */
export function writeNumbersAs(locale: string): void {
  numbersAsIn = locale;
}

export const numberLocale = (): string => numbersAsIn;
