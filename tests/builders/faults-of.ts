import { expect, test } from 'vitest';
import { type Fault, InputError } from '../../planner/errors.ts';

/** The paths of the faults that a call is refused with; empty where it is not refused. */
export function faultPaths(call: () => unknown): readonly string[] {
  try {
    call();
  } catch (error) {
    if (error instanceof InputError) return error.faults.map((fault) => fault.path);
    throw error;
  }
  return [];
}

/** A fault as its field, its code, and where a limit is named that limit with its unit: `depth_m too-large (5 m)`. */
function asLine({ path, code, message }: Fault): string {
  expect(message).toMatch(/\w \w/);
  const limit = /makes sense, (.*)\.$/.exec(message)?.[1] ?? /: (.*) will not do;/.exec(message)?.[1];
  return limit === undefined ? `${path} ${code}` : `${path} ${code} (${limit})`;
}

/** The faults that a call is refused with, one line each; empty where it is not refused. */
export function refusals(call: () => unknown): readonly string[] {
  try {
    call();
  } catch (error) {
    if (error instanceof InputError) return error.faults.map(asLine);
    throw error;
  }
  return [];
}

/** One test for each call: it is refused with just this fault. */
export function testRefusals(cases: readonly (readonly [line: string, call: () => unknown])[]): void {
  test.each(cases)('%s', (line, call) => expect(refusals(call)).toEqual([line]));
}
