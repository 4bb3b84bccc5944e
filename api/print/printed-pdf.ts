import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { seasonOfId } from '../../db/repositories/seasons.ts';
import { Refusal } from '../errors.ts';
import type { Download } from '../http/downloads.ts';
import type { Ctx } from '../procedure.ts';
import { type PrintedPart, type PrintedTable, printedDocument } from './printed-document.ts';
import { svgOf } from './svg-of.ts';
import { isWide, tableSize } from './table-widths.ts';

const PAPER_PT = { a4: { width: 595.28, height: 841.89 }, letter: { width: 612, height: 792 } } as const;
const MARGIN_PT = { side: 36, top: 54, foot: 44 } as const;
const PT_PER_PX = 72 / 96;

/** Makes the PDF of what a page handed over: farm, season, date and page numbers on every page, sheets of labels without them. */
export async function printedPdf(ctx: Ctx, given: unknown): Promise<Download> {
  const document = printedDocument.parse(given);
  const farm = farmOfFile(ctx.db);
  if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
  const season = document.seasonId === null ? undefined : seasonOfId(ctx.db, document.seasonId);
  const paper = PAPER_PT[document.paper];
  const room_pt = paper.width - 2 * MARGIN_PT.side;
  const isSheets = document.parts.every(({ kind }) => kind === 'sheet');
  const across = !isSheets && document.parts.some((part) => part.kind === 'table' && isWide(part, room_pt));
  const [width_pt, height_pt] = across ? [paper.height, paper.width] : [paper.width, paper.height];
  const day = new Intl.DateTimeFormat(farm.language, { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${ctx.today}T00:00:00Z`),
  );
  const { pdfOf } = await import('../report/pdf.ts');
  const body = await pdfOf(
    {
      title: document.title,
      made: ctx.now,
      content: document.parts.flatMap((part, at) => contentOf(part, at, width_pt - 2 * MARGIN_PT.side)),
      page: {
        width_pt,
        height_pt,
        margins_pt: isSheets ? [0, 0, 0, 0] : [MARGIN_PT.side, MARGIN_PT.top, MARGIN_PT.side, MARGIN_PT.foot],
      },
      ...(isSheets
        ? { bare: true }
        : { head: { left: season === undefined ? farm.name : `${farm.name} · ${season.name}`, right: day } }),
    },
    ctx.program.places.fonts,
  );
  return { name: `${document.title}.pdf`, type: 'application/pdf', body };
}

function contentOf(part: PrintedPart, at: number, room_pt: number): readonly Content[] {
  switch (part.kind) {
    case 'table':
      return [tableOf(part, room_pt)];
    case 'sheet':
      return [
        {
          svg: svgOf(part),
          width: part.width_px * PT_PER_PX,
          height: part.height_px * PT_PER_PX,
          // a sheet at its own place fills no room: each further sheet asks for its page itself
          absolutePosition: { x: 0, y: 0 },
          ...(at === 0 ? {} : { pageBreak: 'before' as const }),
        },
      ];
  }
}

function tableOf(table: PrintedTable, room_pt: number): Content {
  const { font_pt, widths_pt } = tableSize(table, room_pt);
  const rowOf = (cells: readonly string[], bold: boolean): TableCell[] =>
    table.head.map(({ side }, at) => ({ text: cells[at] ?? '', alignment: side, ...(bold ? { bold } : {}) }));
  return {
    fontSize: font_pt,
    margin: [0, 2, 0, 8],
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths: [...widths_pt],
      body: [
        rowOf(
          table.head.map(({ title }) => title),
          true,
        ),
        ...table.rows.map((cells) => rowOf(cells, false)),
        ...(table.totals === null ? [] : [rowOf(table.totals, true)]),
      ],
    },
    layout: {
      hLineWidth: (line: number) =>
        line === 0 ? 0 : line === 1 || (table.totals !== null && line === table.rows.length + 1) ? 0.8 : 0.25,
      vLineWidth: () => 0,
      hLineColor: () => '#777777',
      paddingLeft: () => 4,
      paddingRight: () => 4,
      paddingTop: () => 1.5,
      paddingBottom: () => 1.5,
    },
  };
}
