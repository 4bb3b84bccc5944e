import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import {
  addLine,
  addPieces,
  bedsForLines,
  changeLine,
  changeNode,
  changeOutlet,
  changeRun,
  removeLine,
  removeNodes,
  replacePump,
} from '../../db/repositories/water-lines.ts';
import { refuse } from '../../planner/errors.ts';
import { FITTING_K } from '../../planner/irrigation/fitting-loss.ts';
import { rowsOfBeds, SLACK_SHARE, type WizardBed, wizardLine } from '../../planner/irrigation/line-wizard.ts';
import { PLASTIC_ROUGHNESS_M } from '../../planner/irrigation/pipe-friction.ts';
import { behind, relengthened, runLength_m } from '../../planner/irrigation/run-length.ts';
import { Refusal } from '../errors.ts';
import { change } from '../procedure.ts';
import { someOf } from '../some-of.ts';
import {
  given,
  lineId,
  lineName,
  nodeFields,
  outletFields,
  pumpFields,
  runFields,
  supplyFields,
} from '../water-line/line-fields.ts';
import { loadLine } from '../water-line/load-line.ts';
import { refuseFaults } from '../water-line/refuse-faults.ts';

const id = z.string().min(1);
const edits = <V extends z.ZodType<object>>(values: V) =>
  z
    .array(z.object({ id, values: someOf(values) }))
    .min(1)
    .max(6000);
const length = (what: string) => z.number(`${what} is a length.`).positive(`${what} must be more than zero.`).max(1000);

const layout = z.object({
  bedIds: z.array(z.string()).max(5000),
  rows: z.int().min(1).max(100),
  bedsInRow: z.int().min(1).max(1000),
  spacing_m: length('The spacing'),
  rowSpacing_m: length('The row spacing'),
  arrangement: z.enum(['snake', 'comb']),
  mainDiameter_m: length('The main’s inside diameter'),
  lateralDiameter_m: length('The lateral’s inside diameter'),
  lateral_m: length('The lateral'),
  teeBore_m: length('The tee’s bore').nullable(),
  outlet_m: z.number('The outlets’ height is a length.'),
  riser_m: length('The riser'),
});

