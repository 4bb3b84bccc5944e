import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import {
  addReading,
  changeNode,
  changeOutlet,
  changeRun,
  linePartsOnOffer,
  removeReading,
  replaceLineNeeds,
  replacePower,
  replacePump,
  replaceRefillTasks,
  replaceTimers,
} from '../../db/repositories/water-lines.ts';
import { refuse } from '../../planner/errors.ts';
import { lineOptions } from '../../planner/irrigation/line-options.ts';
import { lineParts } from '../../planner/irrigation/line-parts.ts';
import { networkOf, outletLossK, pipedOutlets, valveKOf } from '../../planner/irrigation/line-plan.ts';
import { lineReport } from '../../planner/irrigation/line-report.ts';
import { readyLine } from '../../planner/irrigation/line-solution.ts';
import { partsToOrder, pricesOfParts } from '../../planner/irrigation/part-prices.ts';
import { fitValves } from '../../planner/irrigation/setup-card.ts';
import { Refusal } from '../errors.ts';
import { change } from '../procedure.ts';
import { loadWater } from '../water/load-water.ts';
import { lineId, powerFields, timerFields } from '../water-line/line-fields.ts';
import { type LoadedLine, loadLine } from '../water-line/load-line.ts';
import { needOfLine, proposedTimers } from '../water-line/need-of-line.ts';
import { comingRefills } from '../water-line/reservoir-of-line.ts';

const flow = z.number('A flow is a number.').min(0, 'A flow is zero or more.').max(1e5);

/** Each valve's coefficient out of measured flows, the others as they stand. @throws InputError naming the outlet */
function fittedValves(line: LoadedLine, measured: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const outlets = pipedOutlets(line.plan);
  const present = new Map(outlets.map((outlet) => [outlet.id, outletLossK(outlet, outlet.setK ?? outlet.openK)]));
  const fitted = fitValves(readyLine(networkOf(line.plan, 'full')), measured, present);
  return new Map(
    fitted.map((valve) => {
      const outlet = outlets.find((each) => each.id === valve.id);
      const code = line.facts.find((fact) => fact.outletId === valve.id)?.code ?? valve.id;
      if (outlet === undefined || valve.lossK === null)
        return refuse(
          `flows.${valve.id}`,
          'beyond-the-line',
          `${code}: the line as entered cannot give this flow (${valve.excess_m.toPrecision(2)} m short). Look at the pump’s curve, the tube’s inside diameter and the outlet’s height.`,
        );
      return [valve.id, Math.min(1e12, valveKOf(outlet, valve.lossK))];
    }),
  );
}

