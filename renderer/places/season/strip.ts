import { addDays, type IsoDate } from '../../../planner/calendar.ts';
import type { PlanPlanting, PlanSpan } from '../../../planner/season/plan.ts';
import type { TimeScale } from './time-scale.ts';

/** A planting drawn on a bed's line: raising, growing, harvest and turnover, each as a path in the line's pixels. */
export type Strip = {
  readonly left_px: number;
  readonly right_px: number;
  readonly top_px: number;
  readonly height_px: number;
  /** From sowing to the bed, when raised. */
  readonly raising: string;
  /** The growing crop as a ramp: it comes up low and is full-grown at first harvest. */
  readonly growing: string;
  readonly harvest: string;
  /** One stroke for each week of harvest. */
  readonly picks: string;
  readonly turnover: string;
  readonly textFrom_px: number;
  readonly textWidth_px: number;
};

const EDGE_PX = 3;
const LOW_SHARE = 0.3;
const WEEK = 7;

/** The piece of bed from 0 to 1 is drawn from the line's top to its foot. */
export function stripOf(planting: PlanPlanting, span: PlanSpan | null, scale: TimeScale, line_px: number): Strip {
  const room = line_px - 2 * EDGE_PX;
  const from = span === null ? 0 : span.fromShare;
  const to = span === null ? 1 : span.toShare;
  const top = EDGE_PX + from * room;
  const height = Math.max(6, (to - from) * room - (to < 1 ? 1 : 0));
  const foot = top + height;
  const [x0, x1, x2, x3] = [planting.inBed, planting.firstHarvest, planting.lastHarvest, planting.free].map((date) =>
    scale.x(date),
  ) as [number, number, number, number];
  const low = foot - height * LOW_SHARE;
  const sown = planting.sow !== null && planting.sow < planting.inBed ? scale.x(planting.sow) : null;
  return {
    left_px: sown ?? x0,
    right_px: x3,
    top_px: top,
    height_px: height,
    raising: sown === null ? '' : `M${sown} ${foot - 4}v4M${sown} ${foot - 2}H${x0}`,
    growing: `M${x0} ${foot}V${low}L${x1} ${top}V${foot}Z`,
    harvest: `M${x1} ${top}H${Math.max(x2, x1 + 1)}V${foot}H${x1}Z`,
    picks: pickStrokes(planting, scale, top, foot),
    turnover: `M${x2} ${foot - height / 2}H${x3}M${x3} ${top}V${foot}`,
    textFrom_px: Math.max(x0, 0) + 4,
    textWidth_px: Math.min(x3, scale.width_px) - Math.max(x0, 0) - 6,
  };
}

function pickStrokes(planting: PlanPlanting, scale: TimeScale, top: number, foot: number): string {
  if (scale.day_px * WEEK < 5) return '';
  let path = '';
  for (let date: IsoDate = addDays(planting.firstHarvest, WEEK); date < planting.lastHarvest; date = addDays(date, WEEK))
    path += `M${scale.x(date)} ${top}V${foot}`;
  return path;
}
