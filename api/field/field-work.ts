import { rememberedSetting, rememberSetting } from '../../db/repositories/farm.ts';
import { addDays, type IsoDate, mondayOf, parseIsoDate } from '../../planner/calendar.ts';
import { refuse } from '../../planner/errors.ts';
import { Refusal } from '../errors.ts';
import { entryChoices } from '../harvest/entry-choices.ts';
import { writeHarvest } from '../harvest/write-harvests.ts';
import type { Ctx } from '../procedure.ts';
import { markTaskDone, skipTask } from '../procedures/week.ts';
import { weekTasks } from '../season/week-tasks.ts';
import type { FieldEntry, FieldWork } from './field-app.ts';

/** Keys of entries that were taken in, kept in the farm so that a phone may send one again after a restart too. */
const TAKEN = 'field.taken';
const KEPT = 3000;

const takenOf = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];

/** This week and Harvest as a phone in the field gets them, from the farm that was open when the page was switched on. */
export function fieldWorkOf(ctx: () => Ctx): FieldWork {
  return {
    week() {
      const { db, today, now, farm, program } = ctx();
      const from = mondayOf(today);
      const to = addDays(from, 7);
      const { plantings, units } = entryChoices(db, today, now, program.places.resources);
      return {
        farm: farm.path,
        today,
        tasks: weekTasks(db, today, from, to)
          .filter((task) => task.state === 'open')
          .map(({ key, kind, title, due, late, places, note }) => ({ key, kind, title, due, late, places, note })),
        plantings: plantings.map((each) => ({
          plantingId: each.plantingId,
          name: `${each.crop} ${each.number}`,
          inWindow: each.inWindow,
          beds: each.beds,
          units: (units[each.cropId] ?? [])
            .filter((unit) => !unit.listed || unit.unit === each.yieldUnit)
            .map((unit) => unit.unit),
          unit: each.yieldUnit,
        })),
      };
    },
    log(entry, device) {
      const { db, farm, today, now } = ctx();
      const taken = takenOf(rememberedSetting(db, TAKEN));
      if (taken.includes(entry.id)) return { id: entry.id, taken: 'before' };
      farm.change(noteOf(entry), () => {
        take(entry, device, { db, today, now });
        // not taken back with the entry, so that a phone that sends it again does not bring back what was undone
        farm.unrecorded(() => rememberSetting(db, TAKEN, [...taken, entry.id].slice(-KEPT)));
      });
      return { id: entry.id, taken: 'now' };
    },
  };
}

const noteOf = (entry: FieldEntry): string =>
  entry.kind === 'harvest' ? `Log a harvest in the field: ${entry.amount} ${entry.unit}` : 'Mark a task as done in the field';

function take(entry: FieldEntry, device: string, { db, today, now }: Pick<Ctx, 'db' | 'today' | 'now'>): void {
  const date = parseIsoDate(entry.date);
  if (date > today) refuse('date', 'too-late', 'What is done cannot lie in the future.');
  if (entry.kind === 'harvest') {
    writeHarvest(
      db,
      {
        ...entry,
        date,
        unit_kg: null,
        unitSource: '',
        grade: 'first',
        outletId: null,
        price_minor: null,
        culls_kg: 0,
        cullReason: '',
        labour_min: null,
        picker: device,
        conditions: '',
        confirmed: entry.confirmed,
      },
      { today, now },
    );
    return;
  }
  const from = mondayOf(date as IsoDate);
  const task = weekTasks(db, today, from, addDays(from, 7)).find((each) => each.key === entry.taskId);
  if (task === undefined) throw new Refusal({ code: 'not-found', what: 'task' });
  if (entry.state === 'done') markTaskDone(db, task, date);
  else skipTask(db, task);
}
