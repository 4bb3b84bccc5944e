import type {
  lineNode,
  lineOutlet,
  linePart,
  lineRun,
  powerSource,
  pump,
  pumpPoint,
  timerEvent,
  waterLine,
} from '../../db/schema/water.ts';
import type { BedRow } from './designs.ts';

type Rows = {
  readonly lines: (typeof waterLine.$inferInsert)[];
  readonly pumps: (typeof pump.$inferInsert)[];
  readonly points: (typeof pumpPoint.$inferInsert)[];
  readonly nodes: (typeof lineNode.$inferInsert)[];
  readonly runs: (typeof lineRun.$inferInsert)[];
  readonly outlets: (typeof lineOutlet.$inferInsert)[];
  readonly timers: (typeof timerEvent.$inferInsert)[];
  readonly power: (typeof powerSource.$inferInsert)[];
  readonly parts: (typeof linePart.$inferInsert)[];
};

const LINE = 'line-bags';
const MAIN_M = 0.01905;
const VALVE_M = 0.0127;
const TEE_K = 0.6;
const PER_BRANCH = 12;
/** An invented pump: 2.2 m at no flow, 950 L/h at 1.3 m, 1514 L/h at no head. */
const CURVE: readonly (readonly [number, number])[] = [
  [0, 2.2],
  [950, 1.3],
  [1514, 0],
];

const STRIPS = 'line-strips';
const STRIP_COLUMNS = 4;
const EMITTER_SPACING_M = 0.3;
const DRIP_ROWS = 2;

/** The farm's two lines: bags fed by a pump from a tank, strips on drip from the tap, a column of strips at a time. All invented. */
export function sampleWaterLines(beds: readonly BedRow[]): Rows {
  const bags = bagLine(beds);
  const strips = stripLine(beds);
  return {
    lines: [...bags.lines, ...strips.lines],
    pumps: bags.pumps,
    points: bags.points,
    nodes: [...bags.nodes, ...strips.nodes],
    runs: [...bags.runs, ...strips.runs],
    outlets: [...bags.outlets, ...strips.outlets],
    timers: [...bags.timers, ...strips.timers],
    power: [...bags.power, ...strips.power],
    parts: [...bags.parts, ...strips.parts],
  };
}

