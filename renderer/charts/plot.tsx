import { useId } from 'react';
import {
  Area,
  Bar,
  CartesianGrid,
  ComposedChart,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { useReader } from '../client/reader.tsx';
import { fillId, type LegendEntry, PlotFills, PlotLegend, washId } from './plot-legend.tsx';
import { roundTicks } from './round-ticks.ts';
import { dashOf, hueOf } from './series.ts';

export type PlotProps = {
  readonly points: readonly {
    readonly x: string;
    readonly values: readonly (number | null)[];
    readonly bands: readonly (readonly [number | null, number | null])[];
  }[];
  readonly series: readonly { readonly name: string; readonly as: 'line' | 'area' | 'stack' | 'bar'; readonly hue: number }[];
  readonly bands: readonly { readonly name: string }[];
  readonly marks: readonly { readonly name: string; readonly value?: number; readonly at?: string }[];
  readonly sign: string;
};

/** The drawing of a chart. Kept in its own file since the charting library is half of all script. */
export function Plot({ points, series, bands, marks, sign }: PlotProps) {
  const reader = useReader();
  const number = (value: unknown): string => (typeof value === 'number' ? reader.print(value, '') : '–');
  const rows = points.map((point) => ({
    x: point.x,
    ...Object.fromEntries(point.values.map((value, at) => [`s${at}`, value])),
    ...Object.fromEntries(point.bands.map((band, at) => [`b${at}`, band])),
  }));
  const ticks = roundTicks(...reach(points, series, marks), 5);
  const places = labelledPlaces(points.map((point) => point.x));
  const chart = useId().replaceAll(':', '');
  const entries: readonly LegendEntry[] = [
    ...series.map(({ name, as, hue }, order) => ({ name, as, hue, order })),
    ...bands.map(({ name }, order) => ({ name, as: 'band' as const, hue: order, order })),
  ];
  return (
    <div className="plot">
      <div className="plot-drawing">
        <ResponsiveContainer width="100%" height="100%">
          <ComposedChart data={rows} margin={{ top: 22, right: 18, bottom: 4, left: 4 }} accessibilityLayer>
            <PlotFills chart={chart} hues={series.map((each) => each.hue)} bands={bands.length} />
            <CartesianGrid stroke="var(--grid-line-strong)" strokeDasharray="1 3" />
            <XAxis
              dataKey="x"
              {...(places === null ? {} : { ticks: [...places] })}
              tick={{ fill: 'var(--ink-soft)', fontSize: 11 }}
              stroke="var(--line-strong)"
              minTickGap={18}
              tickMargin={4}
            />
            <YAxis
              tick={{ fill: 'var(--ink-soft)', fontSize: 11 }}
              stroke="var(--line-strong)"
              width={52}
              ticks={[...ticks]}
              domain={[ticks[0] ?? 0, ticks.at(-1) ?? 1]}
              tickFormatter={number}
              label={{ value: sign, position: 'top', offset: 10, fill: 'var(--ink-soft)', fontSize: 11 }}
            />
            <Tooltip
              isAnimationActive={false}
              formatter={(value) => (Array.isArray(value) ? value.map(number).join(' to ') : `${number(value)} ${sign}`)}
              contentStyle={{
                background: 'var(--paper-raised)',
                border: '1px solid var(--line-strong)',
                borderRadius: 3,
                fontSize: 12,
              }}
              labelStyle={{ color: 'var(--ink)', fontWeight: 600 }}
              itemStyle={{ color: 'var(--ink)' }}
              cursor={{ stroke: 'var(--line-strong)', fill: 'var(--paper-hover)' }}
            />
            {bands.map((band, at) => (
              <Area
                key={band.name}
                dataKey={`b${at}`}
                name={band.name}
                stroke="none"
                fill={`url(#${washId(chart, 'band', at)})`}
                fillOpacity={1}
                isAnimationActive={false}
              />
            ))}
            {series.map((each, at) => shape(each, at, chart))}
            {marks.map((mark) => (
              <ReferenceLine
                key={mark.name}
                {...(mark.value === undefined ? {} : { y: mark.value })}
                {...(mark.at === undefined ? {} : { x: mark.at })}
                stroke="var(--stop)"
                strokeDasharray="5 3"
                ifOverflow="extendDomain"
                label={{ value: mark.name, position: 'insideTopRight', fill: 'var(--stop)', fontSize: 11 }}
              />
            ))}
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      <PlotLegend chart={chart} entries={entries} />
    </div>
  );
}

/** More labels than this never stand side by side along an axis. */
const MOST_LABELS = 40;

/**
 * The places along the axis that may get a label: the axis measures each of them on the page to see which fit, and for every day of a
 * year that takes longer than all else of a chart. Null leaves the choice to the axis.
 */
function labelledPlaces(all: readonly string[]): readonly string[] | null {
  if (all.length <= MOST_LABELS || new Set(all).size < all.length) return null;
  const step = Math.ceil(all.length / MOST_LABELS);
  return all.filter((_, at) => at % step === 0);
}

/** The least and the most that is drawn, 0 among them; what is stacked counts as its sum. */
function reach(points: PlotProps['points'], series: PlotProps['series'], marks: PlotProps['marks']): readonly [number, number] {
  const drawn = points.flatMap(({ values, bands }) => {
    const sums = { stack: 0, bar: 0 };
    return [
      ...values.map((value, at) => {
        const as = series[at]?.as;
        if (as !== 'stack' && as !== 'bar') return value;
        sums[as] += value ?? 0;
        return sums[as];
      }),
      ...bands.flat(),
    ];
  });
  const known = [0, ...drawn, ...marks.map(({ value }) => value)].filter((each) => typeof each === 'number');
  return known.reduce<readonly [number, number]>(([least, most], each) => [Math.min(least, each), Math.max(most, each)], [0, 0]);
}

function shape({ name, as, hue }: PlotProps['series'][number], at: number, chart: string) {
  const shared = { dataKey: `s${at}`, name, isAnimationActive: false as const };
  const ink = hueOf(hue);
  switch (as) {
    case 'line':
      return (
        <Line key={name} {...shared} stroke={ink} strokeWidth={2} strokeDasharray={dashOf(at)} dot={false} connectNulls={false} />
      );
    case 'area':
      return (
        <Area
          key={name}
          {...shared}
          stroke={ink}
          strokeWidth={1.5}
          strokeDasharray={dashOf(at)}
          fill={`url(#${washId(chart, 'area', at)})`}
          fillOpacity={1}
        />
      );
    case 'stack':
      return (
        <Area
          key={name}
          {...shared}
          stackId="stack"
          stroke="var(--paper-raised)"
          strokeWidth={1.5}
          fill={`url(#${fillId(chart, at)})`}
          fillOpacity={1}
        />
      );
    case 'bar':
      return (
        <Bar
          key={name}
          {...shared}
          stackId="bar"
          stroke="var(--paper-raised)"
          strokeWidth={1}
          fill={`url(#${fillId(chart, at)})`}
        />
      );
  }
}
