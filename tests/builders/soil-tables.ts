import { readFileSync } from 'node:fs';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';

/** The shipped soil tables, as the program reads them. */
export const soilTables = JSON.parse(
  readFileSync(new URL('../../resources/soil-tables.json', import.meta.url), 'utf8'),
) as SoilTables;
