import type { Reader } from '../../client/reader.tsx';

/** An amount in a unit of sale: weights in the reader's own unit, bunches and stems as they are. */
export function amountText(amount: number, unit: string, reader: Pick<Reader, 'print' | 'number'>): string {
  return unit === 'kg' ? reader.print(amount, 'kg', 3) : `${reader.number(amount, '', 3)} ${unit}`;
}
