import { zipOf } from './zip.ts';

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const SHEET_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
const UNUSABLE_IN_NAME = /[[\]:*?/\\]/g;
const LONGEST_NAME = 31;

/**
 * A workbook of one sheet by ECMA-376 (Office Open XML), with its strings inline. Cells are text or numbers, never
 * formulas.
 */
export function writeWorkbook(name: string, block: readonly (readonly (string | number)[])[]): Blob {
  const files = workbookFiles(name, block);
  return new Blob([zipOf(files) as Uint8Array<ArrayBuffer>], { type: `${SHEET_TYPE}.sheet` });
}

/** The parts of the package, by name. */
export function workbookFiles(name: string, block: readonly (readonly (string | number)[])[]): Readonly<Record<string, string>> {
  const title = escapeXml(name.replace(UNUSABLE_IN_NAME, ' ').slice(0, LONGEST_NAME) || 'Table');
  return {
    '[Content_Types].xml': `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${SHEET_TYPE}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${SHEET_TYPE}.worksheet+xml"/></Types>`,
    '_rels/.rels': `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="${title}" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': `${HEAD}<worksheet xmlns="${MAIN}"><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetData>${block.map(rowXml).join('')}</sheetData></worksheet>`,
  };
}

function rowXml(cells: readonly (string | number)[], at: number): string {
  return `<row r="${at + 1}">${cells.map((cell, along) => cellXml(cell, `${columnName(along)}${at + 1}`)).join('')}</row>`;
}

function cellXml(cell: string | number, place: string): string {
  if (typeof cell === 'number' && Number.isFinite(cell)) return `<c r="${place}"><v>${cell}</v></c>`;
  if (cell === '') return '';
  return `<c r="${place}" t="inlineStr"><is><t xml:space="preserve">${escapeXml(String(cell))}</t></is></c>`;
}

/** 0 is A, 25 is Z, 26 is AA. */
export function columnName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnName(Math.floor(index / 26) - 1) + letter;
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 forbids these characters
const forbidden = /[\u0000-\u0008\u000B\u000C\u000E-\u001F]/g;

const escapeXml = (text: string): string =>
  text.replace(forbidden, '').replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
