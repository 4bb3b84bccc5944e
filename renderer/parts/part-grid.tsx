import { useState } from 'react';
import { type Column, choice, count, date, flag, money, quantity, share, text } from '../table/column.ts';
import { Grid } from '../table/grid.tsx';

type SampleRow = {
  readonly id: string;
  readonly code: string;
  readonly sun: string;
  readonly depth_m: number;
  readonly cost_minor: number;
  readonly plants: number;
  readonly used_share: number;
  readonly built: string;
  readonly covered: boolean;
};

const columns: readonly Column<SampleRow>[] = [
  text('code', 'Bed', { edit: true, width: 100 }),
  choice(
    'sun',
    'Sun',
    [
      { value: 'full', text: 'Full sun' },
      { value: 'shade', text: 'Shade' },
    ],
    { edit: true },
  ),
  quantity('depth_m', 'Depth', { edit: true }),
  money('cost_minor', 'Cost', { edit: true, total: 'sum' }),
  count('plants', 'Plants', { edit: true, total: 'sum' }),
  share('used_share', 'Used', { total: 'mean' }),
  date('built', 'Built'),
  flag('covered', 'Covered', { edit: true }),
];

const made = (rows: number): readonly SampleRow[] =>
  Array.from({ length: rows }, (_, at) => ({
    id: String(at),
    code: `B-${at + 1}`,
    sun: at % 3 === 0 ? 'shade' : 'full',
    depth_m: 0.2 + (at % 7) * 0.05,
    cost_minor: 1000 + ((at * 7919) % 90_000),
    plants: (at * 37) % 120,
    used_share: ((at * 13) % 100) / 100,
    built: `202${at % 6}-0${(at % 9) + 1}-1${at % 9}`,
    covered: at % 4 === 0,
  }));

const idOf = (row: SampleRow): string => row.id;

/** The grid over many made-up rows, to be sorted, edited and scrolled. */
export function PartGrid() {
  const [rows, setRows] = useState(() => made(5000));
  return (
    <div style={{ height: '20rem', display: 'flex' }}>
      <Grid
        name="Sample of 5,000 rows"
        rows={rows}
        columns={columns}
        rowId={idOf}
        onEdit={async (edits) =>
          setRows((before) => {
            const byId = Map.groupBy(edits, (edit) => edit.row.id);
            return before.map((row) =>
              (byId.get(row.id) ?? []).reduce((next, edit) => ({ ...next, [edit.key]: edit.value }), row),
            );
          })
        }
      />
    </div>
  );
}
