/** CSV by RFC 4180 with a byte-order mark. Text that a spreadsheet would take for a formula gets an apostrophe first. */
export function writeCsv(block: readonly (readonly (string | number)[])[]): string {
  return `\uFEFF${block.map((row) => row.map(csvCell).join(',')).join('\r\n')}\r\n`;
}

function csvCell(cell: string | number): string {
  if (typeof cell === 'number') return String(cell);
  const guarded = /^[=+\-@\t\r＝＋－＠]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
