import { type SiteInkName, type SiteShape, siteInks } from './site-shapes.ts';

const inkOf = (name: SiteInkName): string => `var(--${siteInks[name]})`;

/** The shapes of the site drawing as SVG, for paper. They stand still, so that their place in the list names them. */
export function SiteSvg({ shapes }: { readonly shapes: readonly SiteShape[] }) {
  return shapes.map((shape, at) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: drawn once and never changed
    <SiteShapeSvg key={at} shape={shape} />
  ));
}

function SiteShapeSvg({ shape }: { readonly shape: SiteShape }) {
  switch (shape.kind) {
    case 'squares': {
      const { width, height } = shape.size;
      const upright = shape.xs.map((x) => `M${x} 0V${height}`);
      const level = shape.ys.map((y) => `M0 ${y}H${width}`);
      return <path d={[...upright, ...level].join('')} fill="none" stroke={inkOf(shape.ink)} strokeWidth={0.5} />;
    }
    case 'line':
      return (
        <path
          d={pathOf(shape.points, shape.closed)}
          fill="none"
          stroke={inkOf(shape.line.ink)}
          strokeWidth={shape.line.width_px}
          strokeDasharray={shape.line.dash?.join(' ')}
        />
      );
    case 'bed': {
      const d = pathOf(placedRing(shape), true);
      return (
        <g>
          {shape.washes.map((wash) => (
            <path key={wash.ink} d={d} fill={inkOf(wash.ink)} fillOpacity={wash.share} />
          ))}
          <path d={d} fill="none" stroke={inkOf(shape.line.ink)} strokeWidth={shape.line.width_px} />
        </g>
      );
    }
    case 'dot':
      return <circle cx={shape.x} cy={shape.y} r={shape.radius} fill={inkOf(shape.ink)} />;
    case 'text': {
      const { short, size_px } = shape;
      const fits = short === undefined || shape.text.length * size_px * LETTER_SHARE <= short.room_px;
      return (
        <text
          x={shape.x}
          y={shape.y + (shape.at === 'middle' ? size_px * 0.35 : 0)}
          textAnchor={shape.at === 'middle' ? 'middle' : 'start'}
          style={{ fontSize: size_px, fill: inkOf(shape.ink) }}
        >
          {fits ? shape.text : short.text}
        </text>
      );
    }
  }
}

/** Width of a letter as a share of the size of the type. */
const LETTER_SHARE = 0.55;

const pathOf = (points: readonly (readonly [number, number])[], closed: boolean): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}${closed ? 'Z' : ''}`;

function placedRing({ ring, x, y, turn_deg, perMetre }: Extract<SiteShape, { readonly kind: 'bed' }>) {
  const angle = (turn_deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle) * perMetre, Math.sin(angle) * perMetre];
  return ring.map(([east, north]) => [x + east * cos - north * sin, y - east * sin - north * cos] as const);
}
