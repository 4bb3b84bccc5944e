import { randomBytes } from 'node:crypto';
import { CsvError } from 'csv-parse/sync';
import { ZodError } from 'zod';
import { FarmFileError } from '../db/file/errors.ts';
import { InputError } from '../planner/errors.ts';
import { type ErrorForPage, Refusal } from './errors.ts';

export type Log = (line: string) => void;

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

/** What the file's own rules say about a row that the procedures let through: two of a kind, or a row that points to nothing. */
function constraintOf(error: unknown): ErrorForPage | null {
  switch (codeOf(error)) {
    case 'SQLITE_CONSTRAINT_UNIQUE':
    case 'SQLITE_CONSTRAINT_PRIMARYKEY': {
      const column = error instanceof Error ? (/failed: \w+\.(\w+)/.exec(error.message)?.[1] ?? '') : '';
      const message =
        column === '' ? 'There is already one like this.' : `There is already one with this ${column.replaceAll('_', ' ')}.`;
      return { code: 'input', faults: [{ path: column, code: 'taken', message }], message };
    }
    case 'SQLITE_CONSTRAINT_FOREIGNKEY':
      return {
        code: 'in-use',
        what: 'row',
        message: 'This belongs to something that is no longer there, or something still needs it. Nothing was changed.',
      };
    case 'SQLITE_CONSTRAINT_CHECK': {
      const message = 'A value lies outside what makes sense here. Nothing was changed.';
      return { code: 'input', faults: [{ path: '', code: 'out-of-range', message }], message };
    }
    default:
      return null;
  }
}

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
  if (error instanceof CsvError) {
    const message = `The table cannot be read: ${error.message}. Nothing was taken in.`;
    return { code: 'input', faults: [{ path: 'text', code: 'not-a-table', message }], message };
  }
  const constraint = constraintOf(error);
  if (constraint !== null) return constraint;
  const reference = randomBytes(4).toString('hex');
  log(`[${reference}] ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  return { code: 'bug', reference, message: `Something went wrong in the program, reference ${reference}. Nothing was changed.` };
}
