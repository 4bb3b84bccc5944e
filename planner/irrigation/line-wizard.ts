import { requirePositive, requireRange } from '../errors.ts';
import { FITTING_K } from './fitting-loss.ts';
import type { PlanNode, PlanOutlet, PlanRun } from './line-plan.ts';
import { PLASTIC_ROUGHNESS_M } from './pipe-friction.ts';

/** A bed to serve, in the order in which the tube passes. */
export type WizardBed = {
  readonly bedId: string | null;
  readonly name: string;
  readonly row: number;
  readonly x_m: number;
  readonly y_m: number;
};

export type WizardInput = {
  readonly source: { readonly x_m: number; readonly y_m: number };
  readonly beds: readonly WizardBed[];
  /** One tube past all beds, or a header with a branch for each row. */
  readonly arrangement: 'snake' | 'comb';
  readonly mainDiameter_m: number;
  readonly lateralDiameter_m: number;
  readonly lateral_m: number;
  readonly teeBore_m: number | null;
  /** Added to every measured length: bends, slack for heat and fittings. */
  readonly slackShare: number;
  readonly outlet_m: number;
  /** Tube inside the reservoir, from the pump to the rim. */
  readonly riser_m: number;
};

export type WizardLine = {
  readonly nodes: readonly PlanNode[];
  readonly runs: readonly PlanRun[];
  readonly outlets: readonly PlanOutlet[];
};

/** Slack on lengths taken from a drawing (common practice, no source). */
export const SLACK_SHARE = 0.1;
/** The least length of a run between two places drawn on one spot. */
const LEAST_RUN_M = 0.05;

type Spot = { readonly id: string; readonly x_m: number; readonly y_m: number };
const apart = (one: Spot, other: Spot): number => Math.hypot(one.x_m - other.x_m, one.y_m - other.y_m);

/**
 * Beds laid out without a drawing: equal rows of equal spacing beside the source.
 * @throws InputError naming the field
 */
export function rowsOfBeds(input: {
  readonly rows: number;
  readonly bedsInRow: number;
  readonly spacing_m: number;
  readonly rowSpacing_m: number;
}): readonly WizardBed[] {
  requireRange('rows', input.rows, 1, 100, '');
  requireRange('bedsInRow', input.bedsInRow, 1, 1000, '');
  requirePositive('spacing_m', input.spacing_m, 'm');
  requirePositive('rowSpacing_m', input.rowSpacing_m, 'm');
  return Array.from({ length: input.rows * input.bedsInRow }, (_, at) => {
    const row = Math.floor(at / input.bedsInRow);
    const inRow = at % input.bedsInRow;
    const along = row % 2 === 0 ? inRow : input.bedsInRow - 1 - inRow;
    return { bedId: null, name: `Bed ${at + 1}`, row, x_m: (along + 1) * input.spacing_m, y_m: row * input.rowSpacing_m };
  });
}

/**
 * A whole line for "one barrel, one pump, rows of beds": a tee before every bed, a short lateral, a valve and an open
 * end. Lengths are those of the drawing with slack. Ids are made from places, so one input gives one line.
 * @throws InputError naming the field
 */
export function wizardLine(input: WizardInput): WizardLine {
  requirePositive('mainDiameter_m', input.mainDiameter_m, 'm');
  requirePositive('lateralDiameter_m', input.lateralDiameter_m, 'm');
  requirePositive('lateral_m', input.lateral_m, 'm');
  requirePositive('riser_m', input.riser_m, 'm');
  requireRange('slackShare', input.slackShare, 0, 2, '');
  requireRange('beds', input.beds.length, 1, 5000, '');
  const nodes: PlanNode[] = [];
  const runs: PlanRun[] = [];
  const outlets: PlanOutlet[] = [];
  const place = (id: string, kind: PlanNode['kind'], name: string, x_m: number, y_m: number, elevation_m: number): Spot => {
    nodes.push({ id, kind, name, x_m, y_m, elevation_m, zone: 1, position: nodes.length });
    return { id, x_m, y_m };
  };
  const run = (from: Spot, to: Spot, length_m: number, insideDiameter_m: number, fittingK: number, teeBore_m: number | null) =>
    runs.push({
      id: `run-${from.id}-${to.id}`,
      fromNodeId: from.id,
      toNodeId: to.id,
      length_m: Math.max(LEAST_RUN_M, length_m),
      insideDiameter_m,
      roughness_m: PLASTIC_ROUGHNESS_M,
      fittingK,
      teeBore_m,
      materialId: null,
    });
  const source = place('source', 'source', 'Source', input.source.x_m, input.source.y_m, 0);
  const rim = place('rim', 'tee', 'Rim of the source', input.source.x_m, input.source.y_m, input.outlet_m);
  run(source, rim, input.riser_m, input.mainDiameter_m, FITTING_K.squareEntrance, null);

  let header = rim;
  let before = rim;
  let row: number | null = null;
  input.beds.forEach((bed, at) => {
    if (input.arrangement === 'comb' && bed.row !== row) {
      const head = place(`head-${bed.row}`, 'tee', `Head of row ${bed.row + 1}`, input.source.x_m, bed.y_m, input.outlet_m);
      run(header, head, apart(header, head) * (1 + input.slackShare), input.mainDiameter_m, FITTING_K.teeRun, input.teeBore_m);
      header = head;
      before = head;
    }
    row = bed.row;
    const tee = place(`tee-${at + 1}`, 'tee', `Tee ${bed.name}`, bed.x_m, bed.y_m, input.outlet_m);
    const end = place(`end-${at + 1}`, 'end', bed.name, bed.x_m, bed.y_m + input.lateral_m, input.outlet_m);
    run(before, tee, apart(before, tee) * (1 + input.slackShare), input.mainDiameter_m, FITTING_K.teeRun, input.teeBore_m);
    run(tee, end, input.lateral_m * (1 + input.slackShare), input.lateralDiameter_m, FITTING_K.teeBranch, null);
    outlets.push({
      id: `outlet-${at + 1}`,
      nodeId: end.id,
      bedId: bed.bedId,
      kind: 'open-end',
      outlet_m: input.outlet_m,
      bore_m: input.lateralDiameter_m,
      drowned: false,
      openK: FITTING_K.smallInlineValveOpen,
      setK: null,
      wantShare: 1,
      emitters: null,
      emitter_L_per_h: null,
      emitterExponent: null,
      emitterHead_m: null,
      emitterCv: null,
    });
    before = tee;
  });
  return { nodes, runs, outlets };
}
