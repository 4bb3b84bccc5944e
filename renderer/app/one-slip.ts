/**
 * Whether two words differ by one slip of the fingers at most: a letter too many, too few, another one, or two next to
 * each other changed about (the optimal string alignment distance, at most 1).
 */
export function oneSlipApart(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (long.length - short.length > 1) return false;
  let at = 0;
  while (at < short.length && short[at] === long[at]) at += 1;
  const rest = (word: string, from: number): string => word.slice(from);
  if (short.length < long.length) return rest(short, at) === rest(long, at + 1);
  const changedAbout = short[at] === long[at + 1] && short[at + 1] === long[at] && rest(short, at + 2) === rest(long, at + 2);
  return rest(short, at + 1) === rest(long, at + 1) || changedAbout;
}
