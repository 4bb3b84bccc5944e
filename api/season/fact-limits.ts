import { hardinessClasses } from '../../planner/crops/hardiness.ts';
import { refuse, requireRange } from '../../planner/errors.ts';

/** Values that a fact told in words may take; others are free. */
const choices: Readonly<Record<string, readonly string[]>> = {
  season: ['cool', 'warm'],
  frost_tolerance: hardinessClasses,
  sow_method: ['direct', 'transplant', 'both', 'crown', 'set', 'tuber'],
  days_counted_from: ['seed', 'transplant', 'planting'],
  shade_tolerance: ['full-sun', 'light-shade'],
};

const limits: readonly (readonly [ending: string, least: number, most: number, unit: string])[] = [
  ['_C_days', 1, 20_000, 'C days'],
  ['_days', 0, 3650, 'days'],
  ['_min', 0, 60, 'weeks'],
  ['_max', 0, 60, 'weeks'],
  ['_share', 0, 1, ''],
  ['_C', -30, 60, 'C'],
  ['_m', 0.0005, 20, 'm'],
  ['_per_g', 0.01, 1_000_000, 'seeds/g'],
  ['_per_m2', 0, 10_000, '/m2'],
  ['_kg_per_kg', 0, 1, 'kg/kg'],
  ['trellis', 0, 1, ''],
  ['cells_per_tray', 1, 2000, ''],
];

/** Refuses a figure that no crop has, or a word that means nothing to the planner. @throws InputError at the field */
export function requireFact(name: string, number: number | null, words: string | null): void {
  if (number !== null) {
    const limit = limits.find(([ending]) => name.endsWith(ending));
    requireRange('number', number, limit?.[1] ?? 0, limit?.[2] ?? 1e6, limit?.[3] ?? '');
    return;
  }
  const allowed = choices[name];
  if (allowed !== undefined && (words === null || !allowed.includes(words)))
    refuse('words', 'not-a-choice', `One of these is needed: ${allowed.join(', ')}.`);
}
