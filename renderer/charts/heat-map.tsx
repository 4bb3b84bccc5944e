import { useReader } from '../client/reader.tsx';
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

/** Rows by columns, darker for more: one hue, so that it also reads in grey. */
export function HeatMap({ title, rows, columns, value, unit, ways, height = 320 }: Props) {
  const reader = useReader();
  const print = (amount: number | null): string =>
    amount === null ? '–' : unit === 'minor' ? reader.money(amount) : reader.number(amount, unit);
  const values = rows.map((_, row) => columns.map((__, column) => value(row, column)));
  const known = values.flat().filter((each): each is number => each !== null);
  const [least, most] = [Math.min(...known, 0), Math.max(...known, 0)];
  const depth = (amount: number): number => (most === least ? 0 : (amount - least) / (most - least));
  const left = Math.max(MARGIN.least, Math.max(0, ...rows.map((name) => name.length)) * MARGIN.letter + MARGIN.gap);
  const every = Math.max(1, Math.ceil(columns.length / 14));
  const table = {
    head: [ways[0], ...columns],
    rows: values.map((cells, row) => [rows[row] ?? '', ...cells.map(print)]),
  };
  return (
    <ChartFrame
      title={title}
      table={table}
      height={Math.min(height, MARGIN.top + rows.length * CELL.height + SCROLLBAR)}
      note={say('{ways} down, {ways2} across; stronger is more, up to {most} {sign}.', {
        ways: ways[0],
        ways2: ways[1].toLowerCase(),
        most: print(most),
        sign: reader.sign(unit),
      })}
    >
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keys */}
      <section className="heat-scroll" aria-label={say('{title}, drawing', { title })} tabIndex={0}>
        <svg
          width={left + columns.length * CELL.width}
          height={MARGIN.top + rows.length * CELL.height}
          role="img"
          aria-label={say('{title}. The figures are in the table.', { title })}
        >
          {columns.map((name, column) =>
            column % every === 0 ? (
              <text key={name} x={left + column * CELL.width} y={12}>
                {name}
              </text>
            ) : null,
          )}
          {rows.map((name, row) => (
            <g key={name} transform={`translate(0 ${MARGIN.top + row * CELL.height})`}>
              <text x={left - 6} y={11} textAnchor="end">
                {name}
              </text>
              {(values[row] ?? []).map((amount, column) =>
                amount === null ? null : (
                  <rect
                    key={columns[column]}
                    x={left + column * CELL.width}
                    width={CELL.width - 1}
                    height={CELL.height - 1}
                    fill={`color-mix(in oklab, var(--accent) ${Math.round(8 + 92 * depth(amount))}%, var(--paper-raised))`}
                  >
                    <title>{`${name}, ${columns[column] ?? ''}: ${print(amount)} ${reader.sign(unit)}`}</title>
                  </rect>
                ),
              )}
            </g>
          ))}
        </svg>
      </section>
    </ChartFrame>
  );
}