function stripLine(beds: readonly BedRow[]): Rows {
  const rows: Rows = { lines: [], pumps: [], points: [], nodes: [], runs: [], outlets: [], timers: [], power: [], parts: [] };
  const strips = beds.filter((bed) => bed.blockId === 'block-d').slice(0, 34);
  const first = strips[0];
  if (first === undefined) return rows;
  rows.lines.push({
    id: STRIPS,
    name: 'Strip line',
    supply: 'tap',
    supplySource: 'well',
    tapHead_m: 14,
    tapFlow_L_per_min: 20,
    reserveHead_m: 0.5,
    notes: 'Invented.',
  });
  const y0 = (first.y_m ?? 0) - 1.2;
  const x0 = (first.x_m ?? 0) - 5.2;
  rows.nodes.push({ id: 'node-strips-tap', lineId: STRIPS, kind: 'source', name: 'Tap', x_m: x0, y_m: y0 });
  const run = (from: string, to: string, length_m: number, fittingK: number) =>
    rows.runs.push({
      id: `run-${from}-${to}`,
      lineId: STRIPS,
      fromNodeId: from,
      toNodeId: to,
      length_m,
      insideDiameter_m: MAIN_M,
      fittingK,
      materialId: 'hw-tube-34',
    });
  let header = 'node-strips-tap';
  for (let column = 0; column < STRIP_COLUMNS; column += 1) {
    const own = strips.filter((_, at) => at % STRIP_COLUMNS === column);
    const head = own[0];
    if (head === undefined) continue;
    const zone = column + 1;
    const x = (head.x_m ?? 0) - 4.7;
    const corner = `node-strips-head-${zone}`;
    rows.nodes.push({
      id: corner,
      lineId: STRIPS,
      kind: 'tee',
      name: `Column ${zone}`,
      x_m: x,
      y_m: y0,
      zone,
      position: 100 * column + 1,
    });
    run(header, corner, column === 0 ? 0.6 : 10.2, 0.6);
    header = corner;
    let from = corner;
    own.forEach((bed, at) => {
      const tee = `node-strips-tee-${bed.code}`;
      const end = `node-strips-end-${bed.code}`;
      rows.nodes.push({
        id: tee,
        lineId: STRIPS,
        kind: 'tee',
        name: `Tee ${bed.code}`,
        x_m: x,
        y_m: bed.y_m ?? 0,
        zone,
        position: 100 * column + 2 * at + 2,
      });
      rows.nodes.push({
        id: end,
        lineId: STRIPS,
        kind: 'end',
        name: bed.code,
        x_m: x + 0.25,
        y_m: bed.y_m ?? 0,
        zone,
        position: 100 * column + 2 * at + 3,
      });
      run(from, tee, at === 0 ? 1.3 : 1.4, 0.6);
      run(tee, end, 0.3, 0.6);
      rows.outlets.push({
        id: `outlet-${bed.code}`,
        lineId: STRIPS,
        nodeId: end,
        bedId: bed.id,
        kind: 'drip',
        outlet_m: 0,
        bore_m: VALVE_M,
        openK: 15,
        emitters: DRIP_ROWS * Math.round(9 / EMITTER_SPACING_M),
        emitter_L_per_h: 1,
        emitterExponent: 0.5,
        emitterHead_m: 10,
        emitterCv: 0.04,
        position: 100 * column + at,
      });
      from = tee;
    });
    for (const [month, every_days] of [
      [4, 4],
      [5, 3],
      [6, 2],
      [7, 2],
      [8, 2],
      [9, 3],
      [10, 5],
    ] as const)
      rows.timers.push({
        id: `timer-strips-${zone}-${month}`,
        lineId: STRIPS,
        month,
        every_days,
        start: `0${4 + Math.floor(column / 2)}:${column % 2 === 0 ? '00' : '30'}`,
        run_min: 30,
        zone,
      });
  }
  rows.power.push({
    id: 'power-strips',
    lineId: STRIPS,
    kind: 'battery',
    battery: 'other-lithium',
    capacity_Wh: 20,
    usableShare: 0.8,
    controller_W: 0.01,
    idle_W: 0,
  });
  rows.parts.push(
    ...wornParts(STRIPS, [
      ['hw-timer', 1, 4200, 5, '2022-04-10'],
      ['hw-valve', STRIP_COLUMNS, 320 * STRIP_COLUMNS, 6, '2025-03-20'],
    ]),
  );
  return rows;
}

