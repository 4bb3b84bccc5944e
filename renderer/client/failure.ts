import { type Fault, InputError } from '../../planner/errors.ts';
import { messageFor } from '../../planner/units/print-message.ts';
import type { UnitSystem } from '../../planner/units/system.ts';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';

/** Why a request was not done, in a form a page can show. */
export type Failure = {
  readonly code: string;
  readonly message: string;
  readonly faults: readonly Fault[];
  readonly reference?: string;
};

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

const isFault = (value: unknown): value is Fault =>
  isRecord(value) && typeof value['path'] === 'string' && typeof value['message'] === 'string';

/** Reads what the program answered when it did not do what was asked. Unknown errors keep their own message. */
export function failureOf(error: unknown): Failure {
  if (error instanceof InputError) return { code: 'input', message: sayKnown(error.message), faults: error.faults };
  const data = isRecord(error) && isRecord(error['data']) ? error['data']['bedwright'] : undefined;
  if (isRecord(data)) {
    const { code, message, faults, reference } = data;
    return {
      code: typeof code === 'string' ? code : 'bug',
      message: typeof message === 'string' ? sayKnown(message) : messageOf(error),
      faults: Array.isArray(faults) ? faults.filter(isFault) : [],
      ...(typeof reference === 'string' ? { reference } : {}),
    };
  }
  return { code: 'no-answer', message: unanswered(messageOf(error)), faults: [] };
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const unanswered = (message: string): string =>
  /fetch/i.test(message) ? say('The program does not answer. Is it still running? Nothing was changed.') : message;

/** The faults of one field, and of what lies below it: `beds.0` has those of `beds.0.depth_m`. */
export function faultsAt(faults: readonly Fault[], path: string): readonly Fault[] {
  return faults.filter((fault) => fault.path === path || fault.path.startsWith(`${path}.`));
}

/** Codes of faults that tell a limit: only their figures are put into the reader's units, never those in a name. */
const withLimit: ReadonlySet<string> = new Set([
  'too-large',
  'too-small',
  'not-positive',
  'out-of-range',
  'does-not-sum',
  'does-not-fit',
  'too-wide',
  'not-a-half-circle',
  'other-count',
]);

/** What a fault says, for a reader who sees it at its field: without the field's name in front, its limit in the reader's units. */
export function faultText(fault: Fault, system: UnitSystem, locale = 'en-US'): string {
  const named = `${fault.path.split('.').at(-1) ?? ''}: `;
  const message = sayKnown(fault.message);
  const said = message.startsWith(`${fault.path}: `)
    ? message.slice(fault.path.length + 2)
    : message.startsWith(named)
      ? message.slice(named.length)
      : message;
  const sentence = said.charAt(0).toUpperCase() + said.slice(1);
  return withLimit.has(fault.code) ? messageFor(sentence, system, locale) : sentence;
}
