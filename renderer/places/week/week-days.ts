import { addDays, type IsoDate } from '../../../planner/calendar.ts';
import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';

export type Task = OutputOf<typeof api.week.list>['tasks'][number];

export type DayOfWork = { readonly date: IsoDate; readonly tasks: readonly Task[] };

const kindOrder = ['sow-indoors', 'pot-on', 'sow', 'set-out', 'feed', 'harvest', 'clear'];

/** A week's work by day, and what was left from before. Within a day: sowing first, clearing last. */
export function weekDays(
  tasks: readonly Task[],
  monday: IsoDate,
): { readonly late: readonly Task[]; readonly days: readonly DayOfWork[] } {
  const place = (task: Task): number => {
    const at = kindOrder.indexOf(task.kind);
    return at < 0 ? kindOrder.length : at;
  };
  const inOrder = (list: readonly Task[]): readonly Task[] =>
    [...list].sort((a, b) => place(a) - place(b) || (a.title < b.title ? -1 : 1));
  return {
    late: tasks.filter((task) => task.due < monday),
    days: Array.from({ length: 7 }, (_, at) => {
      const date = addDays(monday, at);
      return { date, tasks: inOrder(tasks.filter((task) => task.due === date)) };
    }),
  };
}

/** The later of two days. Dates in ISO form compare as text. */
export const laterOf = (a: IsoDate, b: IsoDate): IsoDate => [a, b].toSorted()[1] ?? b;
