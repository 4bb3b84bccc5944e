import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';

/** Reads one of the shipped CSV tables, each record by its column names. */
export function csvRecords(resources: string, file: string): Readonly<Record<string, string>>[] {
  return parse(readFileSync(join(resources, file), 'utf8'), { columns: true, bom: true }) as Record<string, string>[];
}
