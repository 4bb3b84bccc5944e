import { addDays, dateOfDay, dayNumber, type IsoDate } from '../calendar.ts';

/** Work that follows from a planting. */
export const plantingTaskKinds = ['sow-indoors', 'pot-on', 'sow', 'set-out', 'harvest', 'clear'] as const;
export type PlantingTaskKind = (typeof plantingTaskKinds)[number];

export type TaskPlanting = {
  readonly id: string;
  readonly cropName: string;
  readonly number: number;
  readonly method: 'direct' | 'transplant' | 'set';
  readonly places: string;
  readonly bedId: string | null;
  readonly plants: number;
  readonly trays: number | null;
  readonly sow: IsoDate | null;
  readonly potOn: IsoDate | null;
  readonly inBed: IsoDate;
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  readonly free: IsoDate;
  readonly sown: IsoDate | null;
  readonly wentIn: IsoDate | null;
  readonly lastPicked: IsoDate | null;
  readonly cleared: IsoDate | null;
};

/** Something to do. The key says of what it was made, so that making it again does not make it twice. */
export type PlannedTask = {
  readonly key: string;
  readonly kind: PlantingTaskKind;
  readonly title: string;
  readonly due: IsoDate;
  readonly plantingId: string;
  readonly bedId: string | null;
};

/** Harvest comes round once a week; the day in the bed takes the day before for making it ready. */
const HARVEST_EVERY_DAYS = 7;

/**
 * The work a planting asks for, in order of date: sowing, potting on, setting out or sowing in place, a harvest each week
 * of its window, clearing. What has really happened already asks for nothing.
 */
export function tasksOf(planting: TaskPlanting): readonly PlannedTask[] {
  const tasks: PlannedTask[] = [];
  const what = planting.number > 1 ? `${planting.cropName} no. ${planting.number}` : planting.cropName;
  const say = (kind: PlantingTaskKind, due: IsoDate, title: string, part = '') =>
    tasks.push({ key: `${planting.id}/${kind}${part}`, kind, title, due, plantingId: planting.id, bedId: planting.bedId });
  const ended = planting.cleared !== null;
  if (planting.method === 'transplant' && planting.sow !== null && planting.sown === null && planting.wentIn === null && !ended) {
    const trays = planting.trays === null ? '' : `, ${planting.trays} ${planting.trays === 1 ? 'tray' : 'trays'}`;
    say('sow-indoors', planting.sow, `Sow ${what} indoors${trays}`);
  }
  if (planting.potOn !== null && planting.wentIn === null && !ended) say('pot-on', planting.potOn, `Pot on ${what}`);
  if (planting.wentIn === null && !ended) {
    const direct = planting.method === 'direct';
    const verb = direct ? 'Sow' : planting.method === 'set' ? 'Plant' : 'Set out';
    say(direct ? 'sow' : 'set-out', planting.inBed, `${verb} ${what} in ${planting.places}, ${planting.plants} plants`);
  }
  if (planting.lastPicked === null && !ended) {
    const last = dayNumber(planting.lastHarvest);
    for (let day = dayNumber(planting.firstHarvest); day <= last; day += HARVEST_EVERY_DAYS)
      say('harvest', dateOfDay(day), `Harvest ${what} in ${planting.places}`, `/${dateOfDay(day)}`);
  }
  if (!ended) say('clear', clearDay(planting), `Clear ${what} from ${planting.places}`);
  return tasks;
}

const clearDay = ({ free, lastHarvest, lastPicked }: TaskPlanting): IsoDate =>
  lastPicked ?? (free > lastHarvest ? addDays(lastHarvest, 1) : free);

/** Tasks that fall due in the seven days from a Monday. */
export const inWeek = (due: IsoDate, monday: IsoDate): boolean => due >= monday && due < addDays(monday, 7);
