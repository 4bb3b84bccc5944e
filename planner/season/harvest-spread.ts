import { dateOfDay, dayNumber, type IsoDate, mondayOf } from '../calendar.ts';
import { refuse, requireRange } from '../errors.ts';

/** How a planting's yield falls over its harvest: even (cut and come again), all at once, or up to a peak and down again. */
export type HarvestForm = 'even' | 'at-once' | 'peak';

/** Where the peak of a fruiting crop lies in its harvest. Common practice, no source. */
const PEAK_SHARE = 0.4;
/** A crop that is cut once is cut within two weeks. Common practice, no source. */
const AT_ONCE_DAYS = 14;

export type YieldRange = { readonly low: number; readonly typical: number; readonly high: number };

export type HarvestSpreadInput = {
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  readonly form: HarvestForm;
  readonly total: YieldRange;
};

/** What is expected in the week that begins on a Monday. */
export type WeekYield = YieldRange & { readonly week: IsoDate };

/**
 * Expected harvest by week, in the crop's own unit.
 *
 *   share of a week = F(end) - F(start) over the harvest, F rising from 0 to 1:
 *   even: straight; at once: straight over the first 14 days at most; peak: triangle with its top at 40 %
 *
 * The weeks add up to the total. The range is that of the yield, not of the weather.
 * Source: common practice, no source.
 * @throws InputError naming the field
 */
export function harvestByWeek(input: HarvestSpreadInput): readonly WeekYield[] {
  const first = dayNumber(input.firstHarvest);
  const last = dayNumber(input.lastHarvest);
  if (last < first) refuse('lastHarvest', 'dates-out-of-order', 'The last harvest lies before the first.');
  requireRange('total.typical', input.total.typical, 0, 1e9, '');
  const whole = last - first + 1;
  const days = input.form === 'at-once' ? Math.min(whole, AT_ONCE_DAYS) : whole;
  const until = (day: number): number => cumulative(input.form, Math.min(Math.max((day - first) / days, 0), 1));
  const weeks: WeekYield[] = [];
  for (let monday = dayNumber(mondayOf(input.firstHarvest)); monday < first + days; monday += 7) {
    const share = until(monday + 7) - until(monday);
    weeks.push({
      week: dateOfDay(monday),
      low: share * input.total.low,
      typical: share * input.total.typical,
      high: share * input.total.high,
    });
  }
  return weeks;
}

function cumulative(form: HarvestForm, x: number): number {
  if (form !== 'peak') return x;
  return x <= PEAK_SHARE ? (x * x) / PEAK_SHARE : 1 - (1 - x) ** 2 / (1 - PEAK_SHARE);
}

const fruiting: ReadonlySet<string> = new Set(['nightshade', 'cucurbit', 'legume', 'fruit', 'other-vegetable']);
const cutOnce: ReadonlySet<string> = new Set(['brassica', 'root', 'allium', 'corn', 'celery', 'cover-crop']);

/** The form of a crop by its group in the library and its harvest window: a rule of thumb, common practice, no source. */
export function harvestForm(group: string, window_days: number): HarvestForm {
  if (window_days <= AT_ONCE_DAYS) return 'at-once';
  if (fruiting.has(group)) return 'peak';
  return cutOnce.has(group) && window_days <= 21 ? 'at-once' : 'even';
}
