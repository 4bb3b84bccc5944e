import { dayNumber, type IsoDate } from '../../../../planner/calendar.ts';
import { shortMonthNames } from '../../../words/months.ts';
import { say } from '../../../words/say.ts';
import type { Move } from './proposal-types.ts';

export type StripBar = {
  readonly key: string;
  readonly text: string;
  readonly title: string;
  readonly family: string;
  /** Shares of the season, 0 to 1. */
  readonly from: number;
  readonly to: number;
  readonly isFixed: boolean;
};

export type Strip = {
  readonly bedId: string;
  readonly code: string;
  readonly changes: boolean;
  readonly said: string;
  readonly present: readonly StripBar[];
  readonly proposed: readonly StripBar[];
};

type Names = {
  readonly crop: (cropId: string) => string;
  readonly family: (cropId: string) => string;
  readonly date: (iso: string) => string;
};
type Season = { readonly first: IsoDate; readonly weeks: number };

const held = (share: number): number => Math.min(1, Math.max(0, share));

const shareOf = ({ first, weeks }: Season, date: IsoDate): number => held((dayNumber(date) - dayNumber(first)) / (7 * weeks));

/** The strips of beds, from the moves of a proposal. A planting that stays shows in both lanes. */
export function strips(
  moves: readonly Move[],
  beds: readonly { readonly bedId: string; readonly code: string }[],
  season: Season,
  names: Names,
): readonly Strip[] {
  const present = new Map<string, StripBar[]>();
  const proposed = new Map<string, StripBar[]>();
  const changed = new Set<string>();
  const push = (lane: Map<string, StripBar[]>, bedId: string, bar: StripBar) =>
    lane.set(bedId, [...(lane.get(bedId) ?? []), bar]);
  const bar = (key: string, cropId: string, inBed: IsoDate, free: IsoDate): StripBar => ({
    key,
    text: names.crop(cropId),
    title: say('{crop}, {inBed} to {free}', { crop: names.crop(cropId), inBed: names.date(inBed), free: names.date(free) }),
    family: names.family(cropId),
    from: shareOf(season, inBed),
    to: shareOf(season, free),
    isFixed: false,
  });
  moves.forEach((move, at) => {
    if (move.kind !== 'new') {
      const { plantingId, cropId, bedId, inBed, free, fromShare } = move.present;
      push(present, bedId, bar(`${plantingId} ${fromShare}`, cropId, inBed, free));
      if (move.kind !== 'stays') changed.add(bedId);
    }
    if (move.kind !== 'goes') {
      const { key, cropId, bedId, dates } = move.proposed;
      push(proposed, bedId, bar(`${key} ${at}`, cropId, dates.inBed, dates.free));
      if (move.kind !== 'stays' || move.days !== 0) changed.add(bedId);
    }
  });
  return beds.map(({ bedId, code }) => {
    const before = present.get(bedId) ?? [];
    const after = proposed.get(bedId) ?? [];
    const list = (bars: readonly StripBar[]) => (bars.length === 0 ? 'nothing' : bars.map(({ title }) => title).join('; '));
    return {
      bedId,
      code,
      changes: changed.has(bedId),
      said: say(': now {list}. Proposed {list2}.', { list: list(before), list2: list(after) }),
      present: before,
      proposed: after,
    };
  });
}

/** Where months begin along the strips, from the Mondays of the season. */
export function monthTicks(weeks: readonly string[]): readonly { readonly text: string; readonly at: number }[] {
  return weeks.flatMap((monday, at) => {
    const month = monday.slice(5, 7);
    const before = weeks[at - 1]?.slice(5, 7);
    const next = weeks.slice(at, at + 2).some((later) => later.slice(5, 7) !== month);
    // A month of which hardly anything is shown would run into the next one's name.
    return before === month || (before === undefined && next)
      ? []
      : [{ text: shortMonthNames[Number(month) - 1] ?? '', at: at / weeks.length }];
  });
}
