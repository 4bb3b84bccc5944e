import type { FarmDb } from '../../db/file/open-farm.ts';
import { codesInUse } from '../../db/repositories/beds.ts';
import { InputError } from '../../planner/errors.ts';

/** @throws InputError when a bed in use has this code */
export function requireFreeCode(db: FarmDb, code: string, path = 'code'): void {
  if (codesInUse(db).has(code))
    throw new InputError([{ path, code: 'in-use', message: `Another bed is called ${code}. Codes of beds in use differ.` }]);
}
