import { extentOf } from '../../../planner/beds/extent.ts';
import type { Outline, Point } from '../../../planner/beds/outline.ts';
import { DimensionLine } from '../../draw/dimension-line.tsx';
import { scaleTo } from '../../draw/scale.ts';
import { ScaleBar } from '../../draw/scale-bar.tsx';
import { useSize } from '../../draw/use-size.ts';
import { type KeyEntry, sheetOfDrawing } from '../../print/drawn-sheet.tsx';
import type { Paper } from '../../print/paper.ts';
import { PdfButton } from '../../print/pdf-button.tsx';
import { usePrintable } from '../../print/printables.ts';
import { say } from '../../words/say.ts';
import { localRing } from './site-view.ts';

const PAPER_HEIGHT_PX = 420;
const entries: readonly KeyEntry[] = [
  { name: say('plant'), swatch: <circle className="bed-plant" cx={11} cy={6.5} r={4} /> },
  { name: say('room of a plant'), swatch: <circle className="bed-plant-room" cx={11} cy={6.5} r={6} /> },
];

/** A bed from above with its plants to scale; each ring is the room of one plant. */
export function PlanDrawing(props: {
  readonly outline: Outline;
  readonly points_m: readonly Point[];
  readonly spacing_m: number;
  readonly label: string;
  readonly shares?: readonly { readonly name: string; readonly toShare: number }[];
}) {
  const [ref, size] = useSize();
  const ring = localRing(props.outline);
  const box = extentOf(props.outline);
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  const extent = { minX_m: Math.min(...xs), maxX_m: Math.max(...xs), minY_m: Math.min(...ys), maxY_m: Math.max(...ys) };
  const scale = scaleTo(extent, size, 34);
  const radius = scale.length(props.spacing_m / 2);
  const onPaper = (paper: Paper) =>
    sheetOfDrawing(props.label, paper, <PlanDrawing {...props} />, { wide: 1, high: PAPER_HEIGHT_PX, entries });
  const printable = usePrintable(onPaper, ref);
  return (
    <div className="drawing bed-drawing" ref={printable}>
      <div className="drawing-tools no-print">
        <PdfButton title={props.label} make={onPaper} />
      </div>
      {size.width === 0 ? null : (
        <svg role="img" aria-label={props.label}>
          <polygon className="bed-line" fill="none" points={ring.map(([x, y]) => `${scale.x(x)},${scale.y(y)}`).join(' ')} />
          {(props.shares ?? []).slice(0, -1).map((share) => {
            const x = scale.x(extent.minX_m + share.toShare * box.length_m);
            return (
              <line
                key={share.name}
                className="bed-plant-room"
                strokeDasharray="4 3"
                x1={x}
                x2={x}
                y1={scale.y(extent.maxY_m)}
                y2={scale.y(extent.minY_m)}
              />
            );
          })}
          {props.points_m.map(([x, y]) => (
            <g key={`${x} ${y}`}>
              {radius > 4 ? <circle className="bed-plant-room" cx={scale.x(x)} cy={scale.y(y)} r={radius} /> : null}
              <circle className="bed-plant" cx={scale.x(x)} cy={scale.y(y)} r={Math.max(1.5, Math.min(5, radius * 0.45))} />
            </g>
          ))}
          <DimensionLine
            from={{ x: scale.x(extent.minX_m), y: scale.y(extent.maxY_m) }}
            to={{ x: scale.x(extent.maxX_m), y: scale.y(extent.maxY_m) }}
            length_m={box.length_m}
          />
          <DimensionLine
            from={{ x: scale.x(extent.maxX_m), y: scale.y(extent.minY_m) }}
            to={{ x: scale.x(extent.maxX_m), y: scale.y(extent.maxY_m) }}
            length_m={box.width_m}
            offset={-14}
          />
          <ScaleBar scale={scale} x={12} y={size.height - 8} />
        </svg>
      )}
    </div>
  );
}
