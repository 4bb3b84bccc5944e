/** A block of cells as a spreadsheet puts it on the clipboard: tabs between cells, quoted where a cell holds a break. */
export function writeTsv(block: readonly (readonly string[])[]): string {
  return block.map((row) => row.map(tsvCell).join('\t')).join('\r\n');
}

const tsvCell = (cell: string): string => (/["\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** Reads such a block. A last line break is not a row. */
export function readTsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at] ?? '';
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (sign === '"' && cell === '') quoted = true;
    else if (sign === '\t') {
      row.push(cell);
      cell = '';
    } else if (sign === '\n') {
      rows.push([...row, cell]);
      row = [];
      cell = '';
    } else if (sign !== '\r') cell += sign;
  }
  if (cell !== '' || row.length > 0) rows.push([...row, cell]);
  return rows;
}
