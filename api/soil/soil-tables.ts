import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';

const read = new Map<string, SoilTables>();

/** The shipped soil tables, read once a folder. */
export function soilTablesIn(resources: string): SoilTables {
  const known = read.get(resources);
  if (known !== undefined) return known;
  const tables = JSON.parse(readFileSync(join(resources, 'soil-tables.json'), 'utf8')) as SoilTables;
  read.set(resources, tables);
  return tables;
}
