import { fold } from '../table/filter-rows.ts';
import { oneSlipApart } from './one-slip.ts';

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
 * one that has them at the beginning of a word, and that before the rest. Where nothing has them, titles a slip away do.
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
  if (ranked.length === 0) return nearlyCalled(all, words);
  return ranked
    .sort((a, b) => a.rank - b.rank || a.order - b.order)
    .slice(0, MOST)
    .map(({ each }) => each);
}

/** Shorter words are codes and numbers, of which another one is meant by another letter. */
const SHORTEST_WITH_SLIP = 4;

const nearlyCalled = (all: readonly Finding[], words: readonly string[]): readonly Finding[] =>
  all
    .filter((each) => {
      const title = fold(each.title);
      const parts = title.split(/[^\p{L}\p{N}]+/u);
      return words.every(
        (word) => title.includes(word) || (word.length >= SHORTEST_WITH_SLIP && parts.some((part) => oneSlipApart(part, word))),
      );
    })
    .slice(0, MOST);

const startsWord = (title: string, word: string): boolean =>
  title.startsWith(word) || title.includes(` ${word}`) || title.includes(`-${word}`);
