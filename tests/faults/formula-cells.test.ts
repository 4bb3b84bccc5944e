import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../api/http/app.ts';
import { downloads } from '../../api/http/downloads.ts';
import type { ReportFile } from '../../api/report/make-report.ts';
import { writeCsv } from '../../renderer/table/csv.ts';
import { workbookFiles } from '../../renderer/table/workbook.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { PLANNED } from '../builders/reading-inputs.ts';

/** Beginnings that a spreadsheet takes for a formula: OWASP, "CSV Injection" (= + - @, tab, carriage return, their full-width forms). */
const FORMULAS = ['=1+1', '+1+1', '-1+1', '@SUM(A1)', '\t=1+1', '\r=1+1', '＝1+1', '＋1', '－1', '＠A1'];
const isTaken = (cell: string): boolean => /^[=+\-@\t\r＝＋－＠]/.test(cell) && !Number.isFinite(Number(cell));
const isDisarmed = (cell: string): boolean => cell.startsWith("'") && isTaken(cell.slice(1));

/** Columns that hold what people write in words; the rest holds keys, dates and choices. */
const WRITTEN =
  /^(name|code|note|notes|contact|buyer|document_number|who|observed|place|laboratory|sample|picker|conditions|weather|botanical_name|source)$/;
const KEYED = ['setting', 'sqlite_sequence', '__drizzle_migrations'];

/** Files that no spreadsheet opens as a table. */
const NO_TABLES = ['shopping-list.pdf', 'site', 'work'];

let t: TestProgram;
let app: ReturnType<typeof createApp>;

/** Writes a formula before every text of the farm, whatever way it may have come in. */
function poison(): number {
  const { sqlite } = t.farm;
  const tables = sqlite
    .prepare<[], string>(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'undo_%'`)
    .pluck()
    .all()
    .filter((name) => !KEYED.includes(name));
  let written = 0;
  for (const table of tables)
    for (const column of sqlite.prepare<[], string>(`SELECT name FROM pragma_table_info('${table}')`).pluck().all())
      if (WRITTEN.test(column)) {
        const cases = FORMULAS.map((_, at) => `WHEN ${at} THEN ?`).join(' ');
        const sql = `UPDATE "${table}" SET "${column}" = CASE rowid % ${FORMULAS.length} ${cases} END || "${column}" WHERE "${column}" IS NOT NULL`;
        written += sqlite.prepare(sql).run(...FORMULAS).changes;
      }
  return written;
}

const firstOf = (sql: string): string => t.farm.sqlite.prepare<[], string>(sql).pluck().get() ?? '';

async function exported(name: string): Promise<{ readonly type: string; readonly text: string }> {
  const query = new URLSearchParams({
    season: PLANNED,
    lot: firstOf(
      'SELECT l.code FROM harvest_lot l JOIN harvest h ON h.lot_id = l.id JOIN sale_line s ON s.lot_id = l.id ORDER BY l.id',
    ),
    kind: 'bed',
    id: firstOf('SELECT bed_id FROM harvest WHERE lot_id IS NOT NULL ORDER BY id'),
  });
  const answer = await app.fetch(new Request(`http://program/export/${name}?${query}`));
  const text = await answer.text();
  expect(answer.status, `${name}: ${text.slice(0, 200)}`).toBe(200);
  return { type: answer.headers.get('content-type') ?? '', text };
}

/** Every cell is read back by another reader: none is taken for a formula, and the farm's own words did get there. */
function expectNoFormula(name: string, text: string): void {
  const cells = (parse(text, { bom: true, relax_column_count: true }) as string[][]).flat();
  expect(cells.filter(isTaken), name).toEqual([]);
  expect(cells.some(isDisarmed), `${name} holds none of the farm's words`).toBe(true);
}

beforeAll(async () => {
  t = aProgram({ beds: 24 });
  await t.api.records.append({
    kind: 'wash-water',
    date: '2026-11-25',
    place: 'pack shed',
    who: 'AN',
    observed: 'free chlorine 75 mg/L',
    details: { '=1+1': '=1+1' },
  });
  await t.api.orders.addNeed({ seasonId: PLANNED, materialId: 'mix-raised-bed', amount: 1500, wantedDate: '2027-03-01' });
  await t.api.orders.keepList({ seasonId: PLANNED, bought: [{ offerId: 'offer-1', packages: 2 }] });
  app = createApp({ program: t.program, pages: t.folder });
  expect(poison()).toBeGreaterThan(1000);
});
afterAll(() => t.end());

describe('no text of the farm becomes a formula in a spreadsheet', () => {
  test.each(Object.keys(downloads).filter((name) => !NO_TABLES.includes(name)))('in the file %s', async (name) => {
    const { type, text } = await exported(name);
    expect(type).toMatch(/^text\/csv/);
    expectNoFormula(name, text);
  });

  test('in any table of the season report', { timeout: 120_000 }, async () => {
    const { jobId } = await t.api.report.start({ seasonId: PLANNED, language: 'en' });
    let view = await t.api.jobs.get({ jobId });
    while (view.state === 'running') {
      await new Promise((resolve) => setTimeout(resolve, 50));
      view = await t.api.jobs.get({ jobId });
    }
    expect(view.state, view.message).toBe('done');
    const tables = (view.result as readonly ReportFile[]).filter(({ name }) => name.endsWith('.csv'));
    expect(tables.length).toBeGreaterThan(3);
    for (const { name, text } of tables) {
      const cells = (parse(text, { bom: true, relax_column_count: true }) as string[][]).flat();
      expect(cells.filter(isTaken), name).toEqual([]);
    }
    expectNoFormula('plan-by-bed.csv', tables.find(({ name }) => name === 'plan-by-bed.csv')?.text ?? '');
  });

  test('in a table saved from a page', () => {
    expectNoFormula('table', writeCsv([FORMULAS, [-2, '2', ...FORMULAS.map((text) => `${text}, "and" more`)]]));
  });

  test('in a workbook, whose cells are texts and numbers only', () => {
    const sheet = workbookFiles('Table', [FORMULAS, [-2]])['xl/worksheets/sheet1.xml'] ?? '';
    expect(sheet).not.toContain('<f');
    expect(sheet.split('t="inlineStr"').length - 1).toBe(FORMULAS.length);
  });
});
