import type { Figure, Working } from '../../planner/working.ts';

const shown = ({ value, unit }: Figure): string => `${Number(value.toPrecision(6))} ${unit}`.trim();

function filled(what: string, text: string): void {
  if (text.trim() === '') throw new Error(`a working with an empty ${what}`);
}

/**
 * What a reader can check of a working: each symbol with its figure and the kind of its origin, the figures put in at each
 * step and what comes out, the result. Wording is left out, but a title, name, source or note that is empty is an error.
 */
export function asRead(working: Working): readonly string[] {
  filled('title', working.title);
  filled('formula', working.formula);
  for (const symbol of working.symbols) {
    filled('name', symbol.name);
    filled('origin', symbol.origin.text);
  }
  for (const step of working.steps) filled('step', step.text);
  if (working.sources.length === 0) throw new Error('a working without a source');
  for (const text of [...working.sources, ...working.notes]) filled('source or note', text);
  return [
    ...working.symbols.map((each) => `${each.symbol} = ${shown(each.figure)} (${each.origin.kind})`),
    ...working.steps.map((step) => `${step.figures} -> ${shown(step.result)}`.trim()),
    ...(working.parts ?? []).map((part) => `with ${shown(part.result)}`),
    `result ${shown(working.result)}, notes ${working.notes.length}`,
  ];
}
