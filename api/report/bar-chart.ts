import { type Html, html } from './html.ts';
import type { ReportReader } from './report-reader.ts';
import type { ReportChart } from './section.ts';

const WIDTH = 860;
const LABEL_WIDTH = 190;
const BAR_HEIGHT = 16;
const GAP = 5;
/** Room for the names of the parts, where there are several. */
const TOP_WITH_NAMES = 26;
const TOP_PLAIN = 4;
/** Letters of a label that fit before the bars. */
const LABEL_LETTERS = 30;
/** Greys and dashes apart enough to be told in black and white print. */
const fills = ['#2f5d62', '#b7791f', '#6b7a8f', '#a14b3b', '#7c6a9c', '#4f7a3a'];

const shortened = (label: string): string => (label.length > LABEL_LETTERS ? `${label.slice(0, LABEL_LETTERS - 1)}…` : label);

/** Horizontal stacked bars as an SVG that needs no script; the figures stand at the bars' ends. */
export function barChart(chart: ReportChart, { number, sign, say }: ReportReader): Html {
  const totals = chart.bars.map((bar) => bar.parts.reduce((sum, part) => sum + Math.max(0, part.value), 0));
  const most = Math.max(...totals, 1e-12);
  const names = [...new Set(chart.bars.flatMap((bar) => bar.parts.map((part) => part.name)))];
  const top = names.length > 1 ? TOP_WITH_NAMES : TOP_PLAIN;
  const height = top + chart.bars.length * (BAR_HEIGHT + GAP) + 8;
  const scale = (WIDTH - LABEL_WIDTH - 110) / most;
  const fillOf = (name: string) => fills[names.indexOf(name) % fills.length] ?? '#2f5d62';
  const print = (value: number) => number(value, chart.unit);
  const legend = names.map(
    (name, at) =>
      html`<g transform="translate(${LABEL_WIDTH + at * 150},4)"><rect width="11" height="11" fill="${fillOf(name)}"/><text x="16" y="10">${say(name)}</text></g>`,
  );
  const bars = chart.bars.map((bar, at) => {
    const y = top + at * (BAR_HEIGHT + GAP);
    let x = LABEL_WIDTH;
    const parts = bar.parts.map((part) => {
      const width = Math.max(0, part.value) * scale;
      const drawn = html`<rect x="${x.toFixed(1)}" y="${y}" width="${width.toFixed(1)}" height="${BAR_HEIGHT}" fill="${fillOf(part.name)}"><title>${say(bar.label)}: ${say(part.name)} ${print(part.value)}</title></rect>`;
      x += width;
      return drawn;
    });
    return html`<text x="${LABEL_WIDTH - 8}" y="${y + 12}" text-anchor="end"><title>${say(bar.label)}</title>${shortened(say(bar.label))}</text>${parts}<text x="${(x + 6).toFixed(1)}" y="${y + 12}">${print(totals[at] ?? 0)}</text>`;
  });
  const unit = sign(chart.unit);
  const title = say(chart.title);
  return html`<figure><figcaption>${title}${unit === '' ? '' : `, ${unit}`}</figcaption><svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${title}">${names.length > 1 ? legend : []}${bars}</svg></figure>`;
}
