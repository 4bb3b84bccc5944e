import { useReader } from '../client/reader.tsx';
import { roundLength_m } from './round-length.ts';
import type { Scale } from './scale.ts';

/** A scale bar in the reader's units, about a fifth of the drawing wide. */
export function ScaleBar({ scale, x, y }: { readonly scale: Scale; readonly x: number; readonly y: number }) {
  const reader = useReader();
  const length_m = roundLength_m(scale.width / 5 / scale.perMetre, reader.system);
  const width = scale.length(length_m);
  return (
    <g className="draw-scale-bar" transform={`translate(${x} ${y})`}>
      <rect x={0} y={-5} width={width / 2} height={5} className="filled" />
      <rect x={width / 2} y={-5} width={width / 2} height={5} className="open" />
      <text x={0} y={-9}>
        0
      </text>
      <text x={width} y={-9} textAnchor="middle">
        {reader.print(length_m, 'm')}
      </text>
    </g>
  );
}
