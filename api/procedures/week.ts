import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { changePlanting, plantingOfId } from '../../db/repositories/plantings.ts';
import { addTask, changeTask, removeTask, taskOfId, taskOfKey } from '../../db/repositories/tasks.ts';
import { addDays, daysBetween, type IsoDate, mondayOf } from '../../planner/calendar.ts';
import { refuse } from '../../planner/errors.ts';
import { moved } from '../../planner/season/move-planting.ts';
import { plantingTaskKinds } from '../../planner/season/tasks.ts';
import { Refusal } from '../errors.ts';
import { change, read } from '../procedure.ts';
import { isoDate } from '../season/planting-entry.ts';
import { type WeekTask, weekTasks } from '../season/week-tasks.ts';

/** The task as the page knows it: the plan's own tasks are written down when they are first touched. */
const taskEntry = z.object({
  key: z.string().min(1),
  taskId: z.string().nullable(),
  kind: z.string().max(40),
  title: z.string().max(400),
  due: isoDate,
  plantingId: z.string().nullable(),
  bedId: z.string().nullable(),
});
type TaskEntry = z.output<typeof taskEntry>;

function write(
  db: FarmDb,
  task: TaskEntry,
  values: {
    readonly state?: WeekTask['state'];
    readonly doneDate?: IsoDate | null;
    readonly dueDate?: IsoDate;
    readonly note?: string;
  },
): void {
  const present = task.taskId === null ? taskOfKey(db, task.key) : taskOfId(db, task.taskId);
  if (present !== undefined) {
    changeTask(db, present.id, values);
    return;
  }
  addTask(db, {
    id: newId<string>(),
    kind: task.kind,
    title: task.title,
    dueDate: task.due,
    originKey: task.key,
    plantingId: task.plantingId,
    bedId: task.bedId,
    ...values,
  });
}

const isPlantingKind = (kind: string): kind is (typeof plantingTaskKinds)[number] =>
  (plantingTaskKinds as readonly string[]).includes(kind);

/** The real date goes to the planting, and from there moves the later ones. */
function feedBack(db: FarmDb, task: TaskEntry, date: IsoDate): void {
  if (task.plantingId === null || !isPlantingKind(task.kind)) return;
  const record = plantingOfId(db, task.plantingId);
  if (record === undefined) throw new Refusal({ code: 'not-found', what: 'planting' });
  const actual = actualOf(task.kind, record.firstHarvestActual === null, date);
  if (actual === null) return;
  if (!changePlanting(db, record.id, record.revision, actual)) throw new Refusal({ code: 'changed-meanwhile', what: 'planting' });
}

/** Marks a task done on a day, and gives the real date to its planting; also for what is logged in the field. */
export function markTaskDone(db: FarmDb, task: z.output<typeof taskEntry>, date: IsoDate): void {
  write(db, task, { state: 'done', doneDate: date });
  feedBack(db, task, date);
}

/** Leaves a task out for good. */
export function skipTask(db: FarmDb, task: z.output<typeof taskEntry>): void {
  write(db, task, { state: 'skipped' });
}

function actualOf(kind: (typeof plantingTaskKinds)[number], isFirst: boolean, date: IsoDate) {
  switch (kind) {
    case 'sow-indoors':
      return { sownActual: date, state: 'sown' as const };
    case 'sow':
      return { sownActual: date, inBedActual: date, state: 'growing' as const };
    case 'set-out':
      return { inBedActual: date, state: 'growing' as const };
    case 'harvest':
      return isFirst ? { firstHarvestActual: date, state: 'harvesting' as const } : null;
    case 'clear':
      return { clearedActual: date, state: 'cleared' as const };
    case 'pot-on':
      return null;
  }
}

