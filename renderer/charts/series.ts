import type { Reader } from '../../planner/units/reader.ts';
import { say } from '../words/say.ts';
import type { ChartTable } from './chart-frame.tsx';

/** One line, area or bar of a chart. `unit` is the canonical unit of its values. */
export type Series<Row> = {
  readonly name: string;
  readonly read: (row: Row) => number | null;
  readonly as: 'line' | 'area' | 'stack' | 'bar';
  /** Order of its hue in the set; its place in the list when left out. */
  readonly hue?: number;
};

/** A band between a low and a high value, for what is uncertain. */
export type Band<Row> = {
  readonly name: string;
  readonly low: (row: Row) => number | null;
  readonly high: (row: Row) => number | null;
};

/** A level or a day worth a line across the chart. */
export type Mark = { readonly name: string; readonly value?: number; readonly at?: string };

export const dashes = ['0', '6 3', '2 3', '9 3 2 3', '1 3', '12 4'] as const;

/** Lines stay apart in grey by their dashes, as well as by hue. */
export const dashOf = (order: number): string => dashes[order % dashes.length] ?? '0';

export const hueOf = (order: number): string => `var(--hue-${(order % 8) + 1})`;

/** The table behind a chart, in the reader's units. */
export function tableOf<Row>(
  rows: readonly Row[],
  x: { readonly name: string; readonly text: (row: Row) => string },
  series: readonly Series<Row>[],
  bands: readonly Band<Row>[],
  unit: string,
  reader: Reader,
): ChartTable {
  const sign = reader.sign(unit);
  const print = (value: number | null): string =>
    value === null ? '–' : unit === 'minor' ? reader.money(value) : reader.number(value, unit);
  const named = (name: string): string => (sign === '' ? name : `${name} (${sign})`);
  return {
    head: [
      x.name,
      ...series.map((each) => named(each.name)),
      ...bands.flatMap((band) => [
        named(say('{band}, low', { band: band.name })),
        named(say('{band}, high', { band: band.name })),
      ]),
    ],
    rows: rows.map((row) => [
      x.text(row),
      ...series.map((each) => print(each.read(row))),
      ...bands.flatMap((band) => [print(band.low(row)), print(band.high(row))]),
    ]),
  };
}
