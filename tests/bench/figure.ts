/** One measured figure with what it is judged by. */
export type Figure = {
  readonly topic: string;
  readonly what: string;
  readonly unit: 'ms' | 's' | 'MB' | '%';
  readonly figure: number;
  readonly p95: number | null;
  /** Time the process had on a core: what other work on the machine cannot lengthen. */
  readonly onCore_ms: number | null;
  /** The cheapest work that touches the same data, in the same run and unit. */
  readonly floor: number | null;
  /** The power of the number of beds by which the figure grows. */
  readonly exponent: number | null;
  /** Wanted at the most. */
  readonly wanted: number | null;
  /** The figure that is held against it: the p95 where that is what is asked. */
  readonly judged: number;
};

export const figureOf = (given: Pick<Figure, 'topic' | 'what' | 'figure'> & Partial<Figure>): Figure => ({
  unit: 'ms',
  p95: null,
  onCore_ms: null,
  floor: null,
  exponent: null,
  wanted: null,
  judged: given.figure,
  ...given,
});

/** The slope of the logarithms, by least squares; null with fewer than two sizes. */
export function exponentOf(points: readonly (readonly [beds: number, figure: number])[]): number | null {
  const logs = points.flatMap(([beds, figure]) => (beds > 0 && figure > 0 ? [[Math.log(beds), Math.log(figure)] as const] : []));
  if (logs.length < 2) return null;
  const mean = (at: 0 | 1) => logs.reduce((sum, each) => sum + each[at], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  const spread = logs.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
  return logs.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0) / spread;
}

export const verdictOf = ({ wanted, judged }: Figure): string => (wanted === null ? '' : judged <= wanted ? 'met' : 'MISSED');

const digits = (value: number): string => (value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2));
const shown = (value: number | null, unit = ''): string => (value === null ? '' : `${digits(value)}${unit}`);

/** A table for DEVELOPERS.md. */
export function tableOf(figures: readonly Figure[]): string {
  const rows = figures.map((each) => [
    each.topic,
    each.what,
    shown(each.figure, ` ${each.unit}`),
    shown(each.p95),
    shown(each.onCore_ms),
    shown(each.floor),
    each.floor === null || each.floor <= 0 ? '' : digits(each.figure / each.floor),
    each.exponent === null ? '' : `beds^${each.exponent.toFixed(2)}`,
    shown(each.wanted, ` ${each.unit}`),
    verdictOf(each),
  ]);
  const head = ['topic', 'what', 'figure', 'p95', 'on the core', 'floor', 'ratio', 'growth', 'wanted', ''];
  return [head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

export const lineOf = (each: Figure): string =>
  [
    each.what.padEnd(74),
    shown(each.figure, ` ${each.unit}`).padStart(10),
    each.p95 === null ? ''.padEnd(12) : `p95 ${digits(each.p95).padStart(8)}`,
    each.onCore_ms === null ? ''.padEnd(13) : `core ${digits(each.onCore_ms).padStart(8)}`,
    each.floor === null || each.floor <= 0 ? ''.padEnd(14) : `ratio ${digits(each.figure / each.floor).padStart(8)}`,
    each.exponent === null ? '' : `beds^${each.exponent.toFixed(2)}`,
    each.wanted === null ? '' : `wanted ${each.wanted} ${each.unit} ${verdictOf(each)}`,
  ].join('  ');
