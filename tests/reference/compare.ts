import type { CaseValues, Registry } from './registry.ts';

export type Tolerance = {
  readonly abs?: number;
  readonly rel?: number;
  readonly keys?: Readonly<Record<string, number | readonly number[]>>;
};
export type ReferenceCase = {
  readonly id: string;
  readonly fn: string;
  readonly what?: string;
  readonly inputs: CaseValues;
  readonly expected: CaseValues;
  readonly tolerance: Tolerance;
  readonly source: string;
};
export type Outcome =
  | { readonly state: 'passed' }
  | { readonly state: 'skipped' }
  | { readonly state: 'failed'; readonly differences: readonly string[] };

const show = (value: unknown): string => (value === undefined ? 'nothing' : JSON.stringify(value));

function within(got: number, expected: number, key: string, tolerance: Tolerance): boolean {
  if (got === expected) return true;
  const given = tolerance.keys?.[key];
  const abs = (typeof given === 'number' ? given : undefined) ?? tolerance.abs ?? 0;
  const rel = tolerance.keys?.[key] === undefined ? (tolerance.rel ?? 0) : 0;
  return Math.abs(got - expected) <= abs + rel * Math.abs(expected);
}

/** A limit may itself be a list, one for each element of the answer. */
function ofElement(tolerance: Tolerance, key: string, at: number): Tolerance {
  const given = tolerance.keys?.[key];
  return typeof given === 'object' ? { ...tolerance, keys: { ...tolerance.keys, [key]: given[at] ?? 0 } } : tolerance;
}

/** Every place where `got` is not what was expected; numbers within the tolerance of the answer's name. */
export function differences(path: string, key: string, got: unknown, expected: unknown, tolerance: Tolerance): string[] {
  if (typeof expected === 'number') {
    return typeof got === 'number' && within(got, expected, key, tolerance)
      ? []
      : [`${path}: expected ${show(expected)}, got ${show(got)}`];
  }
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) return [`${path}: expected ${show(expected)}, got ${show(got)}`];
    return expected.flatMap((each, at) => differences(`${path}[${at}]`, key, got[at], each, ofElement(tolerance, key, at)));
  }
  if (expected !== null && typeof expected === 'object') {
    if (got === null || typeof got !== 'object') return [`${path}: expected ${show(expected)}, got ${show(got)}`];
    return Object.entries(expected).flatMap(([name, each]) =>
      differences(
        `${path}.${name}`,
        tolerance.keys?.[name] === undefined ? key : name,
        (got as CaseValues)[name],
        each,
        tolerance,
      ),
    );
  }
  return got === expected ? [] : [`${path}: expected ${show(expected)}, got ${show(got)}`];
}

/** Runs one case. A case with nothing to compare fails. */
export function runCase(each: ReferenceCase, registry: Registry): Outcome {
  const answer = registry[each.fn];
  if (answer === undefined) return { state: 'skipped' };
  const names = Object.keys(each.expected);
  if (names.length === 0) return { state: 'failed', differences: ['the case expects nothing'] };
  try {
    const got = answer(each.inputs as never, each.what ?? '');
    const found = names.flatMap((name) => differences(name, name, got[name], each.expected[name], each.tolerance));
    return found.length === 0 ? { state: 'passed' } : { state: 'failed', differences: found };
  } catch (error) {
    return {
      state: 'failed',
      differences: [`threw ${error instanceof Error ? `${error.name}: ${error.message}` : String(error)}`],
    };
  }
}
