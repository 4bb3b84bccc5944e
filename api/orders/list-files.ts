import { stringify } from 'csv-stringify/sync';
import type { Content } from 'pdfmake/interfaces.js';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { currencyPlaces } from '../../planner/units/print-money.ts';
import { tradeUnit } from '../../planner/units/trade-unit.ts';
import { Refusal } from '../errors.ts';
import type { MakeDownload } from '../http/downloads.ts';
import { type ReportReader, reportReader, settingsOf } from '../report/report-reader.ts';
import { cautionTexts } from '../words/caution-texts.ts';
import { shoppingView } from './shopping-view.ts';
import { saysUnpriced, type UnpricedMaterialNeed, unpricedOfSeason } from './unpriced-of-season.ts';
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
  const unpriced = unpricedOfSeason(db, query['season'] ?? '', today).map((each) => [
    '',
    each.material,
    'No price known',
    '',
    '',
    '',
    `${each.amount} ${each.baseUnit} wanted: add an offer`,
  ]);
  const body = stringify([['supplier', 'material', 'package', 'packages', 'price', 'total', 'for'], ...rows, ...unpriced], {
    bom: true,
    escape_formulas: true,
    record_delimiter: '\r\n',
  });
  return { name: 'shopping-list.csv', type: 'text/csv; charset=utf-8', body };
};

/** The shopping list as PDF, one page a supplier. */
export const shoppingPdf: MakeDownload = async ({ db, program, today, now }, query) => {
  const farm = farmOfFile(db);
  if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
  const reader = reportReader(settingsOf(farm), program.places.resources, query['language'] ?? 'en');
  const { date, money, print, say } = reader;
  const lists = shoppingView(db, query['season'] ?? '', wantedDays(db, query['season'] ?? '', today));
  const { pdfOf } = await import('../report/pdf.ts');
  const missing = unpricedOfSeason(db, query['season'] ?? '', today);
  const content = lists.flatMap((list, at) => [
    { text: list.name, style: 'head', ...(at === 0 ? {} : { pageBreak: 'before' as const }) },
    {
      text: [farm.name, list.contact, list.orderBy === null ? '' : say(`order by ${date(list.orderBy)}`)]
        .filter(Boolean)
        .join(' · '),
      style: 'soft',
    },
    {
      layout: 'lightHorizontalLines',
      table: {
        headerRows: 1,
        widths: ['auto', '*', '*', 'auto', 'auto'],
        body: [
          ['', ...['Material', 'Package', 'Packages', 'Total'].map(say)],
          ...list.rows.map((row) => [
            '☐',
            row.material,
            `${row.offer}\n${print(row.amount, tradeUnit(row.baseUnit))} · ${say(row.reason)}`,
            { text: String(row.packages), alignment: 'right' as const },
            { text: money(row.total_minor), alignment: 'right' as const },
          ]),
          ['', '', '', say('Delivery'), { text: money(list.delivery_minor), alignment: 'right' as const }],
          ['', '', '', say('Tax'), { text: money(list.tax_minor), alignment: 'right' as const }],
          [
            '',
            '',
            '',
            { text: say('Total'), bold: true },
            { text: money(list.total_minor), bold: true, alignment: 'right' as const },
          ],
        ],
      },
    },
    ...cautionsOfList(
      program.places.resources,
      list.rows.flatMap((row) => row.cautions),
      say,
    ),
  ]);
  const body = await pdfOf(
    { title: say('Shopping list'), made: now, content: [...content, ...unpricedPart(missing, reader)] },
    program.places.fonts,
  );
  return { name: 'shopping-list.pdf', type: 'application/pdf', body, inline: true };
};

/** What is needed and stands in no list, since no price of it is known. */
function unpricedPart(missing: readonly UnpricedMaterialNeed[], { print, say }: ReportReader): readonly Content[] {
  return missing.length === 0
    ? []
    : [
        { text: say(saysUnpriced(missing)), bold: true, margin: [0, 10, 0, 2] },
        { ul: missing.map((each) => `${each.material}: ${print(each.amount, tradeUnit(each.baseUnit))}`) },
      ];
}

/** What handling the goods of a page calls for, below its table. */
function cautionsOfList(resources: string, ids: readonly string[], say: (text: string) => string): readonly Content[] {
  const texts = cautionTexts(resources, ids);
  return texts.length === 0
    ? []
    : [
        { text: say('Mind when handling'), bold: true, margin: [0, 10, 0, 2] },
        ...texts.map(
          (each): Content => ({
            text: [
              { text: `${say(each.title)}. `, bold: true },
              each.text.map(say).join(' '),
              { text: ` ${say('Source')}: ${each.source}`, color: '#555555' },
            ],
            fontSize: 8,
            margin: [0, 0, 0, 3],
          }),
        ),
      ];
}
