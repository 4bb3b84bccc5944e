import { DimensionLine } from '../draw/dimension-line.tsx';
import { Hatches, hatch, hatchNames } from '../draw/hatches.tsx';
import { NorthArrow } from '../draw/north-arrow.tsx';
import { PanButtons } from '../draw/pan-buttons.tsx';
import { scaleTo } from '../draw/scale.ts';
import { ScaleBar } from '../draw/scale-bar.tsx';
import { usePanZoom } from '../draw/use-pan-zoom.ts';

const whole = { minX_m: 0, minY_m: 0, maxX_m: 9, maxY_m: 2.4 };
const size = { width: 900, height: 300 };
const scaleOf = (extent: typeof whole) => scaleTo(extent, size, 48);

/** The hatches, a dimension line each way, the scale bar and north, in a drawing that can be moved about in. */
export function PartDrawing() {
  const pan = usePanZoom(whole, scaleOf);
  const scale = scaleOf(pan.extent);
  return (
    <div className="drawing squared" style={{ height: 300 }}>
      <svg {...pan.bind} width={size.width} height={size.height} role="application" aria-label="Hatches and dimension lines">
        <Hatches />
        {hatchNames.map((name, at) => (
          <g key={name}>
            <rect
              x={scale.x(at)}
              y={scale.y(1.8)}
              width={scale.length(0.9)}
              height={scale.length(1.2)}
              fill={hatch(name)}
              stroke="var(--ink)"
            />
            <text x={scale.x(at + 0.45)} y={scale.y(0.4)} textAnchor="middle">
              {name}
            </text>
          </g>
        ))}
        <DimensionLine from={{ x: scale.x(0), y: scale.y(1.8) }} to={{ x: scale.x(0.9), y: scale.y(1.8) }} length_m={0.9} />
        <DimensionLine from={{ x: scale.x(0), y: scale.y(0.6) }} to={{ x: scale.x(0), y: scale.y(1.8) }} length_m={1.2} />
        <ScaleBar scale={scale} x={48} y={size.height - 12} />
        <NorthArrow x={size.width - 36} y={size.height - 30} north_deg={20} />
      </svg>
      <PanButtons nearer={pan.nearer} farther={pan.farther} reset={pan.reset} />
    </div>
  );
}
