import { type Column, choice, count, date, flag, money, quantity, share, text } from '../table/column.ts';

export type SampleRow = {
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

/** A column of each kind. */
export const sampleColumns: readonly Column<SampleRow>[] = [
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

/** Made-up rows, the same each time. */
export const made = (rows: number): readonly SampleRow[] =>
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

export const sampleId = (row: SampleRow): string => row.id;
