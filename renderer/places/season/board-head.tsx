import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import type { BoardData } from './board-data.ts';
import { type TimeScale, weekMarks } from './time-scale.ts';

/** Weeks and months across, with the frost dates and today as levels read from above. */
export function BoardHead({ scale }: { readonly scale: TimeScale }) {
  const reader = useReader();
  const weeks = weekMarks(scale, reader.locale);
  const each = scale.day_px * 7;
  return (
    <svg className="board-weeks" width={scale.width_px} height={40} aria-hidden="true">
      {weeks.map((week) => (
        <g key={week.monday}>
          {week.month === null ? null : (
            <>
              <path className="month-stroke" d={`M${week.x_px + 0.5} 2V40`} />
              <text className="month-name" x={week.x_px + 4} y={15}>
                {week.month}
              </text>
            </>
          )}
          <path className="week-stroke" d={`M${week.x_px + 0.5} 32V40`} />
          {each < 17 && week.week % 2 === 1 ? null : (
            <text className="week-number" x={week.x_px + each / 2} y={31} textAnchor="middle">
              {week.week}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

/** Upright levels through all lines: last and first frost, and today. */
export function BoardLevels({
  scale,
  frost,
  today,
  height_px,
}: {
  readonly scale: TimeScale;
  readonly frost: BoardData['frost'];
  readonly today: string | null;
  readonly height_px: number;
}) {
  const reader = useReader();
  const levels = [
    { date: frost.lastFrost, name: say('last frost'), kind: 'frost' },
    { date: frost.firstFrost, name: say('first frost'), kind: 'frost' },
    { date: today as typeof frost.lastFrost, name: say('today'), kind: 'today' },
  ].flatMap((level) => (level.date === null ? [] : [{ ...level, date: level.date, x_px: scale.x(level.date) }]));
  return (
    <svg className="board-levels" width={scale.width_px} height={height_px} aria-hidden="true">
      {levels
        .filter((level) => level.x_px >= 0 && level.x_px <= scale.width_px)
        .map((level) => (
          <g key={level.name} data-kind={level.kind}>
            <path d={`M${Math.round(level.x_px) + 0.5} 0V${height_px}`} />
            <text x={level.x_px + 3} y={10}>
              {level.name} {reader.date(level.date)}
            </text>
          </g>
        ))}
    </svg>
  );
}
