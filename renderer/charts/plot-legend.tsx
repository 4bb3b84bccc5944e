import { dashOf, hueOf } from './series.ts';

/** Textures that keep areas and bars apart in grey: each series in turn has another. */
const textures = ['', 'M0 6 6 0', 'M3 0v6', 'M0 3h6', 'M0 0 6 6', 'M0 6 6 0 M0 0 6 6'] as const;

export const fillId = (chart: string, order: number): string => `${chart}-fill-${order}`;

/** Areas and bands lie over one another, so that only their strokes are drawn over a thin wash. */
export const washId = (chart: string, kind: 'area' | 'band', order: number): string => `${chart}-${kind}-${order}`;

/** Bands take the textures from the end, so that a band and the area of the same order differ too. */
const bandTexture = (order: number): number => textures.length - 1 - (order % (textures.length - 1));

/** The fills of a chart's areas and bars, as definitions of its drawing. */
export function PlotFills({
  chart,
  hues,
  bands,
}: {
  readonly chart: string;
  readonly hues: readonly number[];
  readonly bands: number;
}) {
  return (
    <defs>
      {hues.map((hue, order) => (
        <Wash key={washId(chart, 'area', order)} id={washId(chart, 'area', order)} hue={hue} texture={order} />
      ))}
      {Array.from({ length: bands }, (_, order) => (
        <Wash key={washId(chart, 'band', order)} id={washId(chart, 'band', order)} hue={order} texture={bandTexture(order)} />
      ))}
      {hues.map((hue, order) => (
        <pattern key={fillId(chart, order)} id={fillId(chart, order)} width={6} height={6} patternUnits="userSpaceOnUse">
          <rect width={6} height={6} fill={hueOf(hue)} />
          <path d={textures[order % textures.length]} stroke="var(--paper-raised)" strokeWidth={1.2} fill="none" />
        </pattern>
      ))}
    </defs>
  );
}

function Wash({ id, hue, texture }: { readonly id: string; readonly hue: number; readonly texture: number }) {
  return (
    <pattern id={id} width={6} height={6} patternUnits="userSpaceOnUse">
      <rect width={6} height={6} fill={hueOf(hue)} fillOpacity={0.18} />
      <path d={textures[texture % textures.length]} stroke={hueOf(hue)} strokeOpacity={0.5} strokeWidth={0.9} fill="none" />
    </pattern>
  );
}

export type LegendEntry = {
  readonly name: string;
  readonly as: 'line' | 'area' | 'stack' | 'bar' | 'band';
  readonly hue: number;
  readonly order: number;
};

/** What each line, area and bar is: drawn as it is in the chart. */
export function PlotLegend({ chart, entries }: { readonly chart: string; readonly entries: readonly LegendEntry[] }) {
  if (entries.length < 2) return null;
  return (
    <ul className="chart-legend">
      {entries.map(({ name, as, hue, order }) => (
        <li key={name}>
          <svg width={26} height={12} aria-hidden="true">
            {as === 'line' ? (
              <line x1={0} y1={6} x2={26} y2={6} stroke={hueOf(hue)} strokeWidth={2.4} strokeDasharray={dashOf(order)} />
            ) : (
              <rect
                width={26}
                height={12}
                fill={`url(#${as === 'band' || as === 'area' ? washId(chart, as, order) : fillId(chart, order)})`}
              />
            )}
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
