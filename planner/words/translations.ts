/** What a language says for each English sentence, both in ICU MessageFormat. */
export type Translations = Readonly<Record<string, string>>;

/** A language by its BCP 47 tag, with its sentences by their English. */
export type Language = { readonly code: string; readonly sentences: Translations };

/** English needs no sentences: its own are the keys. */
export const ENGLISH: Language = { code: 'en', sentences: {} };

/** The test language, for which no file exists: English, accented and longer. The code is CLDR's for such a language. */
export const TEST_LANGUAGE = 'en-XA';