/** One tank, one pump, the bags of block B in branches of twelve. */
function bagLine(beds: readonly BedRow[]): Rows {
  const rows: Rows = { lines: [], pumps: [], points: [], nodes: [], runs: [], outlets: [], timers: [], power: [], parts: [] };
  const served = beds.filter((bed) => bed.blockId === 'block-b').slice(0, 24);
  const first = served[0];
  if (first === undefined) return rows;
  rows.lines.push({
    id: LINE,
    name: 'Bag line',
    supply: 'reservoir',
    supplySource: 'public',
    reservoir_L: 1000,
    reservoirArea_m2: 1,
    reservoirBase_m: -0.6,
    highLevel_m: 0.35,
    lowLevel_m: -0.5,
    vented: true,
    foodGrade: true,
    reserveHead_m: 0.1,
    roofArea_m2: 24,
    roofShare: 0.9,
    firstFlush_mm: 0.4,
    notes: 'Invented.',
  });
  rows.pumps.push({
    id: 'pump-bags',
    lineId: LINE,
    name: 'Pump in the tank, 25 W (invented)',
    materialId: 'hw-pump-25',
    curveKind: 'three-points',
    power_W: 25,
    inletHeight_m: -0.55,
  });
  CURVE.forEach(([flow_L_per_h, head_m], at) => {
    rows.points.push({ id: `point-bags-${at}`, pumpId: 'pump-bags', flow_L_per_h, head_m });
  });
  const sourceX = (first.x_m ?? 0) - 2;
  const sourceY = (first.y_m ?? 0) + 0.8;
  rows.nodes.push({ id: 'node-source', lineId: LINE, kind: 'source', name: 'Tank', x_m: sourceX, y_m: sourceY });
  rows.nodes.push({ id: 'node-split', lineId: LINE, kind: 'tee', name: 'Split', x_m: sourceX + 0.8, y_m: sourceY, position: 1 });
  const run = (from: string, to: string, length_m: number, diameter: number, fittingK: number) =>
    rows.runs.push({
      id: `run-${from}-${to}`,
      lineId: LINE,
      fromNodeId: from,
      toNodeId: to,
      length_m,
      insideDiameter_m: diameter,
      fittingK,
      teeBore_m: fittingK > 0 ? 0.0155 : null,
      materialId: diameter === MAIN_M ? 'hw-tube-34' : 'hw-tube-12',
    });
  run('node-source', 'node-split', 1.5, MAIN_M, 0.5);
  let from = 'node-split';
  served.forEach((bed, at) => {
    if (at % PER_BRANCH === 0) from = 'node-split';
    const tee = `node-tee-${bed.code}`;
    const end = `node-end-${bed.code}`;
    const x = bed.x_m ?? 0;
    const y = (bed.y_m ?? 0) - 0.55;
    rows.nodes.push({ id: tee, lineId: LINE, kind: 'tee', name: `Tee ${bed.code}`, x_m: x, y_m: y, position: 2 * at + 2 });
    rows.nodes.push({
      id: end,
      lineId: LINE,
      kind: 'end',
      name: bed.code,
      x_m: x,
      y_m: y + 0.15,
      elevation_m: 0.2,
      position: 2 * at + 3,
    });
    run(from, tee, at % PER_BRANCH === 0 ? 2.2 : 1.35, MAIN_M, TEE_K);
    run(tee, end, 0.4, VALVE_M, 0);
    rows.outlets.push({
      id: `outlet-${bed.code}`,
      lineId: LINE,
      nodeId: end,
      bedId: bed.id,
      kind: 'open-end',
      outlet_m: 0.45,
      bore_m: VALVE_M,
      openK: 15,
      position: at,
    });
    from = tee;
  });
  const every: readonly (readonly [month: number, days: number])[] = [
    [4, 5],
    [5, 4],
    [6, 3],
    [7, 2],
    [8, 2],
    [9, 3],
    [10, 6],
  ];
  for (const [month, every_days] of every)
    rows.timers.push({ id: `timer-bags-${month}`, lineId: LINE, month, every_days, start: '05:30', run_min: 14 });
  rows.power.push({
    id: 'power-bags',
    lineId: LINE,
    kind: 'battery',
    battery: 'lithium-iron-phosphate',
    capacity_Wh: 500,
    usableShare: 0.8,
    inverterShare: 1,
    selfDischarge_share_per_month: 0.03,
    controller_W: 1,
    idle_W: 0,
    panel_W: 20,
    panelLossShare: 0.3,
    peakSun_h: 5,
  });
  rows.parts.push(
    ...wornParts(LINE, [
      ['hw-pump-25', 1, 3900, 4, '2023-05-02'],
      ['hw-battery', 1, 32_000, 8, '2025-03-14'],
      ['hw-timer', 1, 4200, 5, '2025-03-14'],
      ['hw-valve', served.length, 320 * served.length, 6, '2025-03-14'],
    ]),
  );
  return rows;
}

type WornPart = readonly [materialId: string, amount: number, price_minor: number, life_years: number, installedDate: string];

/** Parts with their lives as trade sense (common practice, no source); some were brought from the garden before. */
const wornParts = (lineId: string, parts: readonly WornPart[]): Rows['parts'] =>
  parts.map(([materialId, amount, price_minor, life_years, installedDate]) => ({
    id: `line-part-${lineId}-${materialId}`,
    lineId,
    materialId,
    amount,
    price_minor,
    life_years,
    installedDate,
  }));
