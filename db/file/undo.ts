import type Database from 'better-sqlite3';

export type UndoState = { readonly undo: string | null; readonly redo: string | null };

type StepRow = { readonly id: number; readonly note: string };

/** How many steps can be taken back, and how many single row changes are kept for it. */
const KEEP_STEPS = 500;
const KEEP_CHANGES = 400_000;

/** Keeps the grower's changes so that each can be taken back and done again, also after a restart. */
export function undoLog(sqlite: Database.Database, now: () => string) {
  const record = sqlite.prepare('UPDATE temp.undo_now SET step = ?');
  const stepNow = sqlite.prepare<[], { step: number | null }>('SELECT step FROM temp.undo_now');
  const addStep = sqlite.prepare('INSERT INTO undo_step(note, made_at) VALUES (?, ?)');
  const dropStep = sqlite.prepare('DELETE FROM undo_step WHERE id = ?');
  const countOf = sqlite.prepare<[number | bigint], { n: number }>('SELECT count(*) AS n FROM undo_change WHERE step_id = ?');
  const dropUndone = sqlite.prepare('DELETE FROM undo_step WHERE undone = 1');
  const dropOrphans = sqlite.prepare('DELETE FROM undo_change WHERE step_id NOT IN (SELECT id FROM undo_step)');
  const lastDone = sqlite.prepare<[], StepRow>('SELECT id, note FROM undo_step WHERE undone = 0 ORDER BY id DESC LIMIT 1');
  const firstUndone = sqlite.prepare<[], StepRow>('SELECT id, note FROM undo_step WHERE undone = 1 ORDER BY id LIMIT 1');
  const statementsOf = sqlite.prepare<[number], { statement: string }>(
    'SELECT statement FROM undo_change WHERE step_id = ? ORDER BY id DESC',
  );
  const clear = sqlite.prepare('DELETE FROM undo_change WHERE step_id = ?');
  const mark = sqlite.prepare('UPDATE undo_step SET undone = ? WHERE id = ?');

  /** Runs a change as one step. To be called inside a transaction. */
  function recordStep<T>(note: string, run: () => T): T {
    dropUndone.run();
    const { lastInsertRowid } = addStep.run(note, now());
    record.run(lastInsertRowid);
    try {
      const answer = run();
      if ((countOf.get(lastInsertRowid)?.n ?? 0) === 0) dropStep.run(lastInsertRowid);
      return answer;
    } finally {
      record.run(null);
    }
  }

  /** Runs writes that no step of undo takes back, also in the midst of a change. To be called inside a transaction. */
  function aside<T>(run: () => T): T {
    const step = stepNow.get()?.step ?? null;
    record.run(null);
    try {
      return run();
    } finally {
      record.run(step);
    }
  }

  function replay(step: StepRow | undefined, undone: boolean): string | null {
    if (step === undefined) return null;
    const statements = statementsOf.all(step.id);
    clear.run(step.id);
    sqlite.pragma('defer_foreign_keys = ON');
    record.run(step.id);
    try {
      for (const { statement } of statements) sqlite.exec(statement);
    } finally {
      record.run(null);
    }
    mark.run(undone ? 1 : 0, step.id);
    return step.note;
  }

  /** Forgets the oldest steps beyond what is kept. */
  function prune(): void {
    sqlite.prepare('DELETE FROM undo_step WHERE id <= (SELECT max(id) FROM undo_step) - ?').run(KEEP_STEPS);
    sqlite
      .prepare(
        `DELETE FROM undo_step WHERE id <= coalesce((SELECT step_id FROM undo_change ORDER BY id DESC LIMIT 1 OFFSET ?), 0)
         AND id < (SELECT max(id) FROM undo_step)`,
      )
      .run(KEEP_CHANGES);
    dropOrphans.run();
  }

  return {
    recordStep,
    aside,
    undo: () => replay(lastDone.get(), true),
    redo: () => replay(firstUndone.get(), false),
    state: (): UndoState => ({ undo: lastDone.get()?.note ?? null, redo: firstUndone.get()?.note ?? null }),
    prune,
  };
}
