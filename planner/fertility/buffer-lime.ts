import { refuse, requireRange } from '../errors.ts';
import { M_PER_INCH } from '../units/constants.ts';
import { convert } from '../units/convert.ts';
import { readBetween } from './between-rows.ts';
import type { BufferLimeTable } from './soil-tables.ts';

export type BufferLimeInput = {
  readonly table: BufferLimeTable;
  readonly bufferPh: number;
  readonly targetPh: number;
  /** The soil's own pH, where known: no lime is wanted when it meets the target. */
  readonly soilPh?: number;
};

export type BufferLime = {
  /** Lime of score 100 for the table's own depth. */
  readonly lime_kg_per_m2: number;
  readonly tableDepth_m: number;
  /** The buffer pH or target lay outside the table and the nearest row was taken. */
  readonly heldAtEdge: boolean;
};

/**
 * Lime requirement from a buffer reading, by a laboratory's own table, linear between rows and between target columns.
 *
 *   R = table(buffer pH, target pH)    US short ton/acre of 100-score lime for the table's depth, given here in kg/m2
 *
 *   buffer pH   4.8 to 6.9 (Sikora, Oregon) or 4.8 to 6.8 (SMP); outside it the edge row is held and said so
 *   target pH   5.6 to 7.2 (Sikora), 6.0 to 7.0 (SMP)
 *
 * Calibrations differ by region: use the table of the laboratory that ran the test. Not for peat-based mixes.
 * Sources: Oregon State University Extension EM 9585 (2025), Table 1; Shoemaker, McLean and Pratt (1961), from memory.
 * @throws InputError on a pH that cannot be
 */
export function bufferLime(input: BufferLimeInput): BufferLime {
  requireRange('bufferPh', input.bufferPh, 3.5, 9, '');
  requireRange('targetPh', input.targetPh, 4, 8, '');
  const tableDepth_m = input.table.depth_in * M_PER_INCH;
  if (input.soilPh !== undefined) {
    requireRange('soilPh', input.soilPh, 2.5, 10.5, '');
    if (input.soilPh >= input.targetPh) return { lime_kg_per_m2: 0, tableDepth_m, heldAtEdge: false };
  }
  let held = false;
  const atTarget = input.table.rows.map((row) => {
    const targets = Object.entries(row.ton_per_acre).map(([ph, rate]) => [Number(ph), rate] as const);
    const reading = readBetween(targets, input.targetPh);
    held ||= reading.outside !== 'no';
    return [row.buffer_ph, reading.value] as const;
  });
  if (atTarget.length === 0) refuse('table', 'empty', 'This buffer method has no table.');
  const reading = readBetween(atTarget, input.bufferPh);
  return {
    lime_kg_per_m2: convert(reading.value, 'us_ton_per_acre', 'kg_per_m2'),
    tableDepth_m,
    heldAtEdge: held || reading.outside !== 'no',
  };
}
