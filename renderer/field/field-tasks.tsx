import { printDate } from '../../planner/units/print-date.ts';
import { say } from '../words/say.ts';
import { entryKey } from './entry-key.ts';
import type { FieldEntry, FieldWeek, Queued } from './field-types.ts';

/** This week's open work; what was ticked off here and waits to be sent is not shown again. */
export function FieldTasks({
  week,
  queue,
  onLog,
}: {
  readonly week: FieldWeek;
  readonly queue: readonly Queued[];
  readonly onLog: (entry: FieldEntry, text: string) => void;
}) {
  const ticked = new Set(queue.flatMap(({ entry }) => (entry.kind === 'task' ? [entry.taskId] : [])));
  const open = week.tasks.filter((task) => !ticked.has(task.key));
  if (open.length === 0) return <p className="field-card">{say('Nothing is left for this week.')}</p>;
  return (
    <ul className="field-list">
      {open.map((task) => (
        <li key={task.key} className="field-card">
          <p>
            <strong>{task.title}</strong>
          </p>
          <p className="soft">
            {task.late ? <span className="field-late">{say('Late,')} </span> : null}
            {printDate(task.due, navigator.language)}
            {task.places === '' ? '' : `, ${task.places}`}
          </p>
          {task.note === '' ? null : <p className="soft">{task.note}</p>}
          <button
            type="button"
            className="field-main"
            onClick={() =>
              onLog(
                { kind: 'task', id: entryKey(), date: localToday(), taskId: task.key, state: 'done' },
                say('Done: {task}', { task: task.title }),
              )
            }
          >
            {say('Done')}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Today by this phone's own clock. */
export function localToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
