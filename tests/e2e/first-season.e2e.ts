import type { Page } from '@playwright/test';
import { expect, test } from './program.ts';

const said = (page: Page) => page.getByRole('contentinfo');

/** What a bed cost in 2026, as the Costs page shows it. */
async function directCostOf(page: Page, origin: string, bed: string): Promise<number> {
  await page.goto(`${origin}/costs?season=season-2026`);
  await page.getByPlaceholder('Filter by typing').first().fill(bed);
  const row = page.getByRole('row', { name: new RegExp(bed) }).first();
  await expect(row).toBeVisible();
  const cells = await row.getByRole('gridcell').allInnerTexts();
  const heads = await page.getByRole('columnheader').allInnerTexts();
  const at = heads.findIndex((head) => head.startsWith('Direct'));
  return Number((cells[at] ?? '').replaceAll(/[^\d.-]/g, ''));
}

test('a bed is built, planted, harvested from, and its cost follows', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds`);
  await page.getByRole('button', { name: 'Build beds' }).click();
  const build = page.getByRole('form', { name: 'Build beds' });
  await build.getByLabel('Design').selectOption({ label: 'Framed bed 1.2 x 2.4 m' });
  await build.getByLabel('Block', { exact: true }).selectOption({ index: 1 });
  await build.getByLabel('First code').fill('Z-01');
  await build.getByRole('textbox', { name: 'Beds' }).fill('1');
  await build.getByRole('button', { name: /^Build (1|a) bed/ }).click();
  await expect(said(page)).toContainText(/Built/);

  await page.goto(`${host.origin}/season`);
  await page.getByRole('button', { name: 'Add planting' }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a planting or a succession' });
  await dialog.getByLabel('Crop', { exact: true }).selectOption({ label: 'Carrot' });
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(said(page)).toContainText(/Added/);

  const before = await directCostOf(page, host.origin, 'D-24');
  await page.goto(`${host.origin}/harvest`);
  const entry = page.getByRole('form', { name: 'Enter a harvest' });
  await entry.getByLabel('Day').fill('2026-10-30');
  await entry.getByRole('combobox', { name: 'Bed or crop' }).fill('D-24 spin');
  await page.keyboard.press('Enter');
  await entry.getByLabel('Took').fill('60');
  await entry.getByLabel('Amount').fill('1');
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText('Logged 1');

  const after = await directCostOf(page, host.origin, 'D-24');
  expect(after - before).toBeCloseTo(19, 2);

  for (const step of [/^Undo log a harvest of/i, /^Undo add/i, /^Undo build/i])
    await page.getByRole('button', { name: step }).click();
  await expect(page.getByRole('button', { name: /^Redo build/i })).toBeVisible();
});
