import type { FarmDb } from '../../db/file/open-farm.ts';
import { insertAll } from '../../db/repositories/insert-all.ts';
import { crop, cropValue } from '../../db/schema/crops.ts';
import { material } from '../../db/schema/materials.ts';
import { readCropLibrary } from './read-crops.ts';
import { readMaterialLibrary } from './read-materials.ts';

/** Puts the shipped crop and material libraries into a new farm file. */
export function fillLibrary(db: FarmDb, resources: string): void {
  const { crops, values } = readCropLibrary(resources);
  insertAll(db, crop, crops);
  insertAll(db, cropValue, values);
  insertAll(db, material, readMaterialLibrary(resources));
}
