/**
 * Keeps the rows in which every typed word occurs in some cell's shown text. Words in quotation marks are taken whole,
 * a leading minus leaves rows out. Upper and lower case are alike, and so are letters with and without accents.
 */
export function filterRows<Row>(rows: readonly Row[], typed: string, textOf: (row: Row) => string): readonly Row[] {
  const words = wordsOf(typed);
  if (words.length === 0) return rows;
  return rows.filter((row) => {
    const text = fold(textOf(row));
    return words.every(({ word, wanted }) => text.includes(word) === wanted);
  });
}

export const fold = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

function wordsOf(typed: string): readonly { readonly word: string; readonly wanted: boolean }[] {
  const found = fold(typed).match(/-?"[^"]+"|\S+/g) ?? [];
  return found
    .map((part) => ({ word: part.replace(/^-/, '').replaceAll('"', ''), wanted: !(part.startsWith('-') && part.length > 1) }))
    .filter(({ word }) => word !== '' && word !== '-');
}
