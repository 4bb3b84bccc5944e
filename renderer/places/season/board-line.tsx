import { memo } from 'react';
import type { Finding } from '../../../planner/season/plan.ts';
import { useReader } from '../../client/reader.tsx';
import type { FamilyMark } from '../../look/family-mark.tsx';
import { BoardBar, barLabel } from './board-bar.tsx';
import type { BoardRow } from './board-data.ts';
import { type BedLine, LINE_PX, type Piece, piecesOf } from './board-lines.ts';
import type { TimeScale } from './time-scale.ts';

export type LineProps = {
  readonly line: BedLine;
  readonly scale: TimeScale;
  readonly rows: ReadonlyMap<string, BoardRow>;
  readonly marks: ReadonlyMap<string, FamilyMark>;
  readonly worst: ReadonlyMap<string, Finding>;
  /** The planting that is held, chosen or focused, when it stands in this line. */
  readonly heldId: string | null;
  readonly chosenId: string | null;
  readonly focusKey: string | null;
};

/** One bed through the season: its strips, and for each a button that a key or a screen reader finds. */
export const BoardBedLine = memo(function BoardBedLine(props: LineProps) {
  const { line, scale, rows, marks, worst, heldId, chosenId, focusKey } = props;
  const reader = useReader();
  const height = LINE_PX[line.kind];
  const pieces = piecesOf(line);
  const isPut = ({ planting }: Piece): boolean => planting.id !== heldId;
  return (
    <div className="board-strips" style={{ width: scale.width_px, height }}>
      <svg width={scale.width_px} height={height} aria-hidden="true">
        {/* the earlier lies over the raising of the later, what is held over all */}
        {[...pieces.toReversed().filter(isPut), ...pieces.filter((piece) => !isPut(piece))].map(({ planting, span }) => (
          <BoardBar
            key={`${planting.id} ${span?.fromShare ?? 0}`}
            planting={planting}
            span={span}
            row={rows.get(planting.id)}
            scale={scale}
            line_px={height}
            mark={marks.get(planting.crop.family)}
            worst={worst.get(planting.id)}
            standing={planting.id === heldId ? 'held' : planting.id === chosenId ? 'chosen' : 'put'}
          />
        ))}
      </svg>
      {pieces.map(({ planting, span }) => {
        const key = `${line.id} ${planting.id}`;
        const left = scale.x(planting.inBed);
        return (
          <button
            key={`${key} ${span?.fromShare ?? 0}`}
            type="button"
            className="strip-button"
            data-planting={planting.id}
            data-bed={line.id}
            tabIndex={focusKey === key ? 0 : -1}
            style={{ left, width: Math.max(6, scale.x(planting.free) - left) }}
            aria-label={barLabel(planting, rows.get(planting.id), worst.get(planting.id), reader)}
            aria-pressed={planting.id === heldId}
          />
        );
      })}
    </div>
  );
});
