import { randomBytes } from 'node:crypto';
import { ZodError } from 'zod';
import { FarmFileError } from '../db/file/errors.ts';
import { InputError } from '../planner/errors.ts';
import { type ErrorForPage, Refusal } from './errors.ts';

export type Log = (line: string) => void;

/** Says an error to the page: what the reader can mend as such, anything else as our fault, logged under a reference. */
export function explainError(error: unknown, log: Log): ErrorForPage {
  if (error instanceof ZodError) {
    const faults = error.issues.map((issue) => ({
      path: issue.path.join('.'),
      code: issue.code ?? 'wrong',
      message: issue.message,
    }));
    return { code: 'input', faults, message: faults.map((fault) => fault.message).join(' ') };
  }
  if (error instanceof InputError) return { code: 'input', faults: error.faults, message: error.message };
  if (error instanceof Refusal) return { ...error.detail, message: error.message };
  if (error instanceof FarmFileError) return { code: 'farm-file', reason: error.reason, message: error.message };
  const reference = randomBytes(4).toString('hex');
  log(`[${reference}] ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  return { code: 'bug', reference, message: `Something went wrong in the program, reference ${reference}. Nothing was changed.` };
}
