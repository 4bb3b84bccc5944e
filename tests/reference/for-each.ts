import type { Answer, CaseValues } from './registry.ts';

/**
 * Lets an answer for plain values serve lists: where an input is a list, the answer is worked out for each element and
 * every value of it becomes a list.
 * @param lists inputs that are lists by nature and go in whole
 */
export function forEach<Inputs>(answer: (inputs: Inputs, what: string) => CaseValues, lists: readonly string[] = []): Answer {
  return ((inputs: Record<string, unknown>, what = '') => {
    const spread = Object.entries(inputs).filter(([name, value]) => Array.isArray(value) && !lists.includes(name));
    const first = spread[0]?.[1];
    if (!Array.isArray(first)) return answer(inputs as Inputs, what);
    const rows = first.map((_, at) => {
      const one = Object.fromEntries(spread.map(([name, value]) => [name, (value as unknown[])[at]]));
      return answer({ ...inputs, ...one } as Inputs, what);
    });
    const names = Object.keys(rows[0] ?? {});
    return Object.fromEntries(names.map((name) => [name, rows.map((row) => row[name])]));
  }) as Answer;
}
