import type { PointerEvent } from 'react';
import type { Placed } from '../../../planner/beds/arrange.ts';
import { DimensionLine } from '../../draw/dimension-line.tsx';
import { NorthArrow } from '../../draw/north-arrow.tsx';
import type { Scale } from '../../draw/scale.ts';
import { ScaleBar } from '../../draw/scale-bar.tsx';
import type { Guides } from './use-site-pointer.ts';

type Place = { readonly x_m: number; readonly y_m: number };

/** What lies over the painted site: scale bar, north, guides of snapping, the measured way, the box and the turning handle. */
export function SiteOverlay(props: {
  readonly scale: Scale;
  readonly north_deg: number;
  readonly guides: Guides;
  readonly box: { readonly from: Place; readonly to: Place } | undefined;
  readonly measured: readonly Place[];
  readonly chosen: readonly Placed[];
  readonly onTurn: (event: PointerEvent) => void;
}) {
  const { scale, guides, box, measured } = props;
  const [from, to] = measured;
  return (
    <svg className="site-overlay" aria-hidden="true">
      {guides.lineX_m === null ? null : (
        <line className="site-guide" x1={scale.x(guides.lineX_m)} x2={scale.x(guides.lineX_m)} y1={0} y2={scale.height} />
      )}
      {guides.lineY_m === null ? null : (
        <line className="site-guide" x1={0} x2={scale.width} y1={scale.y(guides.lineY_m)} y2={scale.y(guides.lineY_m)} />
      )}
      {box === undefined ? null : (
        <rect
          className="site-box"
          x={Math.min(scale.x(box.from.x_m), scale.x(box.to.x_m))}
          y={Math.min(scale.y(box.from.y_m), scale.y(box.to.y_m))}
          width={Math.abs(scale.length(box.to.x_m - box.from.x_m))}
          height={Math.abs(scale.length(box.to.y_m - box.from.y_m))}
        />
      )}
      {from === undefined ? null : <circle className="site-measure-point" cx={scale.x(from.x_m)} cy={scale.y(from.y_m)} r={3} />}
      {from === undefined || to === undefined ? null : (
        <DimensionLine
          from={{ x: scale.x(from.x_m), y: scale.y(from.y_m) }}
          to={{ x: scale.x(to.x_m), y: scale.y(to.y_m) }}
          length_m={Math.hypot(to.x_m - from.x_m, to.y_m - from.y_m)}
          offset={0}
        />
      )}
      <TurnHandle scale={scale} chosen={props.chosen} onTurn={props.onTurn} />
      <rect className="site-paper" x={6} y={scale.height - 36} width={Math.min(scale.width / 4, 150)} height={30} />
      <rect className="site-paper" x={10} y={8} width={32} height={56} />
      <ScaleBar scale={scale} x={14} y={scale.height - 12} />
      <NorthArrow x={26} y={42} north_deg={props.north_deg} />
    </svg>
  );
}

const HANDLE_PX = 20;

function TurnHandle({
  scale,
  chosen,
  onTurn,
}: {
  readonly scale: Scale;
  readonly chosen: readonly Placed[];
  readonly onTurn: (event: PointerEvent) => void;
}) {
  if (chosen.length === 0 || chosen.length > 400) return null;
  const west = Math.min(...chosen.map((bed) => bed.x_m - bed.halfX_m));
  const east = Math.max(...chosen.map((bed) => bed.x_m + bed.halfX_m));
  const north = Math.max(...chosen.map((bed) => bed.y_m + bed.halfY_m));
  const south = Math.min(...chosen.map((bed) => bed.y_m - bed.halfY_m));
  const x = scale.x((west + east) / 2);
  const top = scale.y(north);
  return (
    <g>
      <rect
        className="site-chosen"
        x={scale.x(west) - 4}
        y={top - 4}
        width={scale.length(east - west) + 8}
        height={scale.length(north - south) + 8}
      />
      <line className="site-chosen" x1={x} x2={x} y1={top - 4} y2={top - HANDLE_PX} />
      <circle className="site-turn" cx={x} cy={top - HANDLE_PX} r={6} onPointerDown={onTurn} />
    </g>
  );
}
