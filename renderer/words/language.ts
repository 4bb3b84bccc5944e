import { ENGLISH, type Language } from '../../planner/words/translations.ts';

let spoken: Language = ENGLISH;
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
