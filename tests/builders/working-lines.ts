import type { Figure, Working } from '../../planner/working.ts';

const printed = ({ value, unit }: Figure): string => `${value} ${unit}`.trimEnd();

/** What a working shows, short: each symbol with its figure, what each step comes to, and the result. */
export function linesOf(working: Working): {
  readonly symbols: Readonly<Record<string, string>>;
  readonly steps: readonly string[];
  readonly result: string;
} {
  return {
    symbols: Object.fromEntries(working.symbols.map(({ symbol, figure }) => [symbol, printed(figure)])),
    steps: working.steps.map(({ result }) => printed(result)),
    result: printed(working.result),
  };
}