export const waterLineDrawing = {
  /** A whole line at once: one source, one pump, rows of beds. */
  create: change({
    note: ({ name }: { readonly name: string }) => `Draw the water line ${name}`,
    input: z.object({ name: lineName, supply: supplyFields, pump: pumpFields.nullable(), layout }),
    run({ db }, { name, supply, pump, layout: plan }) {
      const lineKey = newId<string>();
      const known = new Map(bedsForLines(db).map((bed) => [bed.bedId, bed]));
      const rows = [...new Set(plan.bedIds.map((bedId) => Math.round((known.get(bedId)?.y_m ?? 0) * 2)))];
      const beds: readonly WizardBed[] =
        plan.bedIds.length === 0
          ? rowsOfBeds(plan)
          : plan.bedIds.map((bedId) => {
              const bed = known.get(bedId);
              if (bed === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
              return { bedId, name: bed.code, row: rows.indexOf(Math.round(bed.y_m * 2)), x_m: bed.x_m, y_m: bed.y_m };
            });
      const first = beds[0];
      if (first === undefined) refuse('layout.bedIds', 'too-few', 'Choose beds, or give rows.');
      const drawn = wizardLine({
        ...plan,
        beds,
        slackShare: SLACK_SHARE,
        source: { x_m: (first?.x_m ?? 0) - plan.spacing_m, y_m: first?.y_m ?? 0 },
      });
      addLine(db, { ...given(supply), id: lineKey, name, supply: supply.supply ?? 'reservoir' });
      if (pump !== null) writePump(db, lineKey, pump);
      const key = (local: string): string => `${lineKey}-${local}`;
      addPieces(db, {
        nodes: drawn.nodes.map((node) => ({ ...node, id: key(node.id), lineId: lineKey })),
        runs: drawn.runs.map((run) => ({
          ...run,
          id: key(run.id),
          lineId: lineKey,
          fromNodeId: key(run.fromNodeId),
          toNodeId: key(run.toNodeId),
        })),
        outlets: drawn.outlets.map((outlet, position) => ({
          ...outlet,
          id: key(outlet.id),
          lineId: lineKey,
          nodeId: key(outlet.nodeId),
          position,
        })),
      });
      refuseFaults(loadLine(db, lineKey).plan);
      return { lineId: lineKey };
    },
  }),
  remove: change({
    note: ({ lineId: line }, { db }) => `Take away the water line ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId }),
    run({ db }, input) {
      loadLine(db, input.lineId);
      removeLine(db, input.lineId);
      return { removed: true };
    },
  }),
  setSupply: change({
    note: ({ lineId: line }, { db }) => `Change the supply of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, values: supplyFields, revision: z.int() }),
    run({ db }, { lineId: line, values, revision }) {
      if (!changeLine(db, line, given(values), revision)) throw new Refusal({ code: 'changed-meanwhile', what: 'water line' });
      const { plan } = loadLine(db, line);
      const { highLevel_m, lowLevel_m } = plan.supply;
      if (highLevel_m !== null && lowLevel_m !== null && lowLevel_m > highLevel_m)
        refuse('lowLevel_m', 'above-high', 'The lowest level is above the highest.');
      refuseFaults(plan);
      return { changed: true };
    },
  }),
  setPump: change({
    note: ({ lineId: line }, { db }) => `Change the pump of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, pump: pumpFields.nullable() }),
    run({ db }, { lineId: line, pump }) {
      loadLine(db, line);
      if (pump === null) replacePump(db, line, null, []);
      else writePump(db, line, pump);
      refuseFaults(loadLine(db, line).plan);
      return { changed: true };
    },
  }),
  /** Places moved or changed. Runs beside a moved place take their lengths from the drawing where `relength` says so. */
  setNodes: change({
    note: ({ lineId: line, edits: all }, { db }) =>
      all.length === 1
        ? `Change a place of ${nameOf(db, 'line', line)}`
        : `Change ${all.length} places of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, edits: edits(nodeFields), relength: z.boolean() }),
    run({ db }, { lineId: line, edits: all, relength }) {
      requireOwn(loadLine(db, line).record.nodes, all, 'place of the line');
      for (const { id: nodeId, values } of all) changeNode(db, nodeId, given(values));
      const { plan } = loadLine(db, line);
      if (relength)
        for (const { id: nodeId, values } of all)
          if (values.x_m !== undefined || values.y_m !== undefined)
            for (const run of relengthened(plan.runs, plan.nodes, nodeId)) changeRun(db, run.id, { length_m: run.length_m });
      return { changed: all.length };
    },
  }),
  setRuns: change({
    note: ({ lineId: line, edits: all }, { db }) =>
      all.length === 1
        ? `Change a run of ${nameOf(db, 'line', line)}`
        : `Change ${all.length} runs of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, edits: edits(runFields) }),
    run({ db }, { lineId: line, edits: all }) {
      requireOwn(loadLine(db, line).record.runs, all, 'run of the line');
      for (const { id: runId, values } of all) changeRun(db, runId, given(values));
      refuseFaults(loadLine(db, line).plan);
      return { changed: all.length };
    },
  }),
  setOutlets: change({
    note: ({ lineId: line, edits: all }, { db }) =>
      all.length === 1
        ? `Change an outlet of ${nameOf(db, 'line', line)}`
        : `Change ${all.length} outlets of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, edits: edits(outletFields) }),
    run({ db }, { lineId: line, edits: all }) {
      requireOwn(loadLine(db, line).record.outlets, all, 'outlet of the line');
      for (const { id: outletId, values } of all) changeOutlet(db, outletId, given(values));
      refuseFaults(loadLine(db, line).plan);
      return { changed: all.length };
    },
  }),
  /** A branch from a place: a run to a new end with an outlet, or to a new tee to draw on from. */
  addBranch: change({
    note: ({ lineId: line }, { db }) => `Add a branch to ${nameOf(db, 'line', line)}`,
    input: z.object({
      lineId,
      fromNodeId: id,
      to: z.enum(['outlet', 'tee']),
      bedId: z.string().nullable(),
      x_m: z.number(),
      y_m: z.number(),
      insideDiameter_m: length('The inside diameter'),
      outlet_m: z.number('The outlet’s height is a length.'),
    }),
    run({ db }, input) {
      const { record } = loadLine(db, input.lineId);
      const from = record.nodes.find((node) => node.id === input.fromNodeId);
      if (from === undefined) throw new Refusal({ code: 'not-found', what: 'place of the line' });
      const code = bedsForLines(db).find((bed) => bed.bedId === input.bedId)?.code;
      const node = {
        id: newId<string>(),
        lineId: input.lineId,
        kind: input.to === 'outlet' ? ('end' as const) : ('tee' as const),
        name: code ?? (input.to === 'outlet' ? `Outlet ${record.outlets.length + 1}` : `Tee ${record.nodes.length}`),
        x_m: input.x_m,
        y_m: input.y_m,
        elevation_m: input.outlet_m,
        zone: from.zone,
        position: Math.max(...record.nodes.map((each) => each.position)) + 1,
      };
      addPieces(db, {
        nodes: [node],
        runs: [
          {
            id: newId<string>(),
            lineId: input.lineId,
            fromNodeId: from.id,
            toNodeId: node.id,
            length_m: runLength_m(from, node),
            insideDiameter_m: input.insideDiameter_m,
            roughness_m: PLASTIC_ROUGHNESS_M,
            fittingK: FITTING_K.teeBranch,
          },
        ],
        outlets:
          input.to === 'tee'
            ? []
            : [
                {
                  id: newId<string>(),
                  lineId: input.lineId,
                  nodeId: node.id,
                  bedId: input.bedId,
                  kind: 'open-end',
                  outlet_m: input.outlet_m,
                  bore_m: input.insideDiameter_m,
                  position: record.outlets.length,
                },
              ],
      });
      refuseFaults(loadLine(db, input.lineId).plan);
      return { nodeId: node.id };
    },
  }),
  /** Takes a place with everything behind it away. */
  removePlace: change({
    note: ({ lineId: line }, { db }) => `Take away a branch of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, nodeId: id }),
    run({ db }, { lineId: line, nodeId }) {
      const { plan } = loadLine(db, line);
      if (plan.nodes.some((node) => node.id === nodeId && node.kind === 'source'))
        refuse('nodeId', 'source', 'The source stays. Take the whole line away instead.');
      const gone = behind(plan.runs, nodeId);
      removeNodes(db, gone);
      return { removed: gone.length };
    },
  }),
};

type Piece = { readonly id: string };

/** An edit of a piece that this line has not (taken away meanwhile, or another line's) is refused. */
function requireOwn(pieces: readonly Piece[], all: readonly Piece[], what: string): void {
  const own = new Set(pieces.map((piece) => piece.id));
  if (!all.every((piece) => own.has(piece.id))) throw new Refusal({ code: 'not-found', what });
}

type Pump = z.output<typeof pumpFields>;

function writePump(db: Parameters<typeof replacePump>[0], line: string, { points, ...pump }: Pump): void {
  const pumpId = newId<string>();
  replacePump(
    db,
    line,
    { ...pump, id: pumpId, lineId: line },
    points.map((point) => ({ ...point, id: newId<string>(), pumpId })),
  );
}
