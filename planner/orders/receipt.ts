import { type Fault, InputError } from '../errors.ts';
import { splitMoney } from '../money.ts';

/** A line of a purchase as it stands, and what of it came or went back now. */
export type ReceiptLine = {
  readonly lineId: string;
  readonly ordered: number;
  readonly received: number;
  readonly returned: number;
  readonly packageAmount: number;
  readonly price_minor: number;
  readonly now: number;
};

/** What goes into the books: amount in base units and what it cost to have it there. */
export type Landed = { readonly lineId: string; readonly amount: number; readonly value_minor: number };

/**
 * What of a delivery enters the stock, at landed cost: goods, and the delivery fee and tax of this receipt shared by value of
 * the goods, so that the stock is worth what was paid for it to the minor unit.
 *
 * Common practice, no source.
 * @throws InputError on more than was ordered, or nothing at all
 */
export function landedCost(lines: readonly ReceiptLine[], charges_minor: number): readonly Landed[] {
  const faults: Fault[] = lines.flatMap((line, at) =>
    line.now < 0 || line.received - line.returned + line.now > line.ordered + 1e-9
      ? [
          {
            path: `lines.${at}.packages`,
            code: 'more-than-ordered',
            message: `${line.ordered} were ordered and ${line.received} have come: ${line.now} more is too many.`,
          },
        ]
      : [],
  );
  const coming = lines.filter((line) => line.now > 0);
  if (coming.length === 0 && faults.length === 0) faults.push({ path: 'lines', code: 'empty', message: 'Nothing was received.' });
  if (faults.length > 0) throw new InputError(faults);
  const goods = coming.map((line) => Math.round(line.now * line.price_minor));
  const even = goods.every((each) => each === 0);
  const { parts_minor } = splitMoney(charges_minor, even ? goods.map(() => 1) : goods);
  return coming.map((line, at) => ({
    lineId: line.lineId,
    amount: line.now * line.packageAmount,
    value_minor: (goods[at] ?? 0) + (parts_minor[at] ?? 0),
  }));
}

/** What goes back to the supplier. @throws InputError on more than was received */
export function sentBack(line: ReceiptLine): Landed {
  if (!(line.now > 0) || line.now > line.received - line.returned + 1e-9)
    throw new InputError([
      { path: 'packages', code: 'more-than-received', message: `Only ${line.received - line.returned} can go back.` },
    ]);
  return { lineId: line.lineId, amount: line.now * line.packageAmount, value_minor: Math.round(line.now * line.price_minor) };
}
