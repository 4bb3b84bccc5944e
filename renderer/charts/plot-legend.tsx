import { dashOf, hueOf } from './series.ts';

/** Textures that keep areas and bars apart in grey: each series in turn has another. */
const textures = ['', 'M0 6 6 0', 'M3 0v6', 'M0 3h6', 'M0 0 6 6', 'M0 6 6 0 M0 0 6 6'] as const;

export const fillId = (chart: string, order: number): string => `${chart}-fill-${order}`;

/** The fills of a chart's areas and bars, as definitions of its drawing. */
export function PlotFills({ chart, hues }: { readonly chart: string; readonly hues: readonly number[] }) {
  return (
    <defs>
      {hues.map((hue, order) => (
        <pattern key={fillId(chart, order)} id={fillId(chart, order)} width={6} height={6} patternUnits="userSpaceOnUse">
          <rect width={6} height={6} fill={hueOf(hue)} />
          <path d={textures[order % textures.length]} stroke="var(--paper-raised)" strokeWidth={1.2} fill="none" />
        </pattern>
      ))}
    </defs>
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
                fill={as === 'band' ? hueOf(hue) : `url(#${fillId(chart, order)})`}
                fillOpacity={as === 'band' || as === 'area' ? 0.3 : 1}
              />
            )}
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
