import { isIsoDate } from '../../planner/calendar.ts';
import { symbolUnit } from '../../planner/units/symbol.ts';
import type { PrintedCaution } from '../words/caution-texts.ts';
import { barChart } from './bar-chart.ts';
import { type Html, html } from './html.ts';
import { reportCss } from './report-css.ts';
import type { ReportReader } from './report-reader.ts';
import type { Amount, Cell, ReportColumn, ReportSection, ReportTable } from './section.ts';

export type ReportHead = {
  readonly farm: string;
  readonly invented: boolean;
  readonly season: string;
  readonly madeOn: string;
};

/** Bunches and stems have a name alone; what has a unit is in the reader's. */
const amountText = ({ amount, unit }: Amount, { number, print, say }: ReportReader): string =>
  symbolUnit(unit) === undefined ? `${number(amount, '')} ${say(unit)}` : print(amount, unit);

function cellOf(cell: Cell, { unit }: ReportColumn, reader: ReportReader): Html {
  const { date, number, say } = reader;
  const side = unit === null ? '' : 'n';
  if (cell === null) return html`<td class="${side}"><span class="soft">${say('not known')}</span></td>`;
  if (typeof cell === 'object') return html`<td class="n">${amountText(cell, reader)}</td>`;
  if (unit === null || typeof cell === 'string') {
    const text = String(cell);
    return isIsoDate(text) ? html`<td class="d">${date(text)}</td>` : html`<td>${say(text)}</td>`;
  }
  return html`<td class="n">${number(cell, unit)}</td>`;
}

function tableOf(table: ReportTable, reader: ReportReader): Html {
  const { say, sign } = reader;
  const shown = table.columns.flatMap((column, at) => (column.onlyInFile ? [] : [{ column, at }]));
  const heads = shown.map(({ column }) => {
    const unit = column.unit === null ? '' : sign(column.unit);
    return html`<th scope="col" class="${column.unit === null ? '' : 'n'}">${say(column.head)}${unit === '' ? '' : html` <span class="soft">${unit}</span>`}</th>`;
  });
  const rows = table.rows.map((row) => {
    const cells = shown.map(({ column, at }) => cellOf(row[at] ?? null, column, reader));
    return html`<tr>${cells}</tr>`;
  });
  const title = say(table.title);
  const body =
    table.rows.length === 0
      ? html`<p class="soft">${say('Nothing to list.')}</p>`
      : html`<div class="scroll" tabindex="0" role="region" aria-label="${title}"><table><thead><tr>${heads}</tr></thead><tbody>${rows}</tbody></table></div>`;
  return html`<h3>${title}</h3>${body}`;
}

const cautionOf = ({ title, text, source }: PrintedCaution, { say }: ReportReader): Html =>
  html`<p class="caution"><strong>${say(title)}.</strong> ${text.map(say).join(' ')} <span class="soft">${say('Source')}: ${source}</span></p>`;

/** The season report as one file that needs nothing else. */
export function reportPage(
  head: ReportHead,
  sections: readonly ReportSection[],
  reader: ReportReader,
  cautionsOf: (ids: readonly string[]) => readonly PrintedCaution[],
): string {
  const { date, language, say } = reader;
  const id = (at: number) => `part-${at + 1}`;
  const links = sections.map((section, at) => html`<a href="#${id(at)}">${say(section.title)}</a>`);
  const parts = sections.map(
    (section, at) =>
      html`<section id="${id(at)}"><h2>${say(section.title)}</h2>${section.says.map((line) => html`<p>${say(line)}</p>`)}${section.charts.map((chart) => barChart(chart, reader))}${section.tables.map((table) => tableOf(table, reader))}${cautionsOf(section.cautions).map((each) => cautionOf(each, reader))}${section.sources.length === 0 ? [] : html`<p class="soft">${say('Sources')}: ${section.sources.map(say).join('; ')}.</p>`}</section>`,
  );
  const title = say(`${head.farm}, season ${head.season}`);
  const made = say(`Season report ${head.season}, made on ${date(head.madeOn)}.`);
  const mark = head.invented ? html` <span class="mark">${say('invented sample')}</span>` : html``;
  return `<!doctype html>\n${
    html`<html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><style>${{ html: reportCss }}</style></head><body><h1>${head.farm}</h1><p class="soft">${made}${mark}</p><nav>${links}</nav>${parts}${cautionsOf(['estimate-limits']).map((each) => cautionOf(each, reader))}</body></html>`
      .html
  }\n`;
}
