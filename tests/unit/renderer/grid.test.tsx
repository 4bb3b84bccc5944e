import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import '../../../renderer/look/tokens.css';
import '../../../renderer/look/base.css';
import '../../../renderer/look/parts.css';
import '../../../renderer/table/grid.css';
import { ReaderProvider } from '../../../renderer/client/reader.tsx';
import { type Column, choice, count, date, flag, money, quantity, text } from '../../../renderer/table/column.ts';
import { Grid } from '../../../renderer/table/grid.tsx';
import type { Edit } from '../../../renderer/table/paste-block.ts';

type BedRow = {
  readonly id: string;
  readonly code: string;
  readonly depth_m: number | null;
  readonly cost_minor: number;
  readonly plants: number;
  readonly built: string;
  readonly sun: string;
  readonly covered: boolean;
};

const columns: readonly Column<BedRow>[] = [
  text('code', 'Bed', { width: 110, edit: true }),
  quantity('depth_m', 'Depth', { edit: true, mayBeEmpty: true }),
  money('cost_minor', 'Cost', { total: 'sum', edit: true }),
  count('plants', 'Plants', { total: 'sum', edit: (row) => row.code !== 'B-2' }),
  date('built', 'Built'),
  choice(
    'sun',
    'Sun',
    [
      { value: 'full', text: 'Full sun' },
      { value: 'shade', text: 'Shade' },
    ],
    { edit: true },
  ),
  flag('covered', 'Covered', { edit: true }),
];

const bed = (at: number): BedRow => ({
  id: `bed-${at}`,
  code: `B-${at}`,
  depth_m: at === 3 ? null : at / 10,
  cost_minor: at * 100,
  plants: at,
  built: `2024-03-${String((at % 28) + 1).padStart(2, '0')}`,
  sun: at % 2 === 0 ? 'full' : 'shade',
  covered: false,
});

const beds = (howMany: number): readonly BedRow[] => Array.from({ length: howMany }, (_, at) => bed(at + 1));
const idOf = (row: BedRow): string => row.id;

let sent: (readonly Edit<BedRow>[])[] = [];
let opened: string[] = [];

/** The grid over rows that take the edits in, as a page would after its change. */
function Kept({ first }: { readonly first: readonly BedRow[] }) {
  const [rows, setRows] = useState(first);
  return (
    <ReaderProvider settings={{ system: 'metric', currency: 'USD', locale: 'en-US' }}>
      <div style={{ display: 'flex', flexDirection: 'column', height: 600 }}>
        <Grid
          name="Beds of the test"
          rows={rows}
          columns={columns}
          rowId={idOf}
          onOpen={(row) => opened.push(row.code)}
          onEdit={async (edits) => {
            sent.push(edits);
            setRows((before) =>
              before.map((row) => ({
                ...row,
                ...Object.fromEntries(edits.filter((edit) => edit.row.id === row.id).map((edit) => [edit.key, edit.value])),
              })),
            );
          }}
        />
      </div>
    </ReaderProvider>
  );
}

beforeEach(() => {
  window.localStorage.clear();
  sent = [];
  opened = [];
});
afterEach(cleanup);

const codes = (): string[] =>
  screen
    .getAllByRole('row')
    .filter((row) => row.getAttribute('data-row') !== null && row.getAttribute('data-row') !== '-1')
    .map((row) => row.querySelector('[data-column="0"]')?.textContent ?? '');

const cell = (row: number, column: number): HTMLElement => {
  const found = document.querySelector<HTMLElement>(`[data-row="${row}"] [data-column="${column}"]`);
  if (found === null) throw new Error(`There is no cell ${row}, ${column}.`);
  return found;
};

test('a grid in a page that grows with what is in it draws only the rows in view', () => {
  render(
    <ReaderProvider settings={{ system: 'metric', currency: 'USD', locale: 'en-US' }}>
      <div className="stack">
        <Grid name="Beds of the test" rows={beds(1000)} columns={columns} rowId={idOf} />
      </div>
    </ReaderProvider>,
  );
  expect(codes().length).toBeGreaterThan(5);
  expect(codes().length).toBeLessThan(120);
});

test('sorting by a head goes up, down and off, with bed 2 before bed 10 and empty cells last', async () => {
  render(<Kept first={[bed(10), bed(2), bed(3), bed(1)]} />);
  await userEvent.click(screen.getByRole('button', { name: /^Bed/ }));
  expect(codes()).toEqual(['B-1', 'B-2', 'B-3', 'B-10']);
  expect(screen.getByRole('columnheader', { name: /^Bed/ }).getAttribute('aria-sort')).toBe('ascending');
  await userEvent.click(screen.getByRole('button', { name: /^Bed/ }));
  expect(codes()).toEqual(['B-10', 'B-3', 'B-2', 'B-1']);
  await userEvent.click(screen.getByRole('button', { name: /^Bed/ }));
  expect(codes()).toEqual(['B-10', 'B-2', 'B-3', 'B-1']);
  await userEvent.click(screen.getByRole('button', { name: /^Depth/ }));
  expect(codes()).toEqual(['B-1', 'B-2', 'B-10', 'B-3']);
});

test('filtering by typing counts what is shown', async () => {
  render(<Kept first={beds(20)} />);
  await userEvent.type(screen.getByRole('searchbox'), 'shade b-1');
  expect(codes()).toEqual(['B-1', 'B-11', 'B-13', 'B-15', 'B-17', 'B-19']);
  expect(screen.getByText('6 of 20 rows')).toBeTruthy();
});

