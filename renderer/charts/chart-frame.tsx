import { type ReactNode, useId, useState } from 'react';
import { Button } from '../app/button.tsx';
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
  children,
}: {
  readonly title: string;
  readonly table: ChartTable;
  readonly height?: number;
  readonly note?: ReactNode;
  readonly children: ReactNode;
}) {
  const [asTable, setAsTable] = useState(false);
  const id = useId();
  return (
    <figure className="chart" aria-labelledby={id}>
      <figcaption className="chart-head">
        <span id={id}>{title}</span>
        <Button weight="quiet" aria-pressed={asTable} onClick={() => setAsTable(!asTable)}>
          {asTable ? say('As a chart') : say('As a table')}
        </Button>
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
