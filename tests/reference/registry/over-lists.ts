import type { Answer, CaseValues } from '../registry.ts';

/**
 * A list where a plain value would do means: evaluate for each. Lists of one length go side by side; each answer then
 * is a list too.
 */
export function overLists<I>(answer: (inputs: I) => CaseValues): Answer {
  return ((inputs: Readonly<Record<string, unknown>>) => {
    const lists = Object.entries(inputs).filter((entry): entry is [string, unknown[]] => Array.isArray(entry[1]));
    if (lists.length === 0) return answer(inputs as I);
    const length = Math.max(...lists.map(([, list]) => list.length));
    const each = Array.from({ length }, (_, at) =>
      answer({ ...inputs, ...Object.fromEntries(lists.map(([name, list]) => [name, list[at]])) } as I),
    );
    const names = Object.keys(each[0] ?? {});
    return Object.fromEntries(names.map((name) => [name, each.map((values) => values[name])]));
  }) as Answer;
}
