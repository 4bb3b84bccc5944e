import { say } from '../../../words/say.ts';
import type { Move } from './proposal-types.ts';

export type MoveKind = Move['kind'];

/** One line of what a proposal does, ready for the table. */
export type MoveRow = {
  readonly key: string;
  readonly kind: MoveKind;
  readonly crop: string;
  readonly fromBed: string;
  readonly fromDate: string | null;
  readonly toBed: string;
  readonly toDate: string | null;
  readonly freeDate: string | null;
  readonly area_m2: number | null;
  /** The bed that must be accepted for this to happen. */
  readonly bedId: string;
};

export const kindWords: Readonly<Record<MoveKind, string>> = {
  stays: say('Stays'),
  shifts: say('Same bed, other time'),
  moves: say('Moves to another bed'),
  new: say('New'),
  goes: say('Goes'),
};

export const kindChoices = Object.entries(kindWords).map(([value, text]) => ({ value, text }));

/** Rows of the moves, with names in place of ids. */
export function moveRows(
  moves: readonly Move[],
  bedCode: (bedId: string) => string,
  cropName: (cropId: string) => string,
): readonly MoveRow[] {
  return moves.map((move, at): MoveRow => {
    const proposed = move.kind === 'goes' ? null : move.proposed;
    const present = move.kind === 'new' ? null : move.present;
    const bedId = proposed?.bedId ?? present?.bedId ?? '';
    return {
      key: `${at} ${proposed?.key ?? ''} ${present?.plantingId ?? ''}`,
      kind: move.kind,
      crop: cropName(proposed?.cropId ?? present?.cropId ?? ''),
      fromBed: present === null ? '' : bedCode(present.bedId),
      fromDate: present?.inBed ?? null,
      toBed: proposed === null ? '' : bedCode(proposed.bedId),
      toDate: proposed?.dates.inBed ?? null,
      freeDate: proposed?.dates.free ?? present?.free ?? null,
      area_m2: proposed?.area_m2 ?? null,
      bedId,
    };
  });
}

/** Beds on which anything changes, in the order given. */
export function bedsThatChange(moves: readonly Move[], order: readonly string[]): readonly string[] {
  const touched = new Set(moves.flatMap(changedBeds));
  return order.filter((bedId) => touched.has(bedId));
}

function changedBeds(move: Move): readonly string[] {
  switch (move.kind) {
    case 'stays':
      return move.days === 0 ? [] : [move.proposed.bedId];
    case 'goes':
      return [move.present.bedId];
    case 'new':
      return [move.proposed.bedId];
    case 'shifts':
    case 'moves':
      return [move.proposed.bedId, move.present.bedId];
  }
}

export function countKinds(moves: readonly Move[]): Readonly<Record<MoveKind, number>> {
  const counts: Record<MoveKind, number> = { stays: 0, shifts: 0, moves: 0, new: 0, goes: 0 };
  for (const { kind } of moves) counts[kind] += 1;
  return counts;
}
