import type { Reader } from '../../../planner/units/reader.ts';
import type { DemandData } from './demand-tab.tsx';

type BalanceRow = DemandData['balance'][number];

export type BalanceCrop = { readonly key: string; readonly name: string; readonly unit: string; readonly short: number };

/** Crops and units of the balance, what is short most first. */
export function cropsOfBalance(rows: readonly BalanceRow[]): readonly BalanceCrop[] {
  const crops = new Map<string, BalanceCrop>();
  for (const row of rows) {
    const key = `${row.cropId}/${row.unit}`;
    const before = crops.get(key)?.short ?? 0;
    crops.set(key, { key, name: row.cropName, unit: row.unit, short: before + Math.max(0, -row.over) });
  }
  return [...crops.values()].sort((a, b) => b.short - a.short || a.name.localeCompare(b.name, 'en'));
}

/** The word for what is counted: weight in the reader's unit, anything else by its own word. */
export const soldIn = (unit: string, reader: Pick<Reader, 'sign'>): string => (unit === 'kg' ? reader.sign('kg') : unit);

/** What is short, as a share of what is wanted: 0 all of it is there, 1 nothing. */
export function balanceGrid(rows: readonly BalanceRow[], reader: Pick<Reader, 'sign'>) {
  const nameOf = (row: BalanceRow): string => `${row.cropName} (${soldIn(row.unit, reader)})`;
  const wanted = rows.filter((row) => row.wanted > 0);
  const names = [...new Set(wanted.map(nameOf))].sort();
  const weeks = [...new Set(wanted.map((row) => row.week))].sort();
  const shares = new Map(wanted.map((row) => [`${nameOf(row)} ${row.week}`, Math.max(0, -row.over) / row.wanted]));
  return {
    rows: names,
    weeks,
    value: (row: number, column: number): number | null => shares.get(`${names[row]} ${weeks[column]}`) ?? null,
  };
}
