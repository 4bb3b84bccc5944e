import { type ReactNode, useId, useState } from 'react';
import type { PrintedPart } from '../../api/print/printed-document.ts';
import { Button } from '../app/button.tsx';
import { sheetOfDrawing } from '../print/drawn-sheet.tsx';
import type { Paper } from '../print/paper.ts';
import { PdfButton } from '../print/pdf-button.tsx';
import { type MakeParts, usePrintable } from '../print/printables.ts';
import { say } from '../words/say.ts';

export type ChartTable = { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };

/**
 * What every chart stands in: a figure with its name, and the same figures as a table, for those who don't see the
 * drawing or want the numbers.
 */
export function ChartFrame({
  title,
  table,
  height = 260,
  note,
  onPaper,
  children,
}: {
  readonly title: string;
  readonly table: ChartTable;
  readonly height?: number;
  readonly note?: ReactNode;
  /** Its sheets, where it is not simply drawn anew as wide as the paper. */
  readonly onPaper?: MakeParts;
  readonly children: ReactNode;
}) {
  const [asTable, setAsTable] = useState(false);
  const id = useId();
  const make = onPaper ?? ((paper: Paper) => chartOnPaper({ title, table, height, children }, paper));
  const printable = usePrintable(make);
  return (
    <figure className="chart" ref={printable} aria-labelledby={id}>
      <figcaption className="chart-head">
        <span id={id}>{title}</span>
        <span className="row no-print">
          <Button weight="quiet" aria-pressed={asTable} onClick={() => setAsTable(!asTable)}>
            {asTable ? say('As a chart') : say('As a table')}
          </Button>
          <PdfButton title={title} make={make} />
        </span>
      </figcaption>
      {asTable ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keys
        <section className="chart-table" style={{ maxHeight: height }} tabIndex={0} aria-label={say('{title}, table', { title })}>
          <table>
            <thead>
              <tr>
                {table.head.map((cell) => (
                  <th key={cell} scope="col">
                    {cell}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row) => (
                <tr key={row[0]}>
                  {row.map((cell, at) =>
                    at === 0 ? (
                      <th key={table.head[at]} scope="row">
                        {cell}
                      </th>
                    ) : (
                      <td key={table.head[at]}>{cell}</td>
                    ),
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ) : (
        <div className="chart-body" style={{ height }}>
          {children}
        </div>
      )}
      {note === undefined ? null : <p className="small soft">{note}</p>}
    </figure>
  );
}

/** A chart is drawn this high at least: paper has the room. */
const LEAST_HEIGHT_PX = 300;
/** A table of more columns than this is read on the screen, not on paper. */
const MOST_COLUMNS = 14;

/** The chart as wide as the sheet, and under it the figures that it is drawn from. */
async function chartOnPaper(
  chart: { readonly title: string; readonly table: ChartTable; readonly height: number; readonly children: ReactNode },
  paper: Paper,
): Promise<readonly PrintedPart[]> {
  const { title, table, height, children } = chart;
  const drawing = <div style={{ height: '100%' }}>{children}</div>;
  const sheet = await sheetOfDrawing(title, paper, drawing, { wide: 1, high: Math.max(LEAST_HEIGHT_PX, height) });
  return table.head.length > MOST_COLUMNS ? sheet : [...sheet, printedChartTable(table)];
}

const printedChartTable = (table: ChartTable): PrintedPart => ({
  kind: 'table',
  head: table.head.map((title, at) => ({ title, side: at === 0 ? 'left' : 'right' })),
  rows: table.rows.map((row) => [...row]),
  totals: null,
});
