import { stringify } from 'csv-stringify/sync';
import type { Content } from 'pdfmake/interfaces.js';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { printQuantity } from '../../planner/units/print.ts';
import { currencyPlaces, printMoney } from '../../planner/units/print-money.ts';
import type { MakeDownload } from '../http/downloads.ts';
import { cautionTexts } from './caution-texts.ts';
import { shoppingView } from './shopping-view.ts';
import { wantedDays } from './wanted-days.ts';

/** The shopping list as CSV: one line a package kind, fees and tax as lines of their own. */
export const shoppingCsv: MakeDownload = ({ db, today }, query) => {
  const lists = shoppingView(db, query['season'] ?? '', wantedDays(db, query['season'] ?? '', today));
  const whole = 10 ** currencyPlaces(farmOfFile(db)?.currency ?? 'USD');
  const rows = lists.flatMap((list) => [
    ...list.rows.map((row) => [
      list.name,
      row.material,
      row.offer,
      row.packages,
      row.price_minor / whole,
      row.total_minor / whole,
      row.reason,
    ]),
    [list.name, '', 'Delivery', '', '', list.delivery_minor / whole, ''],
    [list.name, '', 'Tax', '', '', list.tax_minor / whole, ''],
  ]);
  const body = stringify([['supplier', 'material', 'package', 'packages', 'price', 'total', 'for'], ...rows], {
    bom: true,
    escape_formulas: true,
    record_delimiter: '\r\n',
  });
  return { name: 'shopping-list.csv', type: 'text/csv; charset=utf-8', body };
};

/** The shopping list as PDF, one page a supplier. */
export const shoppingPdf: MakeDownload = async ({ db, program, today, now }, query) => {
  const farm = farmOfFile(db);
  const currency = farm?.currency ?? 'USD';
  const system = farm?.unitSystem ?? 'metric';
  const lists = shoppingView(db, query['season'] ?? '', wantedDays(db, query['season'] ?? '', today));
  const { pdfOf } = await import('../report/pdf.ts');
  const money = (minor: number): string => printMoney(minor, currency);
  const content = lists.flatMap((list, at) => [
    { text: list.name, style: 'head', ...(at === 0 ? {} : { pageBreak: 'before' as const }) },
    {
      text: [farm?.name ?? '', list.contact, list.orderBy === null ? '' : `order by ${list.orderBy}`].filter(Boolean).join(' · '),
      style: 'soft',
    },
    {
      layout: 'lightHorizontalLines',
      table: {
        headerRows: 1,
        widths: ['auto', '*', '*', 'auto', 'auto'],
        body: [
          ['', 'Material', 'Package', 'Packages', 'Total'],
          ...list.rows.map((row) => [
            '☐',
            row.material,
            `${row.offer}\n${printQuantity(row.amount, row.baseUnit, system)} · ${row.reason}`,
            { text: String(row.packages), alignment: 'right' as const },
            { text: money(row.total_minor), alignment: 'right' as const },
          ]),
          ['', '', '', 'Delivery', { text: money(list.delivery_minor), alignment: 'right' as const }],
          ['', '', '', 'Tax', { text: money(list.tax_minor), alignment: 'right' as const }],
          ['', '', '', { text: 'Total', bold: true }, { text: money(list.total_minor), bold: true, alignment: 'right' as const }],
        ],
      },
    },
    ...cautionsOfList(
      program.places.resources,
      list.rows.flatMap((row) => row.cautions),
    ),
  ]);
  const body = await pdfOf({ title: 'Shopping list', made: now, content }, program.places.fonts);
  return { name: 'shopping-list.pdf', type: 'application/pdf', body, inline: true };
};

/** What handling the goods of a page calls for, below its table. */
function cautionsOfList(resources: string, ids: readonly string[]): readonly Content[] {
  const texts = cautionTexts(resources, ids);
  return texts.length === 0
    ? []
    : [
        { text: 'Mind when handling', bold: true, margin: [0, 10, 0, 2] },
        ...texts.map(
          (each): Content => ({
            text: [{ text: `${each.title}. `, bold: true }, each.text, { text: ` Source: ${each.source}`, color: '#555555' }],
            fontSize: 8,
            margin: [0, 0, 0, 3],
          }),
        ),
      ];
}