test('keys alone reach every cell, and only one cell is in the tab order', async () => {
  render(<Kept first={beds(50)} />);
  cell(0, 0).focus();
  await userEvent.keyboard('{ArrowDown}{ArrowDown}{ArrowRight}');
  await expect.poll(() => document.activeElement).toBe(cell(2, 1));
  expect(document.querySelectorAll('tbody [tabindex="0"], thead [tabindex="0"]').length).toBe(1);
  await userEvent.keyboard('{Control>}{End}{/Control}');
  await expect.poll(() => document.activeElement?.closest('[data-row]')?.getAttribute('data-row')).toBe('49');
  await userEvent.keyboard('{Control>}{Home}{/Control}{ArrowUp}');
  await expect.poll(() => document.activeElement?.textContent).toContain('Bed');
});

test('a cell is edited in the reader’s units or any other, and goes on to the next row', async () => {
  render(<Kept first={beds(4)} />);
  await userEvent.dblClick(cell(0, 1));
  const editor = within(cell(0, 1)).getByRole('textbox');
  await userEvent.clear(editor);
  await userEvent.type(editor, '1 ft 6 in{Enter}');
  expect(sent.flat().map(({ key, value }) => [key, Number(value).toFixed(4)])).toEqual([['depth_m', '0.4572']]);
  await expect.poll(() => document.activeElement).toBe(cell(1, 1));
});

test('a cell that cannot be read keeps its text and says why; Escape leaves it as it was', async () => {
  render(<Kept first={beds(2)} />);
  await userEvent.dblClick(cell(0, 2));
  const editor = within(cell(0, 2)).getByRole('textbox');
  await userEvent.clear(editor);
  await userEvent.type(editor, 'cheap{Enter}');
  expect(within(cell(0, 2)).getByRole('alert').textContent).toContain('"cheap" is not an amount of money');
  expect(sent).toEqual([]);
  await userEvent.keyboard('{Escape}');
  expect(cell(0, 2).textContent).toBe('1.00');
});

test('opening and leaving an editor changes nothing', async () => {
  render(<Kept first={beds(2)} />);
  await userEvent.dblClick(cell(0, 1));
  await userEvent.keyboard('{Enter}');
  expect(sent).toEqual([]);
});

const pasteInto = (target: HTMLElement, block: string): void => {
  const data = new DataTransfer();
  data.setData('text/plain', block);
  target.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
};

test('a pasted block becomes one change over rows and columns', async () => {
  render(<Kept first={beds(3)} />);
  await userEvent.click(cell(0, 1));
  pasteInto(cell(0, 1), '40 cm\t$2.50\r\n0.5\t3\r\n');
  await expect.poll(() => sent.length).toBe(1);
  expect(sent[0]?.map(({ row, key, value }) => [row.code, key, value])).toEqual([
    ['B-1', 'depth_m', 0.4],
    ['B-1', 'cost_minor', 250],
    ['B-2', 'depth_m', expect.any(Number)],
    ['B-2', 'cost_minor', 300],
  ]);
});

test('a block with one fault is refused whole, and each fault names its row and column', async () => {
  render(<Kept first={beds(3)} />);
  await userEvent.click(cell(0, 2));
  pasteInto(cell(0, 2), '4\t1\n5\t2\n6\tmany\n7\t1');
  const alert = await screen.findByRole('alert');
  expect(alert.textContent).toContain('1 of them would lie below the last row');
  expect(alert.textContent).toContain("Row 2: Plants can't be edited here");
  expect(alert.textContent).toContain('Row 3, Plants: "many" is not a whole number');
  expect(sent).toEqual([]);
});

test('selected rows are totalled, edited together and filled down', async () => {
  render(<Kept first={beds(6)} />);
  const foot = () => document.querySelector('tfoot')?.textContent ?? '';
  expect(foot()).toContain('21');
  cell(0, 3).focus();
  await userEvent.keyboard('{Shift>}{ArrowDown}{ArrowDown}{/Shift}');
  await expect.poll(foot).toContain('6.00');
  await userEvent.keyboard('{Control>}d{/Control}');
  await expect.poll(() => sent.length).toBe(1);
  expect(sent[0]?.map(({ row, value }) => [row.code, value])).toEqual([['B-3', 1]]);
  expect(sent[0]?.every(({ key }) => key === 'plants')).toBe(true);
});

test('columns are chosen and remembered', async () => {
  const first = render(<Kept first={beds(2)} />);
  await userEvent.click(screen.getByRole('button', { name: 'Choose columns' }));
  await userEvent.click(screen.getByRole('checkbox', { name: 'Plants' }));
  await userEvent.click(screen.getByRole('button', { name: 'Done' }));
  expect(screen.queryByRole('columnheader', { name: /^Plants/ })).toBeNull();
  first.unmount();
  render(<Kept first={beds(2)} />);
  expect(screen.queryByRole('columnheader', { name: /^Plants/ })).toBeNull();
});

test('of 5,000 rows only those in view are made', () => {
  render(<Kept first={beds(5000)} />);
  expect(screen.getByRole('grid').getAttribute('aria-rowcount')).toBe('5001');
  expect(document.querySelectorAll('tbody tr').length).toBeLessThan(80);
});

test('Alt and Enter opens the row', async () => {
  render(<Kept first={beds(2)} />);
  cell(1, 0).focus();
  await userEvent.keyboard('{ArrowDown}');
  await expect.poll(() => document.activeElement).toBe(cell(1, 0));
  await userEvent.keyboard('{Alt>}{Enter}{/Alt}');
  expect(opened).toEqual(['B-2']);
});
