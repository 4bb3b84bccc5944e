import { memo } from 'react';
import type { Finding, PlanPlanting, PlanSpan } from '../../../planner/season/plan.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import type { FamilyMark } from '../../look/family-mark.tsx';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import type { BoardRow } from './board-data.ts';
import { stripOf } from './strip.ts';
import type { TimeScale } from './time-scale.ts';

type BarProps = {
  readonly planting: PlanPlanting;
  readonly span: PlanSpan | null;
  readonly row: BoardRow | undefined;
  readonly scale: TimeScale;
  readonly line_px: number;
  readonly mark: FamilyMark | undefined;
  readonly worst: Finding | undefined;
  readonly standing: 'put' | 'held' | 'chosen';
};

const named = (row: BoardRow | undefined, planting: PlanPlanting): string =>
  (row?.number ?? 1) > 1
    ? say('{cropName} no. {number}', { cropName: planting.crop.cropName, number: row?.number })
    : planting.crop.cropName;

/** What a reader who does not see the drawing is told of a planting. */
export function barLabel(
  planting: PlanPlanting,
  row: BoardRow | undefined,
  worst: Finding | undefined,
  reader: Pick<Reader, 'date' | 'datesIn'>,
): string {
  const dates = say('in the bed {inBed}, harvest {firstHarvest} to {lastHarvest}, free {free}', {
    inBed: reader.date(planting.inBed),
    firstHarvest: reader.date(planting.firstHarvest),
    lastHarvest: reader.date(planting.lastHarvest),
    free: reader.date(planting.free),
  });
  const happened = row?.hasHappened === true ? say(', has begun') : '';
  return `${named(row, planting)}, ${dates}${happened}${worst === undefined ? '' : `. ${reader.datesIn(sayKnown(worst.message))}`}`;
}

/** One planting on one bed, drawn as a strip of a field log. */
export const BoardBar = memo(function BoardBar({ planting, span, row, scale, line_px, mark, worst, standing }: BarProps) {
  const strip = stripOf(planting, span, scale, line_px);
  const hue = mark?.hue ?? 'var(--ink-soft)';
  const weight = worst === undefined || worst.weight === 'note' ? undefined : worst.weight;
  return (
    <g
      className="strip"
      data-standing={standing}
      data-weight={weight}
      data-begun={row?.hasHappened === true ? '' : undefined}
      style={{ color: hue }}
      data-planting={planting.id}
      data-bed={span?.bedId ?? ''}
    >
      <rect
        className="strip-catch"
        x={strip.left_px}
        y={strip.top_px}
        width={Math.max(4, strip.right_px - strip.left_px)}
        height={strip.height_px}
      />
      {strip.raising === '' ? null : <path className="strip-raising" d={strip.raising} />}
      <path className="strip-growing" d={strip.growing} />
      <path className="strip-harvest" d={strip.harvest} />
      {mark === undefined || mark.texture === 'plain' ? null : (
        <path className="strip-texture" d={strip.harvest} fill={`url(#family-${mark.texture})`} />
      )}
      {strip.picks === '' ? null : <path className="strip-picks" d={strip.picks} />}
      <path className="strip-turnover" d={strip.turnover} />
      {weight === undefined ? null : (
        <g className="strip-mark" transform={`translate(${Math.max(scale.x(planting.inBed), 0) - 1} ${strip.top_px - 1})`}>
          <path d={weight === 'risk' ? 'M5 0 10 9H0Z' : 'M0 0h9v9H0Z'} />
          <text x={weight === 'risk' ? 5 : 4.5} y={weight === 'risk' ? 8.2 : 7.6} textAnchor="middle">
            !
          </text>
        </g>
      )}
      {strip.textWidth_px < 26 || strip.height_px < 11 ? null : (
        <text
          className="strip-name"
          x={strip.textFrom_px + (weight === undefined ? 0 : 10)}
          y={strip.top_px + strip.height_px - 4}
          style={{ clipPath: 'none' }}
        >
          {fitted(named(row, planting), strip.textWidth_px - (weight === undefined ? 0 : 10))}
        </text>
      )}
    </g>
  );
});

const LETTER_PX = 6.1;

/** The name, cut where the strip ends: letters of the board's size are taken as equally wide. */
function fitted(name: string, width_px: number): string {
  const most = Math.floor(width_px / LETTER_PX);
  return name.length <= most ? name : most < 3 ? '' : `${name.slice(0, most - 1)}…`;
}
