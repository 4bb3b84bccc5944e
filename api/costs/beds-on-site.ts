import { outlineOfBed } from '../../planner/beds/bed-spec.ts';
import { ringOf } from '../../planner/beds/extent.ts';
import type { Point } from '../../planner/beds/outline.ts';
import { specOfBed } from '../beds/bed-spec-of.ts';
import type { EarningView } from './earning-view.ts';
import type { SeasonLedger } from './season-ledger.ts';

const RING_STEP_DEG = 30;

/** Outlines of the beds where they lie, with margin by bed and by m2. */
export function bedsOnSite(ledger: SeasonLedger, rows: readonly EarningView[]) {
  const earned = new Map(rows.map((row) => [row.id, row]));
  return ledger.beds
    .filter((bed) => bed.area_m2 > 0)
    .map(({ bedId, record }) => {
      const row = earned.get(bedId);
      return {
        bedId,
        code: record.bed.code,
        x_m: record.bed.x_m,
        y_m: record.bed.y_m,
        turn_deg: record.bed.turn_deg,
        ring_m: ringOf(outlineOfBed(specOfBed(record)), RING_STEP_DEG).map(([x, y]): Point => [x, y]),
        income_minor: row?.income_minor ?? 0,
        margin_minor: row?.margin_minor ?? 0,
        margin_minor_per_m2: row?.margin_minor_per_m2 ?? null,
      };
    });
}
