import { z } from 'zod';
import { bedsForLines, linePartsOnOffer, linesOfFarm, supplyPrices } from '../../db/repositories/water-lines.ts';
import { lineReport } from '../../planner/irrigation/line-report.ts';
import { nothing, read } from '../procedure.ts';
import { loadWater } from '../water/load-water.ts';
import { loadLine } from '../water-line/load-line.ts';
import { needOfLine } from '../water-line/need-of-line.ts';
import { reservoirOfLine } from '../water-line/reservoir-of-line.ts';

export const waterLines = {
  /** The farm's lines, and beds that a line may serve. */
  list: read({ input: nothing, run: ({ db }) => ({ lines: linesOfFarm(db), beds: bedsForLines(db) }) }),
  /** One line whole, as drawn and set, with what its beds take. The page solves it while it is being dragged. */
  one: read({
    input: z.object({ lineId: z.string() }),
    run({ db, today }, { lineId }) {
      const { record, plan, facts } = loadLine(db, lineId);
      return {
        today,
        line: record.line,
        pump: record.pump ?? null,
        power: record.power ?? null,
        timers: record.timers,
        plan,
        facts,
        beds: bedsForLines(db),
        prices: supplyPrices(db) ?? null,
        parts: linePartsOnOffer(db),
      };
    },
  }),
  /** Flow at every outlet with the valves as they stand and as designed. */
  report: read({ input: z.object({ lineId: z.string() }), run: ({ db }, { lineId }) => lineReport(loadLine(db, lineId).plan) }),
  /** The reservoir through every year of record, refills to come, and what happens when the pump stops. */
  reservoir: read({
    input: z.object({ lineId: z.string() }),
    run: ({ db, today }, { lineId }) => reservoirOfLine(db, loadLine(db, lineId), today),
  }),
  /** What the beds of the line need in a month, by every spell of the weather record. */
  need: read({
    input: z.object({ lineId: z.string(), month: z.int().min(1).max(12) }),
    run({ db }, { lineId, month }) {
      const need = needOfLine(db, loadWater(db, null), loadLine(db, lineId), month);
      return { ...need, run_L: [...need.run_L].map(([outletId, run_L]) => ({ outletId, run_L })) };
    },
  }),
};
