import { qrData } from './qr-data.ts';

/** True is dark. Row by row from the top. */
export type QrMatrix = readonly (readonly boolean[])[];

type Cell = { dark: boolean; fixed: boolean };

/** The conditions of the eight masks (ISO/IEC 18004, table 10): where true, a data module is turned over. */
const masks: readonly ((row: number, column: number) => boolean)[] = [
  (row, column) => (row + column) % 2 === 0,
  (row) => row % 2 === 0,
  (_, column) => column % 3 === 0,
  (row, column) => (row + column) % 3 === 0,
  (row, column) => (Math.floor(row / 2) + Math.floor(column / 3)) % 2 === 0,
  (row, column) => ((row * column) % 2) + ((row * column) % 3) === 0,
  (row, column) => (((row * column) % 2) + ((row * column) % 3)) % 2 === 0,
  (row, column) => (((row + column) % 2) + ((row * column) % 3)) % 2 === 0,
];

/** The QR code of a text, with the mask of least penalty. */
export function qrMatrix(text: string): QrMatrix {
  const { version, words } = qrData(text);
  const made = masks.map((_, mask) => draw(version, words, mask));
  return made.reduce((best, each) => (penalty(each) < penalty(best) ? each : best));
}

/** The QR code with a mask that is given. */
export function qrMatrixWith(text: string, mask: number): QrMatrix {
  const { version, words } = qrData(text);
  return draw(version, words, mask);
}

function draw(version: number, words: readonly number[], mask: number): QrMatrix {
  const size = 17 + 4 * version;
  const cells: Cell[][] = Array.from({ length: size }, () => Array.from({ length: size }, () => ({ dark: false, fixed: false })));
  const set = (row: number, column: number, dark: boolean): void => {
    const cell = cells[row]?.[column];
    if (cell !== undefined) {
      cell.dark = dark;
      cell.fixed = true;
    }
  };
  for (let at = 0; at < size; at += 1) {
    set(6, at, at % 2 === 0);
    set(at, 6, at % 2 === 0);
  }
  for (const [row, column] of [
    [3, 3],
    [3, size - 4],
    [size - 4, 3],
  ] as const)
    square(set, row, column, 4, [2, 4]);
  if (version > 1) square(set, size - 7, size - 7, 2, [1]);
  setFormat(set, size, mask);
  placeData(cells, words, mask);
  return cells.map((row) => row.map((cell) => cell.dark));
}

/** Nested squares about a centre; the rings named are light. */
function square(
  set: (row: number, column: number, dark: boolean) => void,
  row: number,
  column: number,
  reach: number,
  light: readonly number[],
): void {
  for (let down = -reach; down <= reach; down += 1)
    for (let along = -reach; along <= reach; along += 1)
      set(row + down, column + along, !light.includes(Math.max(Math.abs(down), Math.abs(along))));
}

/** Level M and the mask as 15 bits with BCH check bits (generator 10100110111, mask 101010000010010), twice. */
function setFormat(set: (row: number, column: number, dark: boolean) => void, size: number, mask: number): void {
  const LEVEL_M = 0b00;
  const data = (LEVEL_M << 3) | mask;
  let rest = data << 10;
  for (let bit = 14; bit >= 10; bit -= 1) if ((rest >> bit) & 1) rest ^= 0b10100110111 << (bit - 10);
  const bits = ((data << 10) | rest) ^ 0b101010000010010;
  for (let bit = 0; bit < 15; bit += 1) {
    const dark = ((bits >> bit) & 1) === 1;
    const beside = bit < 6 ? bit : bit < 8 ? bit + 1 : size - 15 + bit;
    set(beside, 8, dark);
    const above = bit < 8 ? size - 1 - bit : bit === 8 ? 7 : 14 - bit;
    set(8, above, dark);
  }
  set(size - 8, 8, true);
}

/** Data goes up and down in pairs of columns from the right, past what is fixed. */
function placeData(cells: readonly Cell[][], words: readonly number[], mask: number): void {
  const size = cells.length;
  const turned = masks[mask] ?? (() => false);
  let bit = 0;
  for (let right = size - 1, up = true; right > 0; right -= 2, up = !up) {
    if (right === 6) right = 5;
    for (let step = 0; step < size; step += 1) {
      const row = up ? size - 1 - step : step;
      for (const column of [right, right - 1]) {
        const cell = cells[row]?.[column];
        if (cell === undefined || cell.fixed) continue;
        const dark = (((words[bit >> 3] ?? 0) >> (7 - (bit & 7))) & 1) === 1;
        cell.dark = dark !== turned(row, column);
        bit += 1;
      }
    }
  }
}

const FINDER_LIKE = /(?=10111010000|00001011101)/g;

/** How hard a code would be to read (ISO/IEC 18004, 7.8.3.1): long runs, blocks, finder-like rows, uneven darkness. */
function penalty(matrix: QrMatrix): number {
  const rows = matrix.map((row) => row.map((dark) => (dark ? '1' : '0')).join(''));
  const columns = matrix.map((_, column) => matrix.map((row) => (row[column] === true ? '1' : '0')).join(''));
  let sum = 0;
  for (const line of [...rows, ...columns]) {
    for (const run of line.match(/1{5,}|0{5,}/g) ?? []) sum += run.length - 2;
    sum += 40 * [...line.matchAll(FINDER_LIKE)].length;
  }
  for (let row = 0; row < matrix.length - 1; row += 1)
    for (let column = 0; column < matrix.length - 1; column += 1) {
      const four = [matrix[row]?.[column], matrix[row]?.[column + 1], matrix[row + 1]?.[column], matrix[row + 1]?.[column + 1]];
      if (four.every((dark) => dark === four[0])) sum += 3;
    }
  const dark = rows.join('').replaceAll('0', '').length / matrix.length ** 2;
  return sum + 10 * Math.floor(Math.abs(100 * dark - 50) / 5);
}