export const week = {
  /** A week's work from its Monday, with what is late. This week when none is named. */
  list: read({
    input: z.object({ monday: isoDate.nullable(), weeks: z.int().min(1).max(57).default(1) }),
    run({ db, today }, { monday, weeks }) {
      const from = mondayOf(monday ?? today);
      return { today, from, to: addDays(from, 7 * weeks), tasks: weekTasks(db, today, from, addDays(from, 7 * weeks)) };
    },
  }),
  done: change({
    note: ({ tasks }) => (tasks.length === 1 ? `Mark as done: ${tasks[0]?.title}` : `Mark ${tasks.length} tasks as done`),
    input: z.object({ tasks: z.array(taskEntry).min(1, 'Choose a task.').max(2000), date: isoDate }),
    run({ db, today }, { tasks, date }) {
      if (date > today) refuse('date', 'too-late', 'What is done cannot lie in the future.');
      for (const task of tasks) markTaskDone(db, task, date);
      return { done: tasks.length };
    },
  }),
  skip: change({
    note: ({ tasks }) => (tasks.length === 1 ? `Skip the task ${tasks[0]?.title}` : `Skip ${tasks.length} tasks`),
    input: z.object({ tasks: z.array(taskEntry).min(1, 'Choose a task.').max(2000) }),
    run({ db }, { tasks }) {
      for (const task of tasks) skipTask(db, task);
      return { skipped: tasks.length };
    },
  }),
  open: change({
    note: ({ task }) => `Open again: ${task.title}`,
    input: z.object({ task: taskEntry }),
    run({ db }, { task }) {
      write(db, task, { state: 'open', doneDate: null });
      return { key: task.key };
    },
  }),
  /** To another day. Sowing and setting out move the whole planting with them; other work moves alone. */
  move: change({
    note: ({ tasks, to }) =>
      tasks.length === 1 ? `Move the task ${tasks[0]?.title} to ${to}` : `Move ${tasks.length} tasks to ${to}`,
    input: z.object({ tasks: z.array(taskEntry).min(1, 'Choose a task.').max(2000), to: isoDate }),
    run({ db }, { tasks, to }) {
      for (const task of tasks) {
        const leads = task.kind === 'sow' || task.kind === 'sow-indoors' || task.kind === 'set-out';
        if (!leads || task.plantingId === null) {
          write(db, task, { dueDate: to });
          continue;
        }
        const record = plantingOfId(db, task.plantingId);
        if (record === undefined) throw new Refusal({ code: 'not-found', what: 'planting' });
        const dates = moved(
          {
            sow: record.sowDate as IsoDate | null,
            potOn: record.potOnDate as IsoDate | null,
            inBed: record.inBedDate as IsoDate,
            firstHarvest: record.firstHarvestDate as IsoDate,
            lastHarvest: record.lastHarvestDate as IsoDate,
            free: record.clearDate as IsoDate,
          },
          daysBetween(task.due, to),
        );
        const written = changePlanting(db, record.id, record.revision, {
          ...(record.sownActual === null ? { sowDate: dates.sow } : {}),
          potOnDate: dates.potOn,
          inBedDate: dates.inBed,
          firstHarvestDate: dates.firstHarvest,
          lastHarvestDate: dates.lastHarvest,
          clearDate: dates.free,
          ...(record.sownActual === null ? {} : { pinned: true }),
        });
        if (!written) throw new Refusal({ code: 'changed-meanwhile', what: 'planting' });
      }
      return { moved: tasks.length };
    },
  }),
  add: change({
    note: ({ title }) => `Add the task ${title}`,
    input: z.object({
      title: z.string().trim().min(1, 'Say what is to be done.').max(200, 'Two hundred letters at most.'),
      due: isoDate,
      bedId: z.string().nullable(),
      note: z.string().max(2000),
    }),
    run({ db }, { title, due, bedId, note }) {
      const id = newId<string>();
      addTask(db, { id, kind: 'own', title, dueDate: due, bedId, note });
      return { taskId: id };
    },
  }),
  remove: change({
    note: ({ taskId }, { db }) => `Take away the task ${nameOf(db, 'task', taskId)}`,
    input: z.object({ taskId: z.string() }),
    run({ db }, { taskId }) {
      const task = taskOfId(db, taskId);
      if (task === undefined || !removeTask(db, taskId)) throw new Refusal({ code: 'not-found', what: 'task' });
      return { taskId };
    },
  }),
};
