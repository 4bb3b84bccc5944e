import { FamilyChip, type FamilyMark } from '../../look/family-mark.tsx';
import { say } from '../../words/say.ts';
import type { BoardData } from './board-data.ts';

/** Families that stand on the board, and how a strip is read. */
export function BoardLegend({ data, marks }: { readonly data: BoardData; readonly marks: ReadonlyMap<string, FamilyMark> }) {
  const shown = [...new Set(data.plantings.map((planting) => planting.crop.family))].sort();
  return (
    <div className="board-legend">
      <span className="board-key">
        <svg width="62" height="16" aria-hidden="true">
          <StripKey />
        </svg>
        {say('raised, growing, harvest, clearing')}
      </span>
      {shown.map((family) => {
        const mark = marks.get(family);
        return mark === undefined ? null : (
          <FamilyChip key={family} mark={mark}>
            {family}
          </FamilyChip>
        );
      })}
    </div>
  );
}

/** A strip in small, 62 by 16 pixels: raising, growing, harvest, clearing. */
export function StripKey() {
  return (
    <>
      <path d="M1 11v4M1 13H14" stroke="currentColor" strokeDasharray="4 2" fill="none" />
      <path d="M14 15V10L36 2V15Z" fill="none" stroke="currentColor" />
      <path d="M36 2H52V15H36Z" fill="currentColor" fillOpacity="0.35" stroke="currentColor" />
      <path d="M52 8H60M60 2V15" stroke="currentColor" fill="none" />
    </>
  );
}
