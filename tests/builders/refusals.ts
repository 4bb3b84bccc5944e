import { InputError } from '../../planner/errors.ts';

/** The unit that a sentence about a limit names after the value: "depth_m: 9 m is above …" tells "m". */
const unitIn = (message: string): string => /: \S+ (.+?) (?:is below|is above|will not do)/.exec(message)?.[1] ?? '';

/** What a call is refused for: field, code and, where the sentence names a unit, that: `depth_m too-large m`. Not refused: `taken`. */
export function refusal(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    if (error instanceof InputError)
      return error.faults.map(({ path, code, message }) => `${path} ${code} ${unitIn(message)}`.trimEnd()).join('; ');
    throw error;
  }
  return 'taken';
}
