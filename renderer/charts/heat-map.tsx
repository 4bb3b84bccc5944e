import type { PrintedPart } from '../../api/print/printed-document.ts';
import { useReader } from '../client/reader.tsx';
import { type Paper, roomOn } from '../print/paper.ts';
import { drawnOnPaper } from '../print/stage.ts';
import { say } from '../words/say.ts';
import { ChartFrame } from './chart-frame.tsx';

type Props = {
  readonly title: string;
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly value: (row: number, column: number) => number | null;
  readonly unit: string;
  /** Names of the two ways: "Bed", "Week". */
  readonly ways: readonly [string, string];
  readonly height?: number;
};

const CELL = { width: 16, height: 15 };
const MARGIN = { least: 84, letter: 5.6, gap: 12, top: 20 };
const SCROLLBAR = 18;
/** The line under a map on paper. */
const NOTE_PX = 40;

/** Rows by columns, darker for more: one hue, so that it also reads in grey. */
export function HeatMap({ title, rows, columns, value, unit, ways, height = 320 }: Props) {
  const reader = useReader();
  const print = (amount: number | null): string =>
    amount === null ? '–' : unit === 'minor' ? reader.money(amount) : reader.number(amount, unit);
  const values = rows.map((_, row) => columns.map((__, column) => value(row, column)));
  const known = values.flat().filter((each): each is number => each !== null);
  const [least, most] = [Math.min(...known, 0), Math.max(...known, 0)];
  const depth = (amount: number): number => (most === least ? 0 : (amount - least) / (most - least));
  const drawn: Drawn = {
    rows,
    columns,
    cell: (row, column) => {
      const amount = values[row]?.[column] ?? null;
      return amount === null
        ? null
        : { depth: depth(amount), said: `${rows[row] ?? ''}, ${columns[column] ?? ''}: ${print(amount)} ${reader.sign(unit)}` };
    },
    from: { row: 0, column: 0 },
    to: { row: rows.length, column: columns.length },
  };
  const note = say('{ways} down, {ways2} across; stronger is more, up to {most} {sign}.', {
    ways: ways[0],
    ways2: ways[1].toLowerCase(),
    most: print(most),
    sign: reader.sign(unit),
  });
  const table = {
    head: [ways[0], ...columns],
    rows: values.map((cells, row) => [rows[row] ?? '', ...cells.map(print)]),
  };
  return (
    <ChartFrame
      title={title}
      table={table}
      height={Math.min(height, MARGIN.top + rows.length * CELL.height + SCROLLBAR)}
      note={note}
      onPaper={(paper) => heatOnPaper(title, drawn, note, paper)}
    >
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keys */}
      <section className="heat-scroll" aria-label={say('{title}, drawing', { title })} tabIndex={0}>
        <HeatDrawing {...drawn} label={say('{title}. The figures are in the table.', { title })} />
      </section>
    </ChartFrame>
  );
}

type Drawn = {
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly cell: (row: number, column: number) => { readonly depth: number; readonly said: string } | null;
  /** The part of the map that is drawn; `to` is the first that is not. */
  readonly from: { readonly row: number; readonly column: number };
  readonly to: { readonly row: number; readonly column: number };
};

const leftOf = (rows: readonly string[]): number =>
  Math.max(MARGIN.least, Math.max(0, ...rows.map((name) => name.length)) * MARGIN.letter + MARGIN.gap);

function HeatDrawing({ rows, columns, cell, from, to, label }: Drawn & { readonly label: string }) {
  const left = leftOf(rows);
  const every = Math.max(1, Math.ceil((to.column - from.column) / 14));
  const shownColumns = columns.slice(from.column, to.column);
  return (
    <svg
      width={left + shownColumns.length * CELL.width + MARGIN.gap}
      height={MARGIN.top + (to.row - from.row) * CELL.height}
      role="img"
      aria-label={label}
    >
      {shownColumns.map((name, column) =>
        column % every === 0 ? (
          <text key={name} x={left + column * CELL.width} y={12}>
            {name}
          </text>
        ) : null,
      )}
      {rows.slice(from.row, to.row).map((name, row) => (
        <g key={name} transform={`translate(0 ${MARGIN.top + row * CELL.height})`}>
          <text x={left - 6} y={11} textAnchor="end">
            {name}
          </text>
          {shownColumns.map((columnName, column) => {
            const shown = cell(from.row + row, from.column + column);
            return shown === null ? null : (
              <rect
                key={columnName}
                className="heat-cell"
                x={left + column * CELL.width}
                width={CELL.width - 1}
                height={CELL.height - 1}
                fill={`color-mix(in oklab, var(--accent) ${Math.round(8 + 92 * shown.depth)}%, var(--paper-raised))`}
              >
                <title>{shown.said}</title>
              </rect>
            );
          })}
        </g>
      ))}
    </svg>
  );
}

/** The map on as many sheets as it needs, each with the names of its rows and columns. */
async function heatOnPaper(title: string, drawn: Drawn, note: string, paper: Paper): Promise<readonly PrintedPart[]> {
  const { rows, columns } = drawn;
  const left = leftOf(rows) + MARGIN.gap;
  const across = left + columns.length * CELL.width > roomOn(paper, false).width;
  const room = roomOn(paper, across);
  const perSheet = {
    row: Math.floor((room.height - MARGIN.top - NOTE_PX) / CELL.height),
    column: Math.floor((room.width - left) / CELL.width),
  };
  const parts: PrintedPart[] = [];
  for (let row = 0; row < rows.length; row += perSheet.row)
    for (let column = 0; column < columns.length; column += perSheet.column) {
      const to = { row: Math.min(rows.length, row + perSheet.row), column: Math.min(columns.length, column + perSheet.column) };
      const height = MARGIN.top + (to.row - row) * CELL.height;
      const part = (
        <div className="heat-scroll">
          <HeatDrawing {...drawn} from={{ row, column }} to={to} label={title} />
        </div>
      );
      parts.push({ kind: 'heading', level: 1, text: title });
      parts.push(await drawnOnPaper(part, { width: room.width, height }, across), { kind: 'text', text: note });
    }
  return parts;
}
