import type { crop, cropValue } from '../../db/schema/crops.ts';
import { cropColumns } from './crop-columns.ts';
import { csvRecords } from './csv-records.ts';

export type CropRow = typeof crop.$inferInsert;
export type CropValueRow = typeof cropValue.$inferInsert;

/** `season=KNOTT_TEMP;yield=TAMU~m` as a table: the source of each group of values; `~m` from memory, `~p` common practice. */
const sourcesOf = (text: string): ReadonlyMap<string, string> =>
  new Map(text.split(';').map((pair) => pair.split('=') as [string, string]));

/** The shipped crop library as rows of a farm file; what the table leaves blank has no row: it is not known. */
export function readCropLibrary(resources: string): { readonly crops: CropRow[]; readonly values: CropValueRow[] } {
  const crops: CropRow[] = [];
  const values: CropValueRow[] = [];
  for (const record of csvRecords(resources, 'crops.csv')) {
    const id = record['id'] ?? '';
    crops.push({
      id,
      name: record['common_name'] ?? '',
      botanicalName: record['botanical_name'] ?? '',
      family: record['family'] ?? '',
      cropGroup: record['group'] ?? '',
      life: record['life'] ?? '',
      notes: record['notes'] ?? '',
    });
    const sources = sourcesOf(record['source_keys'] ?? '');
    for (const { column, fact, factor, group } of cropColumns) {
      const text = record[column] ?? '';
      if (text === '') continue;
      const source = sources.get(group) ?? '';
      const number = factor === null ? null : Number((Number(text) * factor).toPrecision(12));
      values.push({
        id: `${id}:${fact}`,
        cropId: id,
        name: fact,
        number,
        words: factor === null ? text : null,
        origin: 'library',
        source,
      });
    }
  }
  return { crops, values };
}
