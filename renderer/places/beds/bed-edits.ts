import type { api } from '../../client/api.ts';
import type { InputOf } from '../../client/use-read.ts';
import type { Edit } from '../../table/paste-block.ts';
import type { BedRow } from './bed-types.ts';

type SetMany = InputOf<typeof api.beds.setMany>;

/** Edits of one act in the table as one change: the edits of each bed together. */
export function bedEditsOf(edits: readonly Edit<BedRow>[]): SetMany {
  const byBed = Map.groupBy(edits, (edit) => edit.row.bedId);
  return {
    edits: [...byBed].map(([bedId, list]) => ({
      bedId,
      revision: list[0]?.row.revision ?? 0,
      values: Object.fromEntries(list.map((edit) => [edit.key, edit.value])),
    })),
  };
}
