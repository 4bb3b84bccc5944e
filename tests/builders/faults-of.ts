import { expect, test } from 'vitest';
import { type Fault, InputError } from '../../planner/errors.ts';

/** The faults that a call is refused with; none where it is not refused. */
export function faultsOf(call: () => unknown): readonly Fault[] {
  try {
    call();
  } catch (error) {
    if (error instanceof InputError) return error.faults;
    throw error;
  }
  return [];
}

/** Their paths alone. */
export const faultPaths = (call: () => unknown): readonly string[] => faultsOf(call).map(({ path }) => path);

/** A fault as its field, its code, and where a limit is named that limit with its unit: `depth_m too-large (5 m)`. */
function asLine({ path, code, message }: Fault): string {
  expect(message).toMatch(/\w \w/);
  const limit = /makes sense, (.*)\.$/.exec(message)?.[1] ?? /: (.*) will not do;/.exec(message)?.[1];
  return limit === undefined ? `${path} ${code}` : `${path} ${code} (${limit})`;
}

/** The faults of a call, one line each. */
export const refusals = (call: () => unknown): readonly string[] => faultsOf(call).map(asLine);

/** One test for each call: it is refused with just this fault. */
export function testRefusals(cases: readonly (readonly [line: string, call: () => unknown])[]): void {
  test.each(cases)('%s', (line, call) => expect(refusals(call)).toEqual([line]));
}

/** The unit that a sentence about a limit names after the value: "depth_m: 9 m is above …" tells "m". */
const unitIn = (message: string): string => /: \S+ (.+?) (?:is below|is above|will not do)/.exec(message)?.[1] ?? '';

/** What a call is refused for: field, code and, where the sentence names a unit, that: `depth_m too-large m`. Not refused: `taken`. */
export function refusal(call: () => unknown): string {
  const faults = faultsOf(call);
  const lines = faults.map(({ path, code, message }) => `${path} ${code} ${unitIn(message)}`.trimEnd());
  return faults.length === 0 ? 'taken' : lines.join('; ');
}
