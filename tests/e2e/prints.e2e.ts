import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { pageCount, pdfPages, pdfText } from '../builders/read-pdf.ts';
import { expect, test } from './program.ts';

async function pdfBy(page: Page, button: string | RegExp): Promise<Buffer> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).first().click();
  const download = await coming;
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
  const pdf = await readFile(await download.path());
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  return pdf;
}

const places = ['beds', 'season?tab=plantings', 'soil', 'water', 'orders', 'harvest', 'costs', 'library'];

test('every place with a table saves it as a PDF that names the farm on each page', async ({ page, host }) => {
  test.slow();
  for (const place of places) {
    await page.goto(`${host.origin}/${place}`);
    const pdf = await pdfBy(page, 'Save as PDF');
    expect(pageCount(pdf), place).toBeGreaterThan(0);
    expect(pdfText(pdf).split('Saltgrass').length - 1, place).toBe(pageCount(pdf));
  }
});

test('the PDF of labels has a page for each sheet', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds`);
  await page.getByRole('tab', { name: 'Labels' }).click();
  await expect(page.locator('.label-sheet').first()).toBeVisible();
  const sheets = await page.locator('.label-sheet').count();
  expect(sheets).toBeGreaterThan(1);
  const pdf = await pdfBy(page, 'Save the sheets of labels as PDF');
  expect(pageCount(pdf)).toBe(sheets);
  expect(pdfText(pdf)).toContain('A-01');
});

/** Type of 7 points and more, all of it on the paper: what lies outside would be cut off. */
function expectReadable(pdf: Uint8Array, what: string): void {
  for (const [at, page] of pdfPages(pdf).entries())
    for (const { text, x_pt, y_pt, end, size_pt } of page.texts) {
      const said = `${what}, page ${at + 1}: ${text}`;
      expect(size_pt, said).toBeGreaterThanOrEqual(6.99);
      expect(Math.min(x_pt, end.x_pt), said).toBeGreaterThanOrEqual(0);
      expect(Math.max(x_pt, end.x_pt), said).toBeLessThanOrEqual(page.width_pt);
      expect(Math.min(y_pt, end.y_pt) - size_pt, said).toBeGreaterThanOrEqual(0);
      expect(Math.max(y_pt, end.y_pt), said).toBeLessThanOrEqual(page.height_pt);
    }
}

const wordsOf = (pdf: Uint8Array): string => pdfText(pdf).replace(/\s+/g, ' ').replaceAll('- ', '-');

test('the site drawing on paper has every bed by its code, the outline, a scale bar and a key', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds`);
  const pdf = await pdfBy(page, 'Save Site drawing as PDF');
  expectReadable(pdf, 'site');
  const words = wordsOf(pdf);
  for (const code of ['A-01', 'A-24', 'B-01', 'B-24', 'C-01', 'D-01', 'D-34', 'E-02']) expect(words).toContain(code);
  for (const said of ['Site drawing', 'Saltgrass', ' ft', 'in the ground', 'mound']) expect(words).toContain(said);
});

test('the season board on paper names every bed, and beds and weeks on each of its sheets', async ({ page, host }) => {
  test.slow();
  await page.goto(`${host.origin}/season`);
  await expect(page.locator('.board-line').first()).toBeVisible();
  const pdf = await pdfBy(page, 'Save Season board as PDF');
  expectReadable(pdf, 'board');
  const pages = pdfPages(pdf);
  expect(pages.length).toBeGreaterThan(3);
  for (const [at, { texts, width_pt, height_pt }] of pages.entries()) {
    const words = texts
      .map(({ text }) => text)
      .join(' ')
      .replace(/\s+/g, ' ');
    expect(width_pt).toBeGreaterThan(height_pt);
    expect(words).toContain(`sheet ${at + 1} of ${pages.length}`);
    expect(words).toContain('Apr');
    expect(words).toMatch(/[A-E]-\d\d/);
    expect(words).toContain('raised, growing, harvest, clearing');
  }
  const words = wordsOf(pdf);
  for (let bed = 1; bed <= 34; bed += 1) expect(words).toContain(`D-${String(bed).padStart(2, '0')}`);
});

test('the week is saved by its own button, any page by the one above', async ({ page, host }) => {
  test.slow();
  await page.goto(`${host.origin}/week?week=2027-05-03`);
  await expect(page.locator('.task').first()).toBeVisible();
  const week = await pdfBy(page, 'Save This week as PDF');
  expectReadable(week, 'week');
  const tasks = await page.locator('.task').count();
  expect(wordsOf(week).split('[ ]').length - 1).toBe(tasks);
  await page.goto(`${host.origin}/farm`);
  await expect(page.getByRole('textbox', { name: 'Latitude' })).toBeVisible();
  const farm = await pdfBy(page, 'Save this page as PDF');
  expectReadable(farm, 'farm');
  for (const said of ['US customary', 'Latitude', '47.6']) expect(wordsOf(farm)).toContain(said);
  // the choices that are not taken are no part of the farm
  expect(wordsOf(farm)).not.toContain('Metric');
  for (const place of ['soil', 'water?tab=line', 'costs', 'library']) {
    await page.goto(`${host.origin}/${place}`);
    await expect(page.locator('.grid').first()).toBeVisible();
    const whole = await pdfBy(page, 'Save this page as PDF');
    expect(wordsOf(whole), place).toContain((await page.locator('h1').textContent()) ?? '?');
    expect(whole.length).toBeGreaterThan(5000);
  }
});

test('a bed, the water line, the cost map and a chart are saved as drawings with their words', async ({ page, host }) => {
  test.slow();
  await page.goto(`${host.origin}/beds?bed=bed-a-1`);
  const bed = await pdfBy(page, 'Save Cross-section of A-01 as PDF');
  expectReadable(bed, 'bed');
  expect(wordsOf(bed)).toContain('Cross-section of A-01');
  expect(wordsOf(bed)).toMatch(/\d ft|\d in/);
  await page.goto(`${host.origin}/water?tab=line`);
  const line = await pdfBy(page, 'Save Water line as PDF');
  expectReadable(line, 'line');
  for (const said of ['Tank', 'gal/h', 'its share, within 10 %']) expect(wordsOf(line)).toContain(said);
  await page.goto(`${host.origin}/costs?tab=map`);
  const map = await pdfBy(page, 'Save Margin for its ground by bed as PDF');
  expectReadable(map, 'map');
  for (const said of ['A-01', 'D-34', 'hatched: lost money']) expect(wordsOf(map)).toContain(said);
  await page.goto(`${host.origin}/water`);
  await expect(page.locator('.chart .recharts-surface').first()).toBeVisible();
  const chart = await pdfBy(page, /^Save Water to give .* as PDF$/);
  expectReadable(chart, 'chart');
  expect(wordsOf(chart)).toContain('gal/day');
  // the table behind the chart stands under it, a line for each day
  expect(wordsOf(chart)).toMatch(/Jul 4 \d/);
});
