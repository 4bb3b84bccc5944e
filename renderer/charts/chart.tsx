import type { ReactNode } from 'react';
import { currencyPlaces } from '../../planner/units/print-money.ts';
import { later } from '../app/later.tsx';
import { useReader } from '../client/reader.tsx';
import { say } from '../words/say.ts';
import { ChartFrame } from './chart-frame.tsx';
import type { PlotProps } from './plot.tsx';
import { type Band, type Mark, type Series, tableOf } from './series.ts';

const Plot = later(
  async () => (await import('./plot.tsx')).Plot,
  () => <p className="waiting">{say('Drawing…')}</p>,
);

/**
 * A chart over one axis: lines, areas, stacked areas or bars, with bands for what is uncertain and marks for levels
 * and days. Values are canonical; axis and table are in the reader's unit. The drawing comes with the first chart shown.
 */
export function Chart<Row>(props: {
  readonly title: string;
  readonly rows: readonly Row[];
  /** The text along the axis: a date, a week, a bed code. */
  readonly x: { readonly name: string; readonly text: (row: Row) => string };
  readonly unit: string;
  readonly series: readonly Series<Row>[];
  readonly bands?: readonly Band<Row>[];
  readonly marks?: readonly Mark[];
  readonly height?: number;
  readonly note?: ReactNode;
}) {
  const reader = useReader();
  const { rows, x, unit, series, bands = [], marks = [] } = props;
  const scaled = (value: number | null): number | null =>
    value === null || !Number.isFinite(value)
      ? null
      : unit === 'minor'
        ? value / 10 ** currencyPlaces(reader.currency)
        : reader.scale(value, unit);
  const points: PlotProps['points'] = rows.map((row) => ({
    x: x.text(row),
    values: series.map((each) => scaled(each.read(row))),
    bands: bands.map((band) => [scaled(band.low(row)), scaled(band.high(row))] as const),
  }));
  return (
    <ChartFrame
      title={props.title}
      table={tableOf(rows, x, series, bands, unit, reader)}
      height={props.height ?? 260}
      note={props.note}
    >
      <Plot
        points={points}
        series={series.map(({ name, as, hue }, order) => ({ name, as, hue: hue ?? order }))}
        bands={bands.map(({ name }) => ({ name }))}
        marks={marks.map((mark) => ({ ...mark, ...(mark.value === undefined ? {} : { value: scaled(mark.value) ?? 0 }) }))}
        sign={reader.sign(unit)}
      />
    </ChartFrame>
  );
}
