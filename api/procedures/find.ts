import { namesOfFarm } from '../../db/repositories/names.ts';
import { nothing, read } from '../procedure.ts';

export const find = {
  names: read({ input: nothing, run: ({ db }) => namesOfFarm(db) }),
};
