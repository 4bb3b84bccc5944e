import { useReader } from '../client/reader.tsx';

type Point = { readonly x: number; readonly y: number };

const TICK = 4;
const OVERHANG = 3;

/** A dimension line between two points of the drawing, set off to the left of the way from `from` to `to`. */
export function DimensionLine({
  from,
  to,
  length_m,
  offset = 16,
  label,
}: {
  readonly from: Point;
  readonly to: Point;
  readonly length_m: number;
  readonly offset?: number;
  /** In place of the printed length. */
  readonly label?: string;
}) {
  const reader = useReader();
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  if (long < 1) return null;
  const along = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
  const aside = { x: along.y, y: -along.x };
  const at = (point: Point, out: number): Point => ({ x: point.x + aside.x * out, y: point.y + aside.y * out });
  const [start, end] = [at(from, offset), at(to, offset)];
  const degrees = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  const upright = degrees > 90 || degrees <= -90 ? degrees + 180 : degrees;
  const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
  return (
    <g className="draw-dimension">
      {[from, to].map((point, index) => {
        const [near, far] = [at(point, Math.sign(offset) * 2), at(point, offset + Math.sign(offset) * OVERHANG)];
        return <line key={index === 0 ? 'from' : 'to'} className="extension" x1={near.x} y1={near.y} x2={far.x} y2={far.y} />;
      })}
      <line x1={start.x} y1={start.y} x2={end.x} y2={end.y} />
      {[start, end].map((point, index) => (
        <line
          key={index === 0 ? 'from' : 'to'}
          className="tick"
          x1={point.x - (along.x + aside.x) * TICK}
          y1={point.y - (along.y + aside.y) * TICK}
          x2={point.x + (along.x + aside.x) * TICK}
          y2={point.y + (along.y + aside.y) * TICK}
        />
      ))}
      <text x={middle.x} y={middle.y} dy={-4} textAnchor="middle" transform={`rotate(${upright} ${middle.x} ${middle.y})`}>
        {label ?? reader.print(length_m, 'm')}
      </text>
    </g>
  );
}
