/** What a language says for each English sentence, both in ICU MessageFormat. */
export type Translations = Readonly<Record<string, string>>;
