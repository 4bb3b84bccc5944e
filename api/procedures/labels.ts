import { bedLabels } from '../../db/repositories/bed-labels.ts';
import { nothing, read } from '../procedure.ts';

export const labels = {
  beds: read({ input: nothing, run: ({ db, today }) => bedLabels(db, today) }),
};
