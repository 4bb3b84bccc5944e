import { InputError } from '../../planner/errors.ts';

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
