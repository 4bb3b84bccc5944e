import { fold } from '../table/filter-rows.ts';

/** Something to go to or do. */
export type Finding = {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly detail: string;
  readonly keys?: string;
  readonly go: () => void;
};

const MOST = 40;

/**
 * The findings for what was typed, best first: every word must occur; a title that begins with the words comes before
 * one that has them at the beginning of a word, and that before the rest.
 */
export function findIn(all: readonly Finding[], typed: string): readonly Finding[] {
  const words = fold(typed)
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) return all.slice(0, MOST);
  const whole = words.join(' ');
  const ranked = all.flatMap((each, order) => {
    const title = fold(each.title);
    const text = `${title} ${fold(each.kind)} ${fold(each.detail)}`;
    if (!words.every((word) => text.includes(word))) return [];
    const rank =
      title === whole
        ? 0
        : title.startsWith(whole)
          ? 1
          : words.every((word) => startsWord(title, word))
            ? 2
            : words.every((word) => title.includes(word))
              ? 3
              : 4;
    return [{ each, rank, order }];
  });
  return ranked
    .sort((a, b) => a.rank - b.rank || a.order - b.order)
    .slice(0, MOST)
    .map(({ each }) => each);
}

const startsWord = (title: string, word: string): boolean =>
  title.startsWith(word) || title.includes(` ${word}`) || title.includes(`-${word}`);
