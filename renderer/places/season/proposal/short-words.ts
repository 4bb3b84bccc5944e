import type { Reader } from '../../../client/reader.tsx';
import type { ProposalView } from './proposal-types.ts';

type Unmet = ProposalView['result']['unmet'][number];
type Change = ProposalView['result']['remedies'][number]['change'];

const amountText = (amount: number, unit: string, reader: Pick<Reader, 'print'>): string =>
  unit === 'kg' || unit === 'L' ? reader.print(amount, unit, 3) : `${Math.round(amount)} ${unit}`;

/** One order that falls short, as a sentence: how much, when, what it costs, and the facts no plan can change. */
export function shortOrderText(
  order: Unmet,
  crop: { readonly name: string; readonly unit: string } | undefined,
  weeks: readonly string[],
  reader: Pick<Reader, 'print' | 'money' | 'date'>,
  beds: ProposalView['ruledOut'][number] | undefined,
): string {
  const unit = crop?.unit ?? '';
  const amount = (value: number) => amountText(value, unit, reader);
  const first = weeks[order.weeks[0] ?? -1];
  const last = weeks[order.weeks.at(-1) ?? -1];
  const when =
    first === last
      ? `in the week of ${reader.date(first)}`
      : `in ${order.weeks.length} weeks from ${reader.date(first)} to ${reader.date(last)}`;
  const parts = [
    `${crop?.name ?? 'A crop'}: ${amount(order.amount)} of ${amount(order.wanted)} missing ${when}; it costs ${reader.money(Math.round(order.penalty_minor))}.`,
  ];
  if (order.firstHarvestWeek === null) parts.push('It cannot be grown in this season at all.');
  else if (order.tooEarly > 0)
    parts.push(
      `${amount(order.tooEarly)} of it is wanted before the first possible harvest, in the week of ${reader.date(weeks[order.firstHarvestWeek])}.`,
    );
  parts.push(
    order.fittingArea_m2 > 0 ? `${reader.print(order.fittingArea_m2, 'm2', 3)} of bed may carry it.` : 'No bed can carry it.',
  );
  if (beds !== undefined) parts.push(...ruledOutText(beds));
  return parts.join(' ');
}

/** Why beds are ruled out for a crop: "Of 96 beds, 40 have too little soil, 12 rest from its family." */
function ruledOutText({ beds, tooShallow, tooDark, noSupport, resting }: ProposalView['ruledOut'][number]): readonly string[] {
  const why = [
    ...(noSupport > 0 ? [`${noSupport} have no support`] : []),
    ...(tooShallow > 0 ? [`${tooShallow} have too little soil`] : []),
    ...(tooDark > 0 ? [`${tooDark} have too little sun`] : []),
    ...(resting > 0 ? [`${resting} rest from its family`] : []),
  ];
  return why.length === 0 ? [] : [`Of ${beds} beds, ${why.join(', ')}.`];
}

/** What loosening one limit would do. */
export function remedyText(change: Change, fallsBy: number): string {
  const by = `the shortfall falls by ${(fallsBy * 100).toFixed(0)} %`;
  switch (change.kind) {
    case 'labour':
      return `With half as many hours again, ${by}.`;
    case 'water':
      return `With half as much water again, ${by}.`;
    case 'no-history':
      return `If no bed had a rotation to keep, ${by}.`;
    case 'beds':
      return `With ${change.count} more beds like the largest, ${by}.`;
    case 'any-bed':
      return `If every bed had the depth, sun and support for every crop, ${by}.`;
    case 'price':
    case 'wage':
    case 'without':
      return `With that change, ${by}.`;
  }
}
