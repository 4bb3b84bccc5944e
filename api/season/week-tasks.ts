import type { FarmDb } from '../../db/file/open-farm.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { plannedFeeding, writtenTasks } from '../../db/repositories/tasks.ts';
import { addDays, type IsoDate } from '../../planner/calendar.ts';
import { type TaskPlanting, tasksOf } from '../../planner/season/tasks.ts';
import { traysOf } from './cells-of.ts';
import { type LoadedSeason, loadSeason } from './load-season.ts';

/** Something to do as This week shows it; `key` names it whether it was ever written down or not. */
export type WeekTask = {
  readonly key: string;
  readonly taskId: string | null;
  readonly kind: string;
  readonly title: string;
  readonly due: IsoDate;
  readonly planned: IsoDate;
  readonly state: 'open' | 'done' | 'skipped';
  readonly doneDate: IsoDate | null;
  readonly late: boolean;
  readonly plantingId: string | null;
  readonly bedId: string | null;
  readonly places: string;
  readonly note: string;
  readonly from: 'plan' | 'soil' | 'own';
};

/** Late work of the plan is shown this far back: what was left undone for longer is history. */
const LATE_DAYS = 60;

/** Tasks of every running or planned season between two days, the late ones of before with them, in order of date. */
export function weekTasks(db: FarmDb, today: IsoDate, from: IsoDate, to: IsoDate): readonly WeekTask[] {
  const written = writtenTasks(db);
  const byKey = new Map(written.flatMap((row) => (row.originKey === null ? [] : [[row.originKey, row] as const])));
  const earliest = addDays(from, -LATE_DAYS);
  const tasks: WeekTask[] = [];
  for (const season of seasonsOfFarm(db)) {
    if (season.state === 'closed' || season.startDate > addDays(to, 200) || season.endDate < earliest) continue;
    for (const task of planTasks(loadSeason(db, season.id))) {
      const row = byKey.get(task.key);
      const due = (row?.dueDate ?? task.due) as IsoDate;
      tasks.push({
        key: task.key,
        taskId: row?.id ?? null,
        kind: task.kind,
        title: task.title,
        due,
        planned: task.due,
        state: row?.state ?? 'open',
        doneDate: (row?.doneDate ?? null) as IsoDate | null,
        late: due < today && (row?.state ?? 'open') === 'open',
        plantingId: task.plantingId,
        bedId: task.bedId,
        places: task.places,
        note: row?.note ?? '',
        from: 'plan',
      });
    }
  }
  const planKeys = new Set(tasks.map((task) => task.key));
  tasks.push(...feedingTasks(db, byKey, today, earliest, to), ...ownTasks(written, planKeys, today));
  return tasks
    .filter((task) => task.due < to && (task.due >= from || (task.late && task.due >= earliest) || doneWithin(task, from, to)))
    .sort((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : a.key < b.key ? -1 : 1));
}

const doneWithin = (task: WeekTask, from: IsoDate, to: IsoDate): boolean =>
  task.doneDate !== null && task.doneDate >= from && task.doneDate < to;

type Written = ReturnType<typeof writtenTasks>[number];

function ownTasks(written: readonly Written[], planKeys: ReadonlySet<string>, today: IsoDate): readonly WeekTask[] {
  return written
    .filter(
      (row) =>
        row.originKey === null || (row.state !== 'open' && !planKeys.has(row.originKey) && !row.originKey.startsWith('feeding/')),
    )
    .map((row) => ({
      key: row.originKey ?? row.id,
      taskId: row.id,
      kind: row.kind,
      title: row.title,
      due: row.dueDate as IsoDate,
      planned: row.dueDate as IsoDate,
      state: row.state,
      doneDate: row.doneDate as IsoDate | null,
      late: row.state === 'open' && row.dueDate < today,
      plantingId: row.plantingId,
      bedId: row.bedId,
      places: '',
      note: row.note,
      from: row.originKey === null ? ('own' as const) : ('plan' as const),
    }));
}

function feedingTasks(
  db: FarmDb,
  byKey: ReadonlyMap<string, Written>,
  today: IsoDate,
  from: IsoDate,
  to: IsoDate,
): readonly WeekTask[] {
  const rows = Map.groupBy(plannedFeeding(db, from, to), (row) => row.id);
  return [...rows].flatMap(([id, beds]): WeekTask[] => {
    const [first] = beds;
    if (first === undefined) return [];
    const key = `feeding/${id}`;
    const row = byKey.get(key);
    const due = (row?.dueDate ?? first.date) as IsoDate;
    const places = beds.map((bed) => bed.bedCode).join(', ');
    return [
      {
        key,
        taskId: row?.id ?? null,
        kind: 'feed',
        title: `Give ${first.material}`,
        due,
        planned: first.date as IsoDate,
        state: row?.state ?? 'open',
        doneDate: (row?.doneDate ?? null) as IsoDate | null,
        late: due < today && (row?.state ?? 'open') === 'open',
        plantingId: null,
        bedId: beds.length === 1 ? first.bedId : null,
        places,
        note: row?.note ?? '',
        from: 'soil',
      },
    ];
  });
}

/** The work of a season's plan, with where it is done. */
export function planTasks(loaded: LoadedSeason) {
  const codes = new Map(loaded.beds.map((bed) => [bed.id, bed.code]));
  return loaded.records.flatMap((record, at) => {
    const plan = loaded.plantings[at];
    if (plan === undefined || record.state === 'failed') return [];
    const spans = loaded.spans.get(record.id) ?? [];
    const places = placesOf(spans.map((span) => codes.get(span.bedId) ?? ''));
    const planting: TaskPlanting = {
      id: record.id,
      cropName: loaded.shelf.crop(record.cropId).name,
      number: record.number,
      method: record.method,
      places,
      bedId: spans[0]?.bedId ?? null,
      plants: record.plants,
      trays: traysOf(loaded, record)?.trays ?? null,
      sow: plan.sow,
      potOn: record.potOnDate as IsoDate | null,
      inBed: plan.inBed,
      firstHarvest: plan.firstHarvest,
      lastHarvest: plan.lastHarvest,
      free: plan.free,
      sown: record.sownActual as IsoDate | null,
      wentIn: record.inBedActual as IsoDate | null,
      lastPicked: record.lastHarvestActual as IsoDate | null,
      cleared: record.clearedActual as IsoDate | null,
    };
    return tasksOf(planting).map((task) => ({ ...task, places }));
  });
}

const MOST_NAMED = 3;

function placesOf(codes: readonly string[]): string {
  if (codes.length === 0) return 'a bed yet to be chosen';
  const named = [...new Set(codes)];
  return named.length <= MOST_NAMED
    ? named.join(', ')
    : `${named.slice(0, MOST_NAMED).join(', ')} and ${named.length - MOST_NAMED} more`;
}
