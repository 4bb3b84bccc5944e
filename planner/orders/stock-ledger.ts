import type { IsoDate } from '../calendar.ts';
import { refuse, requirePositive, requireRange } from '../errors.ts';
import { roundMoney } from '../money.ts';
import { computed, entry, type Working } from '../working.ts';

/** A movement of one material in its base unit. What comes in carries its value; what goes out is valued by the ledger. */
export type StockMovement =
  | { readonly kind: 'in'; readonly amount: number; readonly value_minor: number; readonly lot?: string; readonly date?: IsoDate }
  | {
      readonly kind: 'out';
      readonly amount: number;
      readonly lot?: string;
      readonly date?: IsoDate;
      /** Says that the grower knows that this takes the stock below nothing. */
      readonly flagged?: boolean;
    };

export type StockValue = {
  /** Value of each movement out, in the order of the movements; what comes in has its own value. */
  readonly values_minor: readonly number[];
  readonly left: number;
  readonly leftValue_minor: number;
  /** Cost of one unit of what is left; that of the last purchase when nothing is left. */
  readonly unitCost_minor: number;
};

/** Differences below this share of what was ever in stock come from arithmetic, not from the shed. */
const DUST_SHARE = 1e-9;

/**
 * Values a ledger by moving average: after each purchase the unit cost is `value / quantity`; a use takes its amount at that
 * cost, rounded to the minor unit; the use that empties the stock takes what value is left, so that no money is made or lost.
 *
 * Source: standard form of the moving average, common practice.
 * @throws InputError on a use of more than is there that is not flagged
 */
export function byMovingAverage(movements: readonly StockMovement[]): StockValue {
  let left = 0;
  let value = 0;
  let unit = 0;
  let ever = 0;
  const values: number[] = [];
  for (const [at, move] of movements.entries()) {
    requireAmount(at, move);
    if (move.kind === 'in') {
      left += move.amount;
      value += move.value_minor;
      ever += move.amount;
      if (left > 0) unit = value / left;
      values.push(move.value_minor);
      continue;
    }
    requireThere(at, move, left, ever);
    const empties = Math.abs(left - move.amount) <= DUST_SHARE * Math.max(ever, move.amount);
    const cost = empties ? value : roundMoney(move.amount * (left > 0 ? value / left : unit));
    values.push(cost);
    left = empties ? 0 : left - move.amount;
    value -= cost;
  }
  return { values_minor: values, left, leftValue_minor: value, unitCost_minor: left > 0 ? value / left : unit };
}

/**
 * Values a ledger first in, first out: a use takes the oldest layers; each layer's last part takes what is left of its
 * value, so that no money is made or lost. A named lot is taken from that lot's own layers.
 *
 * Source: standard form, common practice.
 * @throws InputError on a use of more than is there that is not flagged
 */
export function byFirstIn(movements: readonly StockMovement[]): StockValue {
  const layers: { amount: number; value: number; readonly lot: string | undefined }[] = [];
  let unit = 0;
  let ever = 0;
  const values: number[] = [];
  for (const [at, move] of movements.entries()) {
    requireAmount(at, move);
    if (move.kind === 'in') {
      layers.push({ amount: move.amount, value: move.value_minor, lot: move.lot });
      ever += move.amount;
      unit = move.value_minor / move.amount;
      values.push(move.value_minor);
      continue;
    }
    const usable = layers.filter((layer) => move.lot === undefined || layer.lot === move.lot);
    const there = usable.reduce((sum, layer) => sum + layer.amount, 0);
    requireThere(at, move, there, ever);
    let need = move.amount;
    let cost = 0;
    for (const layer of usable) {
      if (need <= 0) break;
      const whole = layer.amount - need <= DUST_SHARE * ever;
      const part = whole ? layer.value : roundMoney((layer.value * need) / layer.amount);
      const taken = whole ? layer.amount : need;
      cost += part;
      layer.value -= part;
      layer.amount = whole ? 0 : layer.amount - need;
      need -= taken;
    }
    if (need > DUST_SHARE * Math.max(ever, move.amount)) {
      const beyond = roundMoney(need * unit);
      layers.push({ amount: -need, value: -beyond, lot: move.lot });
      cost += beyond;
    }
    values.push(cost);
    dropEmpty(layers);
  }
  const left = layers.reduce((sum, layer) => sum + layer.amount, 0);
  const leftValue = layers.reduce((sum, layer) => sum + layer.value, 0);
  return {
    values_minor: values,
    left,
    leftValue_minor: leftValue,
    unitCost_minor: left > 0 ? leftValue / left : unit,
  };
}

export type StockMethod = 'moving-average' | 'first-in';

/** Values a ledger by the farm's method. */
export function valueStock(movements: readonly StockMovement[], method: StockMethod): StockValue {
  return method === 'moving-average' ? byMovingAverage(movements) : byFirstIn(movements);
}

/** The balance that movements lead to, in the base unit. */
export function balanceOf(movements: readonly StockMovement[]): number {
  return movements.reduce((sum, move) => sum + (move.kind === 'in' ? move.amount : -move.amount), 0);
}

/** Working of the unit cost of {@link byMovingAverage}. */
export function explainUnitCost(movements: readonly StockMovement[], unit: string): Working {
  const found = byMovingAverage(movements);
  const bought = movements.flatMap((move) => (move.kind === 'in' ? [move] : []));
  return {
    title: 'Average cost in stock',
    formula: 'c = value / quantity, after each purchase',
    symbols: [
      {
        symbol: 'in',
        name: 'came in',
        figure: { value: bought.reduce((sum, move) => sum + move.amount, 0), unit },
        origin: entry('your purchases and counts'),
      },
      { symbol: 'left', name: 'on hand', figure: { value: found.left, unit }, origin: computed() },
      { symbol: 'value', name: 'value on hand', figure: { value: found.leftValue_minor, unit: 'minor' }, origin: computed() },
    ],
    steps: [],
    result: { value: found.unitCost_minor, unit: 'minor' },
    sources: ['moving average, common practice, no source'],
    notes: [],
  };
}

function requireAmount(at: number, move: StockMovement): void {
  requirePositive(`movements.${at}.amount`, move.amount, '');
  if (move.kind === 'in') requireRange(`movements.${at}.value_minor`, move.value_minor, 0, Infinity, '');
}

function requireThere(at: number, move: StockMovement & { readonly kind: 'out' }, there: number, ever: number): void {
  if (move.flagged === true || move.amount - there <= DUST_SHARE * Math.max(ever, move.amount)) return;
  refuse(
    `movements.${at}.amount`,
    'more-than-stock',
    `${move.amount} is more than the ${Math.max(0, there)} on hand. Count the stock, or mark it as a correction.`,
  );
}

/** Layers that are used up go, so that a long ledger stays quick. */
function dropEmpty(layers: { amount: number; value: number; readonly lot: string | undefined }[]): void {
  for (let at = layers.length - 1; at >= 0; at -= 1) if (layers[at]?.amount === 0) layers.splice(at, 1);
}
