import { printNumber } from '../../planner/units/print.ts';
import { readerUnit, signOf } from '../../planner/units/reader-unit.ts';
import type { UnitSystem } from '../../planner/units/system.ts';
import { barChart } from './bar-chart.ts';
import { type Html, html } from './html.ts';
import { reportCss } from './report-css.ts';
import type { ReportColumn, ReportSection, ReportTable } from './section.ts';

export type ReportHead = {
  readonly farm: string;
  readonly invented: boolean;
  readonly season: string;
  readonly madeOn: string;
  readonly system: UnitSystem;
  readonly currency: string;
};

const unitSign = (column: ReportColumn, head: ReportHead): string => {
  if (column.unit === null || column.unit === '') return '';
  if (column.unit === 'minor') return head.currency;
  return signOf(column.unit) === '' ? '' : readerUnit(column.unit, head.system).sign;
};

function tableOf(table: ReportTable, head: ReportHead): Html {
  const heads = table.columns.map((column) => {
    const sign = unitSign(column, head);
    return html`<th scope="col" class="${column.unit === null ? '' : 'n'}">${column.head}${sign === '' ? '' : html` <span class="soft">${sign}</span>`}</th>`;
  });
  const rows = table.rows.map((row) => {
    const cells = row.map((cell, at) => {
      const unit = table.columns[at]?.unit ?? null;
      if (cell === null) return html`<td class="${unit === null ? '' : 'n'}"><span class="soft">not known</span></td>`;
      if (unit === null || typeof cell === 'string')
        return html`<td class="${/^\d{4}-\d\d-\d\d$/.test(String(cell)) ? 'd' : ''}">${String(cell)}</td>`;
      return html`<td class="n">${unit === '' ? String(cell) : printNumber(cell, unit, head.system, { currency: head.currency })}</td>`;
    });
    return html`<tr>${cells}</tr>`;
  });
  const body =
    table.rows.length === 0
      ? html`<p class="soft">Nothing to list.</p>`
      : html`<div class="scroll" tabindex="0" role="region" aria-label="${table.title}"><table><thead><tr>${heads}</tr></thead><tbody>${rows}</tbody></table></div>`;
  return html`<h3>${table.title}</h3>${body}`;
}

/** The season report as one file that needs nothing else. */
export function reportPage(head: ReportHead, sections: readonly ReportSection[]): string {
  const id = (at: number) => `part-${at + 1}`;
  const links = sections.map((section, at) => html`<a href="#${id(at)}">${section.title}</a>`);
  const parts = sections.map(
    (section, at) =>
      html`<section id="${id(at)}"><h2>${section.title}</h2>${section.says.map((line) => html`<p>${line}</p>`)}${section.charts.map((chart) => barChart(chart, head.system, head.currency))}${section.tables.map((table) => tableOf(table, head))}${section.cautions.map((line) => html`<p class="caution">${line}</p>`)}${section.sources.length === 0 ? [] : html`<p class="soft">Sources: ${section.sources.join('; ')}.</p>`}</section>`,
  );
  const title = `${head.farm}, season ${head.season}`;
  const mark = head.invented ? html` <span class="mark">invented sample</span>` : html``;
  return `<!doctype html>\n${
    html`<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><style>${{ html: reportCss }}</style></head><body><h1>${head.farm}</h1><p class="soft">Season report ${head.season}, made on ${head.madeOn}.${mark}</p><nav>${links}</nav>${parts}<p class="soft">These are estimates from the figures entered and the sources named; real soil, pumps, weather and prices differ. Measure before you rely on them.</p></body></html>`
      .html
  }\n`;
}
