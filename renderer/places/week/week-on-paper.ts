import type { PrintedPart } from '../../../api/print/printed-document.ts';
import { addDays, type IsoDate, isoWeek } from '../../../planner/calendar.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import { say } from '../../words/say.ts';
import { taskDetails } from './task-details.ts';
import { type Task, weekDays } from './week-days.ts';

/** The week as a sheet for the clipboard: a box to tick before each task, room for notes behind it. */
export function weekOnPaper(tasks: readonly Task[], from: IsoDate, reader: Reader): readonly PrintedPart[] {
  const { late, days } = weekDays(tasks, from);
  const openLate = late.filter((task) => task.state === 'open');
  const title = say('Week {week}: {from} to {addDays}', {
    week: isoWeek(from).week,
    from: reader.date(from),
    addDays: reader.date(addDays(from, 6)),
  });
  const parts: PrintedPart[] = [{ kind: 'heading', level: 1, text: title }];
  if (openLate.length > 0)
    parts.push({ kind: 'heading', level: 2, text: say('Late ({late})', { late: openLate.length }) }, listOf(openLate, reader));
  for (const day of days)
    if (day.tasks.length > 0)
      parts.push({ kind: 'heading', level: 2, text: reader.date(day.date, 'long') }, listOf(day.tasks, reader));
  if (parts.length === 1) parts.push({ kind: 'text', text: say('Nothing is due this week.') });
  return parts;
}

const boxes = { open: '[   ]', done: '[x]', skipped: '–' } as const;

function listOf(tasks: readonly Task[], reader: Reader): PrintedPart {
  const side = 'left' as const;
  const head = ['', say('Task'), say('Details'), say('Notes')].map((title) => ({ title, side }));
  return {
    kind: 'table',
    head,
    rows: tasks.map((task) => [boxes[task.state], task.title, taskDetails(task, reader), '']),
    totals: null,
    shares: [0.06, 0.42, 0.22, 0.3],
  };
}
