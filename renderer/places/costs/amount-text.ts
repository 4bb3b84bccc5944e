import type { Reader } from '../../../planner/units/reader.ts';

/** An amount in a unit of sale: weights in the reader's own unit, bunches and stems as they are. */
export function amountText(amount: number, unit: string, reader: Pick<Reader, 'print' | 'number'>): string {
  return unit === 'kg' ? reader.print(amount, 'kg', 3) : `${reader.number(amount, '', 3)} ${unit}`;
}

/** A price of one unit of sale: of a weight in the reader's own unit. */
export function priceText(price_minor: number, unit: string, reader: Pick<Reader, 'money' | 'scale' | 'sign'>): string {
  return unit === 'kg'
    ? `${reader.money(Math.round(price_minor / reader.scale(1, 'kg')))} a ${reader.sign('kg')}`
    : `${reader.money(Math.round(price_minor))} a ${unit}`;
}
