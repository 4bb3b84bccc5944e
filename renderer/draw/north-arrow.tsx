/** North on a drawing that is turned by `north_deg` clockwise from straight up. */
export function NorthArrow({ x, y, north_deg = 0 }: { readonly x: number; readonly y: number; readonly north_deg?: number }) {
  return (
    <g className="draw-north" transform={`translate(${x} ${y}) rotate(${north_deg})`}>
      <line x1={0} y1={14} x2={0} y2={-14} />
      <path d="M0 -16 L4.500 -5 L0 -8 L-4.500 -5 Z" />
      <text y={-20} textAnchor="middle">
        N
      </text>
    </g>
  );
}
