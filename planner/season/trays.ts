import { requirePositive, requireRange, requireWhole } from '../errors.ts';
import { practice, type Working } from '../working.ts';

/** Cells of the usual 10 x 20 in tray, k across and 2 k along. Common practice, no source. */
export const trayCells = [50, 72, 98, 128, 200, 288] as const;

/** @throws InputError naming the field */
export function cellsOfTray(cellsAcross: number): number {
  requireWhole('cellsAcross', cellsAcross, 1, 40);
  return 2 * cellsAcross * cellsAcross;
}

/** The usual tray, 10 x 20 in, as bench space. */
export const TRAY_LENGTH_M = 0.508;
export const TRAY_WIDTH_M = 0.254;

/** Middle of the makers' range of a cell's volume; they differ, so the grower's own goes before. Common practice, no source. */
const cellVolume_L: readonly (readonly [cells: number, volume_L: number])[] = [
  [50, 0.0925],
  [72, 0.05],
  [98, 0.031],
  [128, 0.025],
  [200, 0.013],
  [288, 0.0065],
];

/** Potting mix is packed and spilled: a tenth more is taken. Common practice, no source. */
const MIX_OVERAGE_SHARE = 0.1;

export type TrayNeedInput = {
  /** Cells to sow: stations of the seed need. */
  readonly cells: number;
  readonly cellsPerTray: number;
  /** The grower's own cell volume; the usual one for the tray where left out. */
  readonly cell_L?: number;
};

export type TrayNeed = { readonly trays: number; readonly bench_m2: number; readonly mix_L: number };

/**
 * Trays, bench and potting mix for a number of cells.
 *
 *   trays = ceil(cells / per tray)      bench = trays x 0.508 x 0.254 m2      mix = cells x v x 1.1
 *
 *   v   volume of a cell   L   middle of the makers' range for the tray unless told
 *
 * Source: counting; cell volume and overage by common practice, no source.
 * @throws InputError naming the field
 */
export function trayNeed({ cells, cellsPerTray, cell_L }: TrayNeedInput): TrayNeed {
  requireWhole('cells', cells, 0, 100_000_000);
  requireWhole('cellsPerTray', cellsPerTray, 1, 2000);
  const volume_L = cell_L ?? usualCell_L(cellsPerTray);
  requirePositive('cell_L', volume_L, 'L');
  const trays = Math.ceil(cells / cellsPerTray);
  return { trays, bench_m2: trays * TRAY_LENGTH_M * TRAY_WIDTH_M, mix_L: cells * volume_L * (1 + MIX_OVERAGE_SHARE) };
}

/** The usual volume of a cell; between two usual trays, that of the fuller tray of the two. */
export function usualCell_L(cellsPerTray: number): number {
  const found = cellVolume_L.find(([cells]) => cells >= cellsPerTray) ?? cellVolume_L[cellVolume_L.length - 1];
  return found?.[1] ?? 0;
}

/**
 * Tray sizes recommended for a crop of the library.
 * Source: University of Delaware Cooperative Extension, Times and Temperatures for Vegetable Transplant Production (after
 * Mid-Atlantic Commercial Vegetable Production Recommendations, Table A-4).
 */
const recommended: Readonly<Record<string, readonly number[]>> = {
  broccoli: [72],
  cabbage: [72],
  cauliflower: [72],
  cucumber: [50, 72],
  muskmelon: [50, 72],
  watermelon: [50, 72],
  'summer-squash': [50, 72],
  eggplant: [50, 72, 128],
  tomato: [50, 72, 128],
  'tomato-cherry': [50, 72, 128],
  'lettuce-leaf': [96, 128, 200],
  'lettuce-romaine': [96, 128, 200],
  'lettuce-head': [96, 128, 200],
  'onion-bulb': [288, 338],
  'pepper-sweet': [72, 128],
  'pepper-hot': [72, 128],
};

/** Recommended trays of a crop; empty when none is published: then the 72 or the 128 is usual (common practice, no source). */
export const recommendedTrays = (cropId: string): readonly number[] => recommended[cropId] ?? [];

/** The tray to plan with when the grower has not said: the middle one recommended, else 72. */
export function usualTray(cropId: string): number {
  const list = recommendedTrays(cropId);
  return list[Math.floor(list.length / 2)] ?? 72;
}

/** Bench space that trays need. @throws InputError naming the field */
export function benchSpace_m2(trays: number): number {
  requireRange('trays', trays, 0, 1e7, '');
  return trays * TRAY_LENGTH_M * TRAY_WIDTH_M;
}

export function explainTrays(input: TrayNeedInput): Working {
  const need = trayNeed(input);
  const result = { value: need.trays, unit: 'trays' };
  return {
    title: 'Trays',
    formula: 'trays = ceil(cells / cells in a tray)',
    symbols: [
      { symbol: 'cells', name: 'cells to sow', figure: { value: input.cells, unit: '' }, origin: practice('from the seed need') },
      {
        symbol: 'c',
        name: 'cells in a tray',
        figure: { value: input.cellsPerTray, unit: '' },
        origin: practice('the tray chosen'),
      },
    ],
    steps: [{ text: 'Trays, rounded up', figures: `${input.cells} / ${input.cellsPerTray}`, result }],
    result,
    sources: ['Counting'],
    notes: [`Bench: each tray takes ${TRAY_LENGTH_M} x ${TRAY_WIDTH_M} m.`],
  };
}
