/** Where a value used in a computation came from. */
export type Origin =
  | { readonly kind: 'entry'; readonly text: string }
  | { readonly kind: 'library'; readonly text: string }
  | { readonly kind: 'source'; readonly text: string }
  | { readonly kind: 'practice'; readonly text: string }
  | { readonly kind: 'computed'; readonly text: string };

/**
 * A number as the reader is shown it. `unit` is the canonical unit's symbol as it stands in names (`m2`, `L`,
 * `L_per_day`, `minor` for money); the printer turns it into the reader's unit.
 */
export type Figure = { readonly value: number; readonly unit: string };

export type WorkingSymbol = {
  readonly symbol: string;
  readonly name: string;
  readonly figure: Figure;
  readonly origin: Origin;
};

/** One line of the calculation: what is done, the same with figures put in, and what comes out. */
export type WorkingStep = { readonly text: string; readonly figures: string; readonly result: Figure };

/**
 * How a headline figure came about: formula, each symbol with value, unit and origin, the steps, the result, and
 * what the figure rests on. A working may hold workings of the figures it builds on.
 */
export type Working = {
  readonly title: string;
  readonly formula: string;
  readonly symbols: readonly WorkingSymbol[];
  readonly steps: readonly WorkingStep[];
  readonly result: Figure;
  readonly sources: readonly string[];
  readonly notes: readonly string[];
  readonly parts?: readonly Working[];
};

export const entry = (text = 'your entry'): Origin => ({ kind: 'entry', text });
export const library = (text: string): Origin => ({ kind: 'library', text });
export const source = (text: string): Origin => ({ kind: 'source', text });
export const practice = (text = 'common practice, no source'): Origin => ({ kind: 'practice', text });
export const computed = (text = 'computed'): Origin => ({ kind: 'computed', text });
