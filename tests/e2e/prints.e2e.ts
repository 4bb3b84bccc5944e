import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { pageCount, pdfText } from '../builders/read-pdf.ts';
import { expect, test } from './program.ts';

async function pdfBy(page: Page, button: string): Promise<Buffer> {
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
