import { dateOfDay, dayNumber, type IsoDate } from '../calendar.ts';
import { dayReaching, type GrowthClock } from './growth-clock.ts';

/** A planting with what was planned and what has happened so far. Null = not yet. */
export type Course = {
  readonly id: string;
  readonly clockKey: string;
  /** What the clock must make from the day in bed to the first harvest. */
  readonly need: number;
  readonly indoors_days: number;
  readonly window_days: number;
  readonly turnover_days: number;
  readonly sow: IsoDate | null;
  readonly inBed: IsoDate;
  readonly sown: IsoDate | null;
  readonly wentIn: IsoDate | null;
  readonly firstPicked: IsoDate | null;
  readonly lastPicked: IsoDate | null;
  readonly cleared: IsoDate | null;
  /** A pinned planting keeps its planned day in the bed whatever happened before. */
  readonly pinned: boolean;
};

export type Replanned = {
  readonly id: string;
  readonly sow: IsoDate | null;
  readonly inBed: IsoDate;
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  readonly free: IsoDate;
  /** False when the crop does not ripen within the days the clock knows: its dates are kept by plain days. */
  readonly ripens: boolean;
};

/**
 * Dates of a whole season from what was planned and what has really happened: each real date moves the ones after it, and
 * none before it. One pass, no date text in the loop but at its ends.
 */
export function replan(courses: readonly Course[], clocks: ReadonlyMap<string, GrowthClock>): readonly Replanned[] {
  const texts = new Map<number, IsoDate>();
  const dateOf = (day: number): IsoDate => {
    const known = texts.get(day) ?? dateOfDay(day);
    texts.set(day, known);
    return known;
  };
  return courses.map((course) => replanned(course, clocks.get(course.clockKey), dateOf));
}

function replanned(course: Course, clock: GrowthClock | undefined, dateOf: (day: number) => IsoDate): Replanned {
  const sow = course.sown ?? course.sow;
  const planned = dayNumber(course.inBed);
  const afterSowing = course.sown !== null && !course.pinned ? dayNumber(course.sown) + course.indoors_days : planned;
  const inBed = course.wentIn === null ? afterSowing : dayNumber(course.wentIn);
  const ripe = clock === undefined ? null : dayReaching(clock, inBed, course.need);
  const first = course.firstPicked === null ? (ripe ?? inBed + Math.ceil(course.need)) : dayNumber(course.firstPicked);
  const last = course.lastPicked === null ? first + course.window_days : dayNumber(course.lastPicked);
  const free = course.cleared === null ? last + course.turnover_days : dayNumber(course.cleared);
  return {
    id: course.id,
    sow,
    inBed: dateOf(inBed),
    firstHarvest: dateOf(first),
    lastHarvest: dateOf(Math.max(first, last)),
    free: dateOf(Math.max(free, inBed + 1)),
    ripens: ripe !== null || course.firstPicked !== null,
  };
}
