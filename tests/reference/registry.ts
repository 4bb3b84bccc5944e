import { costs } from './registry/costs.ts';
import { irrigation } from './registry/irrigation.ts';
import { planting } from './registry/planting.ts';
import { practiceFacts } from './registry/practice.ts';
import { soilFertility } from './registry/soil-fertility.ts';
import { soilGeometry } from './registry/soil-geometry.ts';
import { water } from './registry/water.ts';

/** What a case hands in and what a planner function answers, by the case file's own names. */
export type CaseValues = Readonly<Record<string, unknown>>;

/**
 * Converts a case's units with `planner/units`, calls the planner, names the answers. No arithmetic of the trade.
 * `what` is the case's own description, for the few functions where only it tells which shape is meant.
 */
export type Answer = (inputs: never, what: string) => CaseValues;

export type Registry = Readonly<Record<string, Answer>>;

/** Every function that a case file may name. */
export const registry: Registry = {
  ...soilGeometry,
  ...soilFertility,
  ...planting,
  ...costs,
  ...water,
  ...irrigation,
  ...practiceFacts,
};
