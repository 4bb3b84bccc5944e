import { convert } from '../../../planner/units/convert.ts';
import type { api } from '../../client/api.ts';
import type { InputOf } from '../../client/use-read.ts';
import type { CellValue } from '../../table/column.ts';
import type { Edit } from '../../table/paste-block.ts';
import type { OutletRow, RunRow } from './line-rows.ts';

type NodeEdits = InputOf<typeof api.waterLines.setNodes>['edits'];
type RunEdits = InputOf<typeof api.waterLines.setRuns>['edits'];
type OutletEdits = InputOf<typeof api.waterLines.setOutlets>['edits'];

const metres = (value: CellValue): number | null => (typeof value === 'number' ? convert(value, 'mm', 'm') : null);

/** Which field of the file a column of a table stands for, and its value there. */
const runField = (key: string, value: CellValue): readonly [string, unknown] => {
  if (key === 'insideDiameter_mm') return ['insideDiameter_m', metres(value)];
  if (key === 'teeBore_mm') return ['teeBore_m', metres(value)];
  return [key, value];
};

const outletField = (key: string, value: CellValue): readonly [string, unknown] => {
  if (key === 'bore_mm') return ['bore_m', metres(value)];
  if (key === 'want') return ['wantShare', value];
  if (key === 'water_L') return ['fill_L', value];
  return [key, value];
};

function gathered(
  pairs: readonly (readonly [id: string, field: string, value: unknown])[],
): { readonly id: string; readonly values: Record<string, unknown> }[] {
  const byId = new Map<string, Record<string, unknown>>();
  for (const [id, field, value] of pairs) byId.set(id, { ...byId.get(id), [field]: value });
  return [...byId].map(([id, values]) => ({ id, values }));
}

const ofPlaces: ReadonlySet<string> = new Set(['to', 'elevation_m', 'zone']);

/** Edits of the table of runs: some are of the run, some of the place it leads to. */
export function editsOfRuns(edits: readonly Edit<RunRow>[]): { readonly nodes: NodeEdits; readonly runs: RunEdits } {
  const places = edits.filter((edit) => ofPlaces.has(edit.key));
  const own = edits.filter((edit) => !ofPlaces.has(edit.key));
  return {
    nodes: gathered(
      places.map((edit) => [edit.row.nodeId, edit.key === 'to' ? 'name' : edit.key, edit.value] as const),
    ) as NodeEdits,
    runs: gathered(own.map((edit) => [edit.row.runId, ...runField(edit.key, edit.value)] as const)) as RunEdits,
  };
}

export function editsOfOutlets(edits: readonly Edit<OutletRow>[]): OutletEdits {
  return gathered(edits.map((edit) => [edit.row.outletId, ...outletField(edit.key, edit.value)] as const)) as OutletEdits;
}
