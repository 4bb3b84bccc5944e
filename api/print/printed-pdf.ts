import type { Content, ContentText, TableCell } from 'pdfmake/interfaces.js';
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
const HEADING_PT = [14, 11.5, 10] as const;
const MOST_CELLS_HELD = 3000;
const SEVERITY_INKS = { stop: '#a1261b', guard: '#7a4d00', note: '#3f4a54' } as const;

/** Makes the PDF of what a page handed over: farm, season, date and page numbers on every page, sheets of labels without them. */
export async function printedPdf(ctx: Ctx, given: unknown): Promise<Download> {
  const document = printedDocument.parse(given);
  const farm = farmOfFile(ctx.db);
  if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
  const season = document.seasonId === null ? undefined : seasonOfId(ctx.db, document.seasonId);
  const paper = PAPER_PT[document.paper];
  const room_pt = paper.width - 2 * MARGIN_PT.side;
  const isSheets = document.parts.every(({ kind }) => kind === 'sheet');
  const lies = isSheets ? document.parts.map(() => false) : liesAcross(document.parts, room_pt);
  const day = new Intl.DateTimeFormat(farm.language, { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${ctx.today}T00:00:00Z`),
  );
  const { pdfOf } = await import('../report/pdf.ts');
  const body = await pdfOf(
    {
      title: document.title,
      made: ctx.now,
      keepsHeadings: cellsOf(document.parts) <= MOST_CELLS_HELD,
      content: together(document.parts.map((part, at) => contentOf(part, at, lies, paper))),
      page: {
        width_pt: paper.width,
        height_pt: paper.height,
        across: lies[0] === true,
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

const cellsOf = (parts: readonly PrintedPart[]): number =>
  parts.reduce((sum, part) => sum + (part.kind === 'table' ? part.rows.length * part.head.length : 1), 0);

type Paper = { readonly width: number; readonly height: number };

/** Which parts lie on pages turned on their side: what asks for it, and the headings that stand over it. */
function liesAcross(parts: readonly PrintedPart[], room_pt: number): readonly boolean[] {
  const asked = parts.map((part): boolean | undefined => {
    if (part.kind === 'table') return isWide(part, room_pt);
    if (part.kind === 'drawing') return part.across;
    return undefined;
  });
  let now = false;
  return asked.map((asks, at) => {
    const next = parts[at]?.kind === 'heading' ? asked.slice(at).find((each) => each !== undefined) : asks;
    now = next ?? now;
    return now;
  });
}

type Placed = { readonly kind: PrintedPart['kind']; readonly content: Content & object };

/** A heading and the drawing under it stay on one page. */
function together(placed: readonly Placed[]): readonly Content[] {
  const contents: Content[] = [];
  for (let at = 0; at < placed.length; at += 1) {
    const [now, next] = [placed[at], placed[at + 1]];
    if (now === undefined) continue;
    if (now.kind === 'heading' && next?.kind === 'drawing') {
      const { pageBreak, pageOrientation, ...heading } = now.content as ContentText;
      const breaks = {
        ...(pageBreak === undefined ? {} : { pageBreak }),
        ...(pageOrientation === undefined ? {} : { pageOrientation }),
      };
      contents.push({ unbreakable: true, stack: [heading, next.content], ...breaks });
      at += 1;
    } else contents.push(now.content);
  }
  return contents;
}

function contentOf(part: PrintedPart, at: number, lies: readonly boolean[], paper: Paper): Placed {
  const [width_pt, height_pt] = lies[at] === true ? [paper.height, paper.width] : [paper.width, paper.height];
  const room = { width_pt: width_pt - 2 * MARGIN_PT.side, height_pt: height_pt - MARGIN_PT.top - MARGIN_PT.foot };
  const turns =
    at > 0 && lies[at] !== lies[at - 1]
      ? { pageBreak: 'before' as const, pageOrientation: lies[at] === true ? ('landscape' as const) : ('portrait' as const) }
      : {};
  return { kind: part.kind, content: contentAlone(part, at, room, turns) };
}

type Turn = { readonly pageBreak?: 'before'; readonly pageOrientation?: 'landscape' | 'portrait' };

function contentAlone(
  part: PrintedPart,
  at: number,
  room: { readonly width_pt: number; readonly height_pt: number },
  turns: Turn,
): Content & object {
  switch (part.kind) {
    case 'table':
      return { ...tableOf(part, room.width_pt), ...turns };
    case 'drawing': {
      const scale = Math.min(PT_PER_PX, room.width_pt / part.width_px, room.height_pt / part.height_px);
      return { svg: svgOf(part), width: part.width_px * scale, height: part.height_px * scale, ...turns };
    }
    case 'heading':
      return {
        text: part.text,
        fontSize: HEADING_PT[part.level - 1] ?? 10,
        bold: true,
        headlineLevel: part.level,
        margin: [0, at === 0 ? 0 : 8, 0, 4],
        ...turns,
      };
    case 'text':
      return { text: part.text, margin: [0, 0, 0, 4], ...turns };
    case 'caution':
      return { ...cautionOf(part), ...turns };
    case 'sheet':
      return {
        svg: svgOf(part),
        width: part.width_px * PT_PER_PX,
        height: part.height_px * PT_PER_PX,
        // a sheet at its own place fills no room: each further sheet asks for its page itself
        absolutePosition: { x: 0, y: 0 },
        ...(at === 0 ? {} : { pageBreak: 'before' as const }),
      };
  }
}

function cautionOf({ severity, title, texts }: Extract<PrintedPart, { readonly kind: 'caution' }>) {
  const ink = SEVERITY_INKS[severity];
  return {
    unbreakable: true,
    margin: [0, 3, 0, 5] as [number, number, number, number],
    table: {
      widths: ['*'],
      body: [
        [
          {
            stack: [{ text: title, bold: true, color: ink }, ...texts],
            fontSize: 8,
            border: [true, false, false, false] as [boolean, boolean, boolean, boolean],
          },
        ],
      ],
    },
    layout: { vLineColor: () => ink, vLineWidth: () => 2, paddingLeft: () => 6 },
  };
}

function tableOf(table: PrintedTable, room_pt: number) {
  const { font_pt, widths_pt } = tableSize(table, room_pt);
  const headRows = table.head.some(({ title }) => title !== '') ? 1 : 0;
  const rowOf = (cells: readonly string[], bold: boolean): TableCell[] =>
    table.head.map(({ side }, at) => ({ text: cells[at] ?? '', alignment: side, ...(bold ? { bold } : {}) }));
  return {
    fontSize: font_pt,
    margin: [0, 2, 0, 8] as [number, number, number, number],
    table: {
      headerRows: headRows,
      dontBreakRows: true,
      widths: [...widths_pt],
      body: [
        ...table.head.slice(0, headRows).map(() =>
          rowOf(
            table.head.map(({ title }) => title),
            true,
          ),
        ),
        ...table.rows.map((cells) => rowOf(cells, false)),
        ...(table.totals === null ? [] : [rowOf(table.totals, true)]),
      ],
    },
    layout: {
      hLineWidth: (line: number) =>
        line === 0 && headRows === 1
          ? 0
          : line === headRows || (table.totals !== null && line === table.rows.length + headRows)
            ? 0.8
            : 0.25,
      vLineWidth: () => 0,
      hLineColor: () => '#777777',
      paddingLeft: () => 4,
      paddingRight: () => 4,
      paddingTop: () => 1.5,
      paddingBottom: () => 1.5,
    },
  };
}
