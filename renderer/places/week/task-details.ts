import type { Reader } from '../../../planner/units/reader.ts';
import { say } from '../../words/say.ts';
import type { Task } from './week-days.ts';

/** What is said of a task beside its title: where, since when, how it stands, its note. */
export const taskDetails = (task: Task, reader: Reader): string =>
  [
    task.places !== '' && !task.title.includes(task.places) ? say('for {places}', { places: task.places }) : '',
    task.late ? say('was due {due}', { due: reader.date(task.due) }) : '',
    task.state === 'done' && task.doneDate !== null ? say('done {doneDate}', { doneDate: reader.date(task.doneDate) }) : '',
    task.state === 'skipped' ? say('skipped') : '',
    task.note,
  ]
    .filter((part) => part !== '')
    .join(', ');