export const waterLineRunning = {
  /** The valves stand as the set-up card had them. */
  setValves: change({
    note: ({ lineId: line }, { db }) => `Set the valves of ${nameOf(db, 'line', line)} by the card`,
    input: z.object({ lineId }),
    run({ db }, input) {
      const { plan } = loadLine(db, input.lineId);
      const report = lineReport(plan);
      for (const outlet of report.outlets)
        changeOutlet(db, outlet.id, {
          setK: Number.isFinite(outlet.designValveK) ? outlet.designValveK : 1e12,
          calibrated: false,
        });
      return { set: report.outlets.length };
    },
  }),
  openValves: change({
    note: ({ lineId: line }, { db }) => `Open all valves of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId }),
    run({ db }, input) {
      const { plan } = loadLine(db, input.lineId);
      for (const outlet of plan.outlets) changeOutlet(db, outlet.id, { setK: null, calibrated: false });
      return { opened: plan.outlets.length };
    },
  }),
  /** Flows measured with every valve as it stands: each valve's coefficient is fitted, and the card redone from there. */
  measured: change({
    note: ({ lineId: line, flows }, { db }) =>
      flows.length === 1
        ? `Enter a measured flow of ${nameOf(db, 'line', line)}`
        : `Enter ${flows.length} measured flows of ${nameOf(db, 'line', line)}`,
    input: z.object({
      lineId,
      date: z.iso.date(),
      flows: z
        .array(z.object({ outletId: z.string(), flow_L_per_h: flow }))
        .min(1, 'Enter at least one measured flow.')
        .max(5000),
    }),
    run({ db }, input) {
      const line = loadLine(db, input.lineId);
      const measured = new Map(input.flows.map((each) => [each.outletId, each.flow_L_per_h]));
      for (const [outletId, setK] of fittedValves(line, measured))
        changeOutlet(db, outletId, {
          setK,
          calibrated: true,
          measured_L_per_h: measured.get(outletId) ?? null,
          measuredDate: input.date,
        });
      return { fitted: measured.size };
    },
  }),
  /** One setting of one valve read: turns and the flow seen, the others as they stand. */
  addReading: change({
    note: ({ lineId: line }, { db }) => `Enter a valve reading of ${nameOf(db, 'line', line)}`,
    input: z.object({
      lineId,
      outletId: z.string(),
      turns: z.number().min(0).max(100),
      flow_L_per_h: flow.positive(),
      date: z.iso.date(),
    }),
    run({ db }, { lineId: line, outletId, turns, flow_L_per_h, date }) {
      const lossK = fittedValves(loadLine(db, line), new Map([[outletId, flow_L_per_h]])).get(outletId);
      if (lossK === undefined) throw new Refusal({ code: 'not-found', what: 'outlet' });
      addReading(db, { id: newId<string>(), outletId, turns, flow_L_per_h, lossK, date });
      return { lossK };
    },
  }),
  removeReading: change({
    note: 'Take a valve reading away',
    input: z.object({ readingId: z.string() }),
    run({ db }, { readingId }) {
      removeReading(db, readingId);
      return { removed: true };
    },
  }),
  setPower: change({
    note: ({ lineId: line }, { db }) => `Change the power of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, power: powerFields.nullable() }),
    run({ db }, { lineId: line, power }) {
      loadLine(db, line);
      replacePower(db, line, power === null ? null : { ...power, id: newId<string>(), lineId: line });
      return { changed: true };
    },
  }),
  setTimers: change({
    note: ({ lineId: line }, { db }) => `Change the timer of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, timers: z.array(timerFields).max(400) }),
    run({ db }, { lineId: line, timers }) {
      loadLine(db, line);
      replaceTimers(
        db,
        line,
        timers.map((timer) => ({ ...timer, id: newId<string>(), lineId: line })),
      );
      return { timers: timers.length };
    },
  }),
  /** A programme out of the beds' need, in the place of the one there is. */
  proposeTimers: change({
    note: ({ lineId: line }, { db }) => `Set the timer of ${nameOf(db, 'line', line)} by the beds’ need`,
    input: z.object({ lineId, start: timerFields.shape.start }),
    run({ db }, { lineId: id, start }) {
      const timers = proposedTimers(db, loadLine(db, id), start);
      replaceTimers(
        db,
        id,
        timers.map((timer) => ({ ...timer, id: newId<string>(), lineId: id })),
      );
      return { timers: timers.length };
    },
  }),
  /** Shares of the line's flow by what each bed needs in a month; beds without a crop then get none. */
  sharesByNeed: change({
    note: ({ lineId: line }, { db }) => `Share the water of ${nameOf(db, 'line', line)} by need`,
    input: z.object({ lineId, month: z.int().min(1).max(12) }),
    run({ db }, { lineId: id, month }) {
      const line = loadLine(db, id);
      const need = needOfLine(db, loadWater(db, null), line, month);
      const most = Math.max(0, ...need.run_L.values());
      if (most === 0) refuse('month', 'no-need', 'No bed of this line has a crop that needs water in that month.');
      for (const outlet of line.record.outlets)
        changeOutlet(db, outlet.id, { wantShare: Number(((need.run_L.get(outlet.id) ?? 0) / most).toPrecision(3)) });
      return { beds: need.run_L.size };
    },
  }),
  equalShares: change({
    note: ({ lineId: line }, { db }) => `Share the water of ${nameOf(db, 'line', line)} equally`,
    input: z.object({ lineId }),
    run({ db }, { lineId: id }) {
      const { record } = loadLine(db, id);
      for (const outlet of record.outlets) changeOutlet(db, outlet.id, { wantShare: 1 });
      return { outlets: record.outlets.length };
    },
  }),
  /** Parts of the line among the needs of Orders: those that a material of the library stands for. */
  orderParts: change({
    note: ({ lineId: line }, { db }) => `Put the parts of ${nameOf(db, 'line', line)} into Orders`,
    input: z.object({ lineId }),
    run({ db }, { lineId: id }) {
      const line = loadLine(db, id);
      const wanted = partsToOrder(lineParts(line.plan), linePartsOnOffer(db), line.record.pump?.materialId ?? null);
      replaceLineNeeds(
        db,
        id,
        wanted.map((part) => ({
          id: newId<string>(),
          materialId: part.materialId,
          amount: part.amount,
          reason: `Water line ${line.record.line.name}: ${part.why}`,
        })),
      );
      return { parts: wanted.length };
    },
  }),
  /** Puts the refills that are coming among the tasks of This week. */
  planRefills: change({
    note: ({ lineId: line }, { db }) => `Put the refills of ${nameOf(db, 'line', line)} onto This week`,
    input: z.object({ lineId }),
    run({ db, today }, input) {
      const line = loadLine(db, input.lineId);
      const refills = comingRefills(line, today);
      replaceRefillTasks(
        db,
        input.lineId,
        refills.map((refill) => ({
          id: newId<string>(),
          title: `Fill the reservoir of ${line.record.line.name}, about ${Math.round(refill.refill_L)} L`,
          dueDate: refill.date,
        })),
      );
      return { refills: refills.length };
    },
  }),
  /** Takes one of the compared ways to get more water. It is computed again here, so that what was shown is what is done. */
  takeOption: change({
    note: ({ lineId: line }, { db }) => `Rebuild ${nameOf(db, 'line', line)}`,
    input: z.object({
      lineId,
      kind: z.enum(['wider-main', 'wider-tees', 'two-branches', 'second-pump', 'two-zones']),
      mainDiameter_m: z.number().nullable(),
    }),
    run({ db }, { lineId: id, kind, mainDiameter_m }) {
      const line = loadLine(db, id);
      const options = lineOptions({
        plan: line.plan,
        prices: pricesOfParts(linePartsOnOffer(db)),
        wanted_L: new Map(line.facts.map((fact) => [fact.outletId, fact.wanted_L])),
      });
      const chosen = options.find((option) => option.kind === kind && option.mainDiameter_m === mainDiameter_m);
      if (chosen === undefined) throw new Refusal({ code: 'changed-meanwhile', what: 'water line' });
      line.plan.runs.forEach((before, at) => {
        const after = chosen.plan.runs[at];
        if (after === undefined || after === before) return;
        const { fromNodeId, length_m, insideDiameter_m, teeBore_m, materialId } = after;
        changeRun(db, before.id, { fromNodeId, length_m, insideDiameter_m, teeBore_m, materialId });
      });
      line.plan.nodes.forEach((before, at) => {
        const zone = chosen.plan.nodes[at]?.zone;
        if (zone !== undefined && zone !== before.zone) changeNode(db, before.id, { zone });
      });
      const pump = line.record.pump;
      if (pump !== undefined && chosen.plan.pump !== null && chosen.plan.pump.count !== pump.count)
        replacePump(db, id, { ...pump, count: chosen.plan.pump.count }, line.record.points);
      return { taken: kind };
    },
  }),
};
