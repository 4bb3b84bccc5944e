import type { Answer, CaseValues } from './registry.ts';

type Numbers = Readonly<Record<string, number>>;

/**
 * An answer for plain numbers that also takes lists: "a list where a plain value would do means: evaluate for each".
 * Lists in one case must be equally long; every answer is then a list.
 */
export function forEachOfList(answer: (inputs: Numbers, what: string) => CaseValues): Answer {
  return (inputs: CaseValues, what: string) => {
    const lists = Object.values(inputs).filter(Array.isArray);
    if (lists.length === 0) return answer(inputs as Numbers, what);
    const length = lists[0]?.length ?? 0;
    if (lists.some((list) => list.length !== length)) throw new Error('lists of different lengths in one case');
    const answers = Array.from({ length }, (_, at) =>
      answer(
        Object.fromEntries(Object.entries(inputs).map(([key, value]) => [key, Array.isArray(value) ? value[at] : value])),
        what,
      ),
    );
    const names = Object.keys(answers[0] ?? {});
    return Object.fromEntries(names.map((name) => [name, answers.map((each) => each[name])]));
  };
}
