import { type Bill, goodsOf_minor } from '../../../planner/orders/bill.ts';
import type { LeastCost } from '../../../planner/orders/least-cost.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import { say } from '../../words/say.ts';

/** Why a list costs what it does, in sentences: supplier by supplier, and against one supplier for everything. */
export function whyCheaper(
  found: LeastCost | undefined,
  bill: Bill,
  nameOf: (supplierId: string) => string,
  reader: Pick<Reader, 'money'>,
): readonly string[] {
  const lines = bill.suppliers.map((each) => {
    const delivery =
      each.delivery_minor === 0
        ? say('delivery free')
        : say('delivery {delivery}', { delivery: reader.money(each.delivery_minor) });
    const count = say('{lines, plural, one {# line} other {# lines}}', { lines: each.lines.length });
    return say('{supplierId}: {count}, goods {goods}, {delivery}.', {
      supplierId: nameOf(each.supplierId),
      count,
      goods: reader.money(each.goods_minor),
      delivery,
    });
  });
  if (found === undefined || found.single === null || found.saving_minor === null) {
    return found?.single === null && found.saving_minor === null && found.plan.state === 'found'
      ? [...lines, say('No single supplier sells everything on the list.')]
      : lines;
  }
  const one = nameOf(found.single.supplierId);
  if (found.saving_minor <= 0)
    return [...lines, say('Everything from {one} is as cheap: a second delivery would not pay.', { one })];
  const goods_minor = found.single.goods_minor - goodsOf_minor(bill);
  const fees_minor = found.saving_minor - goods_minor;
  const amounts = { goods: reader.money(Math.abs(goods_minor)), fees: reader.money(Math.abs(fees_minor)) };
  const split = () => {
    if (goods_minor < 0) return say('Goods cost {goods} more, deliveries and tax {fees} less.', amounts);
    if (fees_minor < 0) return say('Goods cost {goods} less, deliveries and tax {fees} more.', amounts);
    return say('Goods cost {goods} less, deliveries and tax {fees} less.', amounts);
  };
  return [
    ...lines,
    say('It saves {saving} against everything from {one}.', { saving: reader.money(found.saving_minor), one }),
    split(),
  ];
}
