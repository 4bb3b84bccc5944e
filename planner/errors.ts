/** One thing wrong with an entry: where (the field's path), a code for programs, a sentence for the reader. */
export type Fault = { readonly path: string; readonly code: string; readonly message: string };

/** An entry that cannot be used. Carries every fault found, so that a page can show each at its field. */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    super(faults.map((fault) => fault.message).join(' '));
    this.faults = faults;
  }
}

/** Throws an {@link InputError} about one field. */
export function refuse(path: string, code: string, message: string): never {
  throw new InputError([{ path, code, message }]);
}

/**
 * Refuses a number outside `least` to `most`, both included, and anything that is not a finite number.
 * @param unit the symbol the reader sees, '' for a pure number
 * @throws InputError naming the field
 */
export function requireRange(path: string, value: number, least: number, most: number, unit: string): void {
  const of = unit === '' ? '' : ` ${unit}`;
  if (!Number.isFinite(value)) refuse(path, 'not-a-number', `${path}: a number is needed here.`);
  if (value < least) refuse(path, 'too-small', `${path}: ${value}${of} is below the least that makes sense, ${least}${of}.`);
  if (value > most) refuse(path, 'too-large', `${path}: ${value}${of} is above the most that makes sense, ${most}${of}.`);
}

/** Refuses anything that is not a finite number above zero. @throws InputError naming the field */
export function requirePositive(path: string, value: number, unit: string): void {
  const of = unit === '' ? '' : ` ${unit}`;
  if (!Number.isFinite(value)) refuse(path, 'not-a-number', `${path}: a number is needed here.`);
  if (value <= 0) refuse(path, 'not-positive', `${path}: ${value}${of} will not do; it must be more than zero.`);
}

/** Refuses anything that is not a whole number from `least` to `most`. @throws InputError naming the field */
export function requireWhole(path: string, value: number, least: number, most: number): void {
  if (!Number.isInteger(value)) refuse(path, 'not-whole', `${path}: a whole number is needed here.`);
  requireRange(path, value, least, most, '');
}
