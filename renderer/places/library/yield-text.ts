import type { Reader } from '../../../planner/units/reader.ts';

/** A yield of an area in the reader's units: `1.2 lb/ft²`, `12 stem/ft²`. What is sold by a unit of its own keeps its word. */
export function yieldText(yield_per_m2: number, unit: string, reader: Pick<Reader, 'print' | 'scale' | 'sign'>): string {
  return unit === 'kg'
    ? reader.print(yield_per_m2, 'kg_per_m2', 2)
    : `${reader.print(yield_per_m2 / reader.scale(1, 'm2'), '', 2)} ${unit}/${reader.sign('m2')}`;
}
