import type { TestProgram } from '../builders/a-farm.ts';
import { PLANNED, WORKED } from '../builders/reading-inputs.ts';

export type ChangeRun = { readonly name: string; readonly run: () => Promise<unknown> };

/** The changes a grower makes most, each as one transaction on disk, and taking one back. */
export async function changesOf(t: TestProgram): Promise<readonly ChangeRun[]> {
  const beds = (await t.api.beds.list()).slice(0, 200);
  const plantingId = t.farm.sqlite
    .prepare<[], string>(
      `SELECT h.planting_id FROM harvest h JOIN planting p ON p.id = h.planting_id WHERE p.season_id = '${WORKED}' ORDER BY h.id DESC`,
    )
    .pluck()
    .get();
  const date = t.farm.sqlite
    .prepare<[string], string>('SELECT max(date) FROM harvest WHERE planting_id = ?')
    .pluck()
    .get(plantingId ?? '');
  const board = (await t.api.plantings.board({ seasonId: PLANNED })).rows;
  const revisions = new Map<string, number>();
  const next = (id: string, first: number): number => {
    const now = revisions.get(id) ?? first;
    revisions.set(id, now + 1);
    return now;
  };
  let turn = 0;
  const setSun = (of: typeof beds) => {
    const sun = turn++ % 2 === 0 ? ('full' as const) : ('light-shade' as const);
    return t.api.beds.setMany({
      edits: of.map((bed) => ({ bedId: bed.bedId, revision: next(bed.bedId, bed.revision), values: { sun } })),
    });
  };
  return [
    { name: 'beds.setMany, one bed', run: () => setSun(beds.slice(0, 1)) },
    { name: 'beds.setMany, 200 beds', run: () => setSun(beds) },
    {
      name: 'plantings.move, one planting',
      run: () => {
        const [first] = board;
        if (first === undefined) throw new Error('the plan is empty');
        return t.api.plantings.move({
          moves: [
            {
              plantingId: first.plantingId,
              revision: next(first.plantingId, first.revision),
              how: 'move',
              days: turn++ % 2 === 0 ? 7 : -7,
            },
          ],
        });
      },
    },
    {
      name: 'harvest.add',
      run: () => t.api.harvest.add({ date: date ?? '', plantingId: plantingId ?? '', amount: 1.2, unit: 'kg', confirmed: true }),
    },
    { name: 'labour.add', run: () => t.api.labour.add({ date: '2026-11-20', task: 'weeding', labour_min: 30 }) },
    { name: 'undo.undo', run: () => t.api.undo.undo() },
    { name: 'undo.redo', run: () => t.api.undo.redo() },
  ];
}
