import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ReportFile } from '../../api/report/make-report.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { pseudoOf } from '../../planner/words/pseudo.ts';
import { aProgram, resources, type TestProgram } from '../builders/a-farm.ts';
import { PLANNED } from '../builders/reading-inputs.ts';

let t: TestProgram;
beforeAll(() => {
  t = aProgram({ beds: 24 });
});
afterAll(() => t.end());

/** The report as the page gets it: made in the worker, with the files handed over at the end. */
async function reportIn(language: string): Promise<readonly ReportFile[]> {
  const { jobId } = await t.api.report.start({ seasonId: PLANNED, language });
  for (;;) {
    const view = await t.api.jobs.get({ jobId });
    if (view.state === 'failed') throw new Error(view.message);
    if (view.state === 'done') return view.result as readonly ReportFile[];
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

const textOf = (html: string): string =>
  html
    .replace(/<style>.*?<\/style>/s, '')
    .replaceAll(/<[^>]+>/g, '\n')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

describe('the season report', () => {
  test('answers the four questions, with cautions from the one table of them, and each table as CSV', async () => {
    const [whole, ...tables] = await reportIn('en');
    const text = textOf(whole?.text ?? '');
    expect(whole?.name).toBe('season-report-2027.html');
    for (const title of [
      'What goes where, and when',
      'What to buy or dig',
      'Whether the water suffices',
      'Which beds and crops paid',
    ])
      expect(text).toContain(title);
    const { cautions } = JSON.parse(readFileSync(join(resources, 'cautions.json'), 'utf8')) as {
      cautions: readonly { readonly id: string; readonly text: string; readonly source: string }[];
    };
    for (const id of ['electricity-near-water', 'backflow', 'tax-law-money', 'estimate-limits'])
      expect(text, id).toContain(cautions.find((each) => each.id === id)?.text);
    // no file asks a browser for anything from elsewhere
    expect(whole?.text).not.toMatch(/(?:src|href)="(?!#)/);
    const plan = tables.find(({ name }) => name === 'plan-by-bed.csv')?.text ?? '';
    const rows = parse(plan, { bom: true, columns: true }) as Record<string, string>[];
    const spans = t.farm.sqlite
      .prepare<[string], number>(
        'SELECT count(*) FROM planting_bed s JOIN planting p ON p.id = s.planting_id WHERE p.season_id = ?',
      )
      .pluck()
      .get(PLANNED);
    expect(rows.length).toBe(spans);
    for (const row of rows) {
      expect(row['in_bed']).toMatch(/^\d{4}-\d\d-\d\d$/);
      expect(Number(row['area_m2'])).toBeGreaterThan(0);
    }
  });

  test('is said in the language of the page; what there is no file of is English', async () => {
    const [pseudo] = await reportIn('en-XA');
    const text = textOf(pseudo?.text ?? '');
    expect(pseudo?.text).toContain('<html lang="en-XA">');
    for (const sentence of [
      'What to buy or dig',
      'Why each is needed',
      'First harvest',
      'Backflow into drinking water',
      'Direct',
    ])
      expect(text).toContain(pseudoOf(sentence));
    expect(text).not.toMatch(/\n(?:Shopping list|Supplier|Bed|Crop|Margin)\n/);
    const [other] = await reportIn('../../package');
    expect(other?.text).toContain('<html lang="en">');
  });

  test('prints figures and dates as the farm has them', async () => {
    const row = farmOfFile(t.farm.db);
    const set = (unitSystem: 'us' | 'metric', language: string) =>
      t.farm.sqlite.prepare('UPDATE farm SET unit_system = ?, language = ?').run(unitSystem, language);
    set('metric', 'de-DE');
    const [metric] = await reportIn('en');
    set('us', 'en-US');
    const [us] = await reportIn('en');
    set(row?.unitSystem ?? 'us', row?.language ?? 'en-US');
    const inMetric = textOf(metric?.text ?? '');
    const inUs = textOf(us?.text ?? '');
    expect(inMetric).toMatch(/\n\d{1,2}\. \p{L}+\.? 2027\n/u);
    expect(inMetric).toMatch(/\n\d+,\d+ kg\n/);
    expect(inMetric).not.toMatch(/\d (?:gal|lb|oz|ft²)\b/);
    expect(inUs).toMatch(/\n[A-Z][a-z]{2} \d{1,2}, 2027\n/);
    expect(inUs).toMatch(/\d gal\/d/);
    expect(inUs).not.toMatch(/\d (?:L\/d|kg|m²)\n/);
  });
});
