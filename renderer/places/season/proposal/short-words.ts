import type { Reader } from '../../../../planner/units/reader.ts';
import { say } from '../../../words/say.ts';
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
      ? say('in the week of {first}', { first: reader.date(first) })
      : say('in {weeks} weeks from {first} to {last}', {
          weeks: order.weeks.length,
          first: reader.date(first),
          last: reader.date(last),
        });
  const parts = [
    say('{crop}: {amount} of {amount2} missing {when}; it costs {penalty}.', {
      crop: crop?.name ?? say('A crop'),
      amount: amount(order.amount),
      amount2: amount(order.wanted),
      when,
      penalty: reader.money(Math.round(order.penalty_minor)),
    }),
  ];
  if (order.firstHarvestWeek === null) parts.push(say('It cannot be grown in this season at all.'));
  else if (order.tooEarly > 0)
    parts.push(
      say('{amount} of it is wanted before the first possible harvest, in the week of {weeks}.', {
        amount: amount(order.tooEarly),
        weeks: reader.date(weeks[order.firstHarvestWeek]),
      }),
    );
  parts.push(
    order.fittingArea_m2 > 0
      ? say('{fittingArea} of bed may carry it.', { fittingArea: reader.print(order.fittingArea_m2, 'm2', 3) })
      : say('No bed can carry it.'),
  );
  if (beds !== undefined) parts.push(...ruledOutText(beds));
  return parts.join(' ');
}

/** Why beds are ruled out for a crop: "Of 96 beds, 40 have too little soil, 12 rest from its family." */
function ruledOutText({ beds, tooShallow, tooDark, noSupport, resting }: ProposalView['ruledOut'][number]): readonly string[] {
  const why = [
    ...(noSupport > 0 ? [say('{noSupport} have no support', { noSupport })] : []),
    ...(tooShallow > 0 ? [say('{tooShallow} have too little soil', { tooShallow })] : []),
    ...(tooDark > 0 ? [say('{tooDark} have too little sun', { tooDark })] : []),
    ...(resting > 0 ? [say('{resting} rest from its family', { resting })] : []),
  ];
  return why.length === 0 ? [] : [say('Of {beds} beds, {why}.', { beds, why: why.join(', ') })];
}

/** What loosening one limit would do. */
export function remedyText(change: Change, fallsBy: number): string {
  const by = say('the shortfall falls by {fallsBy} %', { fallsBy: (fallsBy * 100).toFixed(0) });
  switch (change.kind) {
    case 'labour':
      return say('With half as many hours again, {by}.', { by });
    case 'water':
      return say('With half as much water again, {by}.', { by });
    case 'no-history':
      return say('If no bed had a rotation to keep, {by}.', { by });
    case 'beds':
      return say('With {count} more beds like the largest, {by}.', { count: change.count, by });
    case 'any-bed':
      return say('If every bed had the depth, sun and support for every crop, {by}.', { by });
    case 'price':
    case 'wage':
    case 'without':
      return say('With that change, {by}.', { by });
  }
}
